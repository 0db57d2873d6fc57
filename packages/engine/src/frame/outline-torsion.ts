import { edges, type Ring } from '../floor/geometry/polygon.js';
import { cross2, distance2, dot2, length2, sub2 } from '../floor/geometry/vec.js';
import { type Outcome, ok, refuse } from '../floor/problem.js';
import { frameMessages } from './messages.js';
import { rectangleTorsion } from './rectangle-torsion.js';
import { repairedOutline } from './section-outline.js';
import type { SectionOutline } from './types.js';

/** How far a corner may be from the ideal shape, as a share of its size: drawn outlines carry about nine digits. */
const shapeTolerance = 1e-6;

/** Corners only: points in the middle of a straight edge do not change the shape. */
function corners(ring: Ring): Ring {
  return ring.filter((p, i) => {
    const a = sub2(p, ring[(i + ring.length - 1) % ring.length]!);
    const b = sub2(ring[(i + 1) % ring.length]!, p);
    return Math.abs(cross2(a, b)) > shapeTolerance * length2(a) * length2(b);
  });
}

function rectangleSides(ring: Ring): readonly [number, number] | undefined {
  const e = edges(ring);
  if (e.length !== 4) return undefined;
  const square = e.every(({ from, to }, i) => {
    const a = sub2(to, from);
    const next = e[(i + 1) % 4]!;
    const b = sub2(next.to, next.from);
    return Math.abs(dot2(a, b)) <= shapeTolerance * length2(a) * length2(b);
  });
  return square ? [distance2(e[0]!.from, e[0]!.to), distance2(e[1]!.from, e[1]!.to)] : undefined;
}

function equilateralSide(ring: Ring): number | undefined {
  if (ring.length !== 3) return undefined;
  const sides = edges(ring).map((e) => distance2(e.from, e.to));
  const side = (sides[0]! + sides[1]! + sides[2]!) / 3;
  return sides.every((s) => Math.abs(s - side) <= shapeTolerance * side) ? side : undefined;
}

/**
 * Torsion constant of a drawn outline, where an exact closed form is known: a solid rectangle in any position (series)
 * and a solid equilateral triangle (J = h^4 / (15 sqrt 3), h its height).
 *
 * Never Ix + Iy, which holds for circles only: a slotted bar has about a tenth of it.
 * @param outline rings [m]
 * @returns J [m4], or `frame/torsion-no-closed-form` for every other shape, or the problems of `repairedOutline`
 * Source: Timoshenko and Goodier, Theory of Elasticity (from memory); Pilkey (2002), Example 5.6.
 */
export function outlineTorsionConstant(outline: SectionOutline): Outcome<number> {
  const repaired = repairedOutline(outline);
  if (!repaired.ok) return repaired;
  const ring = corners(repaired.value.outer);
  if (repaired.value.holes.length > 0) return refuse([frameMessages.torsionNeedsElements()]);
  const sides = rectangleSides(ring);
  if (sides) {
    const found = rectangleTorsion(...sides);
    return found.ok ? ok(found.value.constant) : found;
  }
  const side = equilateralSide(ring);
  if (side === undefined) return refuse([frameMessages.torsionNeedsElements()]);
  return ok(((side * Math.sqrt(3)) / 2) ** 4 / (15 * Math.sqrt(3)));
}
