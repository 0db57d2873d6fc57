import { type Outcome, ok, type Problem, positive, refuse } from '../floor/problem.js';
import { badInterval, noSupportPlace } from './messages.js';
import { type ForbiddenStretch, type SupportDemand, type SupportWindow, samePlace } from './types.js';

/** Problems of a demand's own numbers; empty when it can be computed. */
export function supportDemandProblems({ length, spacing, windows, forbidden }: SupportDemand): Problem[] {
  const turned = (i: { from: number; to: number }) => !(i.from <= i.to + samePlace);
  return [
    ...positive('curtain/length', 'length', length, 'm'),
    ...positive('curtain/spacing', 'spacing', spacing, 'm'),
    ...(windows.some(turned) ? [badInterval('windows')] : []),
    ...(forbidden.some(turned) ? [badInterval('forbidden')] : []),
  ];
}

/** The last place not beyond `limit` that no forbidden stretch holds inside. */
function lastAllowed(limit: number, forbidden: readonly ForbiddenStretch[]): number {
  let place = limit;
  for (;;) {
    const holder = forbidden.find((f) => place > f.from + samePlace && place < f.to - samePlace);
    if (!holder) return place;
    place = holder.from;
  }
}

const hits = (w: SupportWindow, place: number): boolean => place >= w.from - samePlace && place <= w.to + samePlace;

/**
 * Fewest supports of a track, each as far along as it may stand.
 *
 * Greedy: the next support stands at the last allowed place that is neither farther than the spacing from the one before nor
 * beyond the end of a window that holds none yet. No layout has its k-th support farther along, so none needs fewer; where the
 * greedy is stuck, no layout exists.
 * The spacing binds between supports only; the track beyond the outer ones is held by windows (`supportWindows`).
 * @param demand track length, spacing, windows and forbidden stretches [m]
 * @returns places in rising order [m], or `curtain/length`, `curtain/spacing`, `curtain/interval`, or
 *          `curtain/no-support-place` with the stretch that holds no allowed place
 * Source: exchange argument in the handbook of layout, 3.4 (derived); agrees with enumeration on a grid.
 */
export function fewestSupports(demand: SupportDemand): Outcome<readonly number[]> {
  const problems = supportDemandProblems(demand);
  if (problems.length > 0) return refuse(problems);
  const { length, spacing, windows, forbidden } = demand;
  const places: number[] = [];
  let open = windows;
  while (open.length > 0) {
    const last = places.at(-1);
    const due = Math.min(last === undefined ? length : last + spacing, length, ...open.map((w) => w.to));
    const place = lastAllowed(due, forbidden);
    if (place < -samePlace || (last !== undefined && place <= last + samePlace))
      return refuse([noSupportPlace(last ?? 0, due)]);
    const at = Math.max(0, place);
    places.push(at);
    open = open.filter((w) => !hits(w, at));
  }
  return ok(places);
}

/** True when a layout keeps spacing, windows and forbidden stretches. */
export function supportsKeep(places: readonly number[], demand: SupportDemand): boolean {
  const sorted = [...places].sort((a, b) => a - b);
  return (
    sorted.every((p, i) => i === 0 || p - sorted[i - 1]! <= demand.spacing + samePlace) &&
    sorted.every((p) => p >= -samePlace && p <= demand.length + samePlace) &&
    demand.windows.every((w) => sorted.some((p) => hits(w, p))) &&
    sorted.every((p) => !demand.forbidden.some((f) => p > f.from + samePlace && p < f.to - samePlace))
  );
}
