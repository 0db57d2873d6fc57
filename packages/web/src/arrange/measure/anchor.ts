import { contains, distanceToSegment, sub2, type Vec2 } from '@cloche/engine';
import type { Design } from '../../engine/contract.js';
import { extentOf, middleOf } from '../../plan/places.js';

/** A measured point: fixed in the room, or on a thing with which it moves. */
export interface Anchor {
  readonly at: Vec2;
  readonly on: string | null;
  /** From the middle of the thing. */
  readonly offset: Vec2;
}

/** Touching a thing within this [m]. */
const slack = 1e-3;

/** The thing that a point lies on: the smallest that holds it or has it on its edge. */
export function anchored(design: Design, ids: readonly string[], at: Vec2): Anchor {
  const size = (points: readonly Vec2[]) => {
    const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])];
    return (Math.max(...xs) - Math.min(...xs)) * (Math.max(...ys) - Math.min(...ys));
  };
  const on = ids
    .map((id) => ({ id, points: extentOf(design, id) }))
    .filter(({ points }) => points.length > 0 && touches(points, at))
    .sort((a, b) => size(a.points) - size(b.points))[0];
  const middle = on ? middleOf(on.points) : undefined;
  return on && middle ? { at, on: on.id, offset: sub2(at, middle) } : { at, on: null, offset: [0, 0] };
}

function touches(points: readonly Vec2[], at: Vec2): boolean {
  if (points.length === 1) return Math.hypot(points[0]![0] - at[0], points[0]![1] - at[1]) < slack;
  if (points.length === 2) return distanceToSegment(at, points[0]!, points[1]!) < slack;
  return contains(points, at, slack);
}

/** Where an anchor is now: it goes along with its thing when that is moved. */
export const placeOf = (design: Design, { at, on, offset }: Anchor): Vec2 =>
  (on === null ? null : placeOn(design, on, offset)) ?? at;

/** A place on a thing; null while the design has no such thing. */
export function placeOn(design: Design, on: string, offset: Vec2): Vec2 | null {
  const middle = middleOf(extentOf(design, on));
  return middle ? [middle[0] + offset[0], middle[1] + offset[1]] : null;
}
