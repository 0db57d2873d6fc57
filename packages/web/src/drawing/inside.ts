import { contains, cross2, edges, type Ring, sub2, type Vec2 } from '@cloche/engine';
import { metresOf } from '../brief/lengths.js';
import { type Units, writtenLength } from './length-text.js';

/** The engine's own tolerance for what stands outside a room [m]. */
const tolerance = 1e-7;
/** What is written to a tenth of a millimetre may stand over by half of that: it is then moved in by this much [m]. */
const nudge = 2e-4;

const steps = [0, -1, 1];
const nudges: readonly Vec2[] = steps
  .flatMap((x) => steps.map((y): Vec2 => [x * nudge, y * nudge]))
  .sort((a, b) => Math.hypot(...a) - Math.hypot(...b));

/** A length as it will be read from the brief. */
export const asWritten = (metres: number, units: Units): number => metresOf(writtenLength(metres, units)) ?? metres;

/** True when the whole of a ring (or a point) lies within the walls. */
export function isInside(outline: Ring, ring: Ring): boolean {
  if (ring.some((corner) => !contains(outline, corner, tolerance))) return false;
  if (ring.length < 3) return true;
  const deep = (p: Vec2) => edges(ring).every(({ from, to }) => cross2(sub2(to, from), sub2(p, from)) > tolerance);
  return !outline.some(deep);
}

/**
 * The place itself, or one a fifth of a millimetre aside, where the ring about it lies within the walls once it is written.
 * @returns null when it stands over by more than writing can tell
 */
export function insideAt(outline: Ring, at: Vec2, ringAt: (at: Vec2) => Ring, units: Units): Vec2 | null {
  for (const [dx, dy] of nudges) {
    const place: Vec2 = [asWritten(at[0] + dx, units), asWritten(at[1] + dy, units)];
    if (isInside(outline, ringAt(place))) return place;
  }
  return null;
}

/** A stretch of a wall as it is written, ending no later than the wall does. */
export function writtenStretch(at: number, width: number, length: number, units: Units) {
  const over = asWritten(at, units) + asWritten(width, units) - length;
  const start = over > tolerance ? Math.max(0, at - nudge) : Math.max(0, at);
  return { at: writtenLength(start, units), width: writtenLength(width, units) };
}
