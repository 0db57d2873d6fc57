import { type Outcome, ok } from '../floor/problem.js';
import { fewestSupports, supportsKeep } from './fewest-supports.js';
import type { SupportDemand } from './types.js';

/** The demand seen from the other end of the track. */
const mirrored = ({ length, spacing, windows, forbidden }: SupportDemand): SupportDemand => {
  const turn = ({ from, to }: { from: number; to: number }) => ({ from: length - to, to: length - from });
  return { length, spacing, windows: windows.map(turn), forbidden: forbidden.map(turn) };
};

/** The least spacing, to a tenth of a millimetre, for which `count` supports are still enough. */
function leastSpacing(demand: SupportDemand, count: number): number {
  let tooSmall = 0;
  let enough = demand.spacing;
  while (enough - tooSmall > 1e-4) {
    const tried = (tooSmall + enough) / 2;
    const found = fewestSupports({ ...demand, spacing: tried });
    if (found.ok && found.value.length <= count) enough = tried;
    else tooSmall = tried;
  }
  return enough;
}

/**
 * The fewest supports, spread evenly: the same count, the least possible largest distance, each in the middle of the places
 * that it may take, on whole millimetres where that still keeps the demand.
 *
 * The largest distance is found by bisection over the spacing (more spacing never needs more supports). For it, the layouts
 * farthest along and least far along bound each support; their middle keeps every distance, and is taken when it keeps windows
 * and forbidden stretches too, which only the middle of two places on both sides of a forbidden stretch can break.
 * @param demand track length, spacing, windows and forbidden stretches [m]
 * @returns places in rising order [m], or the problems of `fewestSupports`
 * Source: handbook of layout, 3.4, "then even out" (derived).
 */
export function evenSupports(demand: SupportDemand): Outcome<readonly number[]> {
  const fewest = fewestSupports(demand);
  if (!fewest.ok || fewest.value.length < 2) return fewest;
  const tight = { ...demand, spacing: leastSpacing(demand, fewest.value.length) };
  const late = fewestSupports(tight);
  const early = fewestSupports(mirrored(tight));
  if (!late.ok || !early.ok) return fewest;
  const earliest = early.value.map((p) => demand.length - p).reverse();
  const middle = late.value.map((p, i) => (p + earliest[i]!) / 2);
  const even = supportsKeep(middle, tight) ? middle : late.value;
  return ok(onWholeMillimetres(even, demand));
}

/** Each place on the nearest whole millimetre, or the next one, that keeps the demand; where none does it stays. */
function onWholeMillimetres(places: readonly number[], demand: SupportDemand): number[] {
  const result = [...places];
  places.forEach((place, i) => {
    const near = Math.round(place * 1000);
    const tries = [near, near > place * 1000 ? near - 1 : near + 1].map((mm) => mm / 1000);
    const kept = tries.find((t) =>
      supportsKeep(
        result.map((p, k) => (k === i ? t : p)),
        demand,
      ),
    );
    if (kept !== undefined) result[i] = kept;
  });
  return result;
}
