import { distance2, signedArea, sub2, type Vec2 } from '@cloche/engine';

/** The last stretch of what is measured, and all of it together. Lengths [m], angle counter-clockwise from east [rad]. */
export interface Measured {
  readonly length: number;
  readonly east: number;
  readonly north: number;
  readonly angle: number;
  /** Over all points, with the way back to the first when it is closed. */
  readonly total: number;
  /** Area inside when it is closed and does not cross itself [m²]; null otherwise. */
  readonly area: number | null;
}

/** A point this near to the first closes the line [m]. */
const same = 1e-6;

export const isClosed = (points: readonly Vec2[]): boolean =>
  points.length > 3 && distance2(points[0]!, points.at(-1)!) < same;

/**
 * What points tell that were set one after the other. The angle is from 0 to a whole turn.
 * @returns null for fewer than two points
 */
export function measured(points: readonly Vec2[]): Measured | null {
  if (points.length < 2) return null;
  const [from, to] = [points.at(-2)!, points.at(-1)!];
  const [east, north] = sub2(to, from);
  const angle = Math.atan2(north, east);
  const total = points.slice(1).reduce((sum, p, i) => sum + distance2(points[i]!, p), 0);
  return {
    length: Math.hypot(east, north),
    east,
    north,
    angle: angle < 0 ? angle + 2 * Math.PI : angle,
    total,
    area: isClosed(points) ? Math.abs(signedArea(points.slice(0, -1))) : null,
  };
}
