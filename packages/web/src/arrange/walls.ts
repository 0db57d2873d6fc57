import { contains, distance2, distanceToSegment, dot2, type Ring, sub2, unit2, type Vec2 } from '@cloche/engine';
import { metresOf } from '../brief/lengths.js';
import { listAt, valueAt } from '../brief/path.js';

/** The outline of the room as the brief gives it; empty when a corner cannot be read. */
export function outlineOf(data: unknown): Ring {
  const corners = listAt(data, ['room', 'outline']).map((corner): Vec2 | null => {
    const [x, y] = [0, 1].map((k) => metresOf(valueAt(corner, [k])));
    return x == null || y == null ? null : [x, y];
  });
  return corners.every((corner) => corner !== null) ? corners : [];
}

/** Two points count as lying in a wall within this [m]. */
const slack = 1e-4;

/** The wall that holds two points, and where along it the nearer one lies; null when none holds both. */
export function wallOnto(outline: Ring, p: Vec2, q: Vec2): { readonly wall: number; readonly at: number } | null {
  for (const [wall, from] of outline.entries()) {
    const to = outline[(wall + 1) % outline.length]!;
    if (distanceToSegment(p, from, to) > slack || distanceToSegment(q, from, to) > slack) continue;
    const along = unit2(sub2(to, from));
    return { wall, at: Math.min(dot2(sub2(p, from), along), dot2(sub2(q, from), along)) };
  }
  return null;
}

export const lengthOfWall = (outline: Ring, wall: number): number =>
  distance2(outline[wall]!, outline[(wall + 1) % outline.length]!);

export const isInside = (outline: Ring, points: readonly Vec2[]): boolean =>
  points.every((point) => contains(outline, point, slack));
