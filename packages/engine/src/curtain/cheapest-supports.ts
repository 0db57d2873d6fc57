import { type Outcome, ok, refuse } from '../floor/problem.js';
import { supportDemandProblems } from './fewest-supports.js';
import { noCandidateSet, nothingInStock } from './messages.js';
import { type SupportCandidate, type SupportDemand, samePlace } from './types.js';

export interface PricedSupports {
  readonly price: number;
  readonly places: readonly number[];
  /** How many different choices cost the same least price. */
  readonly choices: number;
}

interface Tail {
  readonly price: number;
  readonly supports: number;
  readonly choices: number;
  readonly next: number;
}

/** Prices are decimal amounts added as binary numbers; amounts closer than this are the same price. */
const samePrice = 1e-9;

/**
 * The cheapest choice among candidate places with prices; of equal prices the one with fewest supports, then with the earliest.
 *
 *     tail[p] = c_p + min tail[q] over q > p with q - p <= s and no window that lies wholly between p and q
 * Exact: whether a layout keeps spacing and windows depends on neighbouring supports only.
 * @param candidates places [m] with prices in one currency [-]
 * @param demand track length, spacing, windows and forbidden stretches [m]
 * @returns the choice, or the problems of `fewestSupports`, `curtain/no-stock` without candidates
 * Source: dynamic programme of the handbook of layout, 3.4 (derived).
 */
export function cheapestSupports(
  candidates: readonly SupportCandidate[],
  demand: SupportDemand,
): Outcome<PricedSupports> {
  const problems = supportDemandProblems(demand);
  if (candidates.length === 0) problems.push(nothingInStock('candidates'));
  if (problems.length > 0) return refuse(problems);
  const { length, spacing, windows, forbidden } = demand;
  const allowed = candidates
    .filter(
      ({ at }) =>
        at >= -samePlace &&
        at <= length + samePlace &&
        !forbidden.some((f) => at > f.from + samePlace && at < f.to - samePlace),
    )
    .sort((a, b) => a.at - b.at);
  const skips = (from: number, to: number) => windows.some((w) => w.from > from + samePlace && w.to < to - samePlace);
  const tails: (Tail | undefined)[] = allowed.map(() => undefined);
  const best = (from: number, reach: number, first: number): Tail | undefined => {
    let found: Tail | undefined;
    for (let i = first; i < allowed.length; i++) {
      const { at } = allowed[i]!;
      if (at - from > reach + samePlace || skips(from, at)) continue;
      const tail = tails[i];
      if (!tail) continue;
      if (!found || tail.price < found.price - samePrice) found = { ...tail, next: i };
      else if (Math.abs(tail.price - found.price) <= samePrice)
        found =
          tail.supports < found.supports
            ? { ...tail, next: i, choices: found.choices + tail.choices }
            : { ...found, choices: found.choices + tail.choices };
    }
    return found;
  };
  for (let i = allowed.length - 1; i >= 0; i--) {
    const { at, price } = allowed[i]!;
    const rest = best(at, spacing, i + 1);
    const ends = !skips(at, Number.POSITIVE_INFINITY);
    const alone: Tail | undefined = ends ? { price, supports: 1, choices: 1, next: -1 } : undefined;
    const longer = rest && {
      price: price + rest.price,
      supports: 1 + rest.supports,
      choices: rest.choices,
      next: rest.next,
    };
    if (alone && longer && Math.abs(alone.price - longer.price) <= samePrice)
      tails[i] = { ...alone, choices: alone.choices + longer.choices };
    else tails[i] = alone && !(longer && longer.price < alone.price) ? alone : longer;
  }
  const start = best(Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, 0);
  if (!start) return refuse([noCandidateSet()]);
  const places: number[] = [];
  for (let i = start.next; i >= 0; i = tails[i]!.next) places.push(allowed[i]!.at);
  return ok({ price: start.price, places, choices: start.choices });
}
