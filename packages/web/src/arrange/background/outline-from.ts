import { bounds, selfCrossings, signedArea, type Vec2 } from '@cloche/engine';
import { arrangeTexts } from '../../texts/arrange.js';
import { inRoom, type Placement } from './placement.js';

const say = arrangeTexts.background;

/** More corners than a surveyed room has; a curved line of a drawing has them. */
const mostCorners = 100;
/** A room is larger than this [m²]. */
const leastArea = 0.5;

/**
 * A closed line of a drawing as the outline of a room, counter-clockwise from its south-west, and where the background then lies so
 * that both stay on each other. A sentence when it can be none.
 */
export function outlineFrom(
  closed: readonly Vec2[],
  placement: Placement,
  drawingMin: Vec2,
  drawingWidth: number,
): { readonly outline: readonly Vec2[]; readonly at: Vec2 } | string {
  if (closed.length > mostCorners) return say.tooManyCorners(closed.length, mostCorners);
  const placed = closed.map(([x, y]) =>
    inRoom(placement, [(x - drawingMin[0]) / drawingWidth, (y - drawingMin[1]) / drawingWidth]),
  );
  const area = signedArea(placed);
  if (Math.abs(area) < leastArea) return say.tooSmall;
  if (selfCrossings(placed).length > 0) return say.crossesItself;
  const { min } = bounds(placed);
  const ring = (area < 0 ? [...placed].reverse() : placed).map(([x, y]): Vec2 => [x - min[0], y - min[1]]);
  const start = ring.reduce((best, [x, y], i) => (x + y < ring[best]![0] + ring[best]![1] ? i : best), 0);
  return {
    outline: [...ring.slice(start), ...ring.slice(0, start)],
    at: [placement.at[0] - min[0], placement.at[1] - min[1]],
  };
}
