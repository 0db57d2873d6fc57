import { boundaryDistance, contains, segmentsMeet, type Vec2 } from '@cloche/engine';
import type { Design } from '../engine/contract.js';
import { extentOf } from '../plan/places.js';
import type { Box } from '../plan/view.js';

/** Things that are lines in the plan, and those whose inside is empty: they are touched by their line only. */
const isHollow = (design: Design, id: string): boolean => design.enclosures.some((each) => each.id === id);
const isLine = (design: Design, id: string): boolean =>
  design.runs.some((each) => each.id === id) ||
  design.lasers.some((each) => each.id === id) ||
  extentOf(design, id).length < 3;

/** Which of some things a frame touches or encloses. */
export function framed(design: Design, ids: readonly string[], { min, max }: Box): readonly string[] {
  const frame: readonly Vec2[] = [min, [max[0], min[1]], max, [min[0], max[1]]];
  const inFrame = ([x, y]: Vec2) => x >= min[0] && x <= max[0] && y >= min[1] && y <= max[1];
  const meets = (a: Vec2, b: Vec2) => frame.some((c, i) => segmentsMeet(a, b, c, frame[(i + 1) % 4]!));
  return ids.filter((id) => {
    const points = extentOf(design, id);
    if (points.length === 0) return false;
    if (points.some(inFrame)) return true;
    if (points.length === 1) return false;
    if (isLine(design, id)) return points.slice(1).some((to, i) => meets(points[i]!, to));
    const crossed = boundaryDistance(points, frame).distance === 0;
    return crossed || (!isHollow(design, id) && contains(points, min));
  });
}
