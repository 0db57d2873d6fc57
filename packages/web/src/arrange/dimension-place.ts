import type { Vec2 } from '../engine/contract.js';

/** Where the number of a dimension stands, and how it is turned so that it is read from below or from the right. */
export interface NumberPlace {
  readonly at: Vec2;
  /** Degrees on the screen, clockwise. */
  readonly angle: number;
  /** Pixels of the dimension line. */
  readonly length: number;
}

/** From the middle of the dimension line to the middle of its number, pixels. */
const above = 10;

/**
 * @param from measured points on the screen
 * @param away unit vector on the screen, to the side of the dimension line; null when it is the line between the points
 * @param distance from the points to the dimension line, pixels
 */
export function numberPlace(from: Vec2, to: Vec2, away: Vec2 | null, distance: number): NumberPlace {
  const shift = ([x, y]: Vec2): Vec2 => (away ? [x + away[0] * distance, y + away[1] * distance] : [x, y]);
  const [a, b] = [shift(from), shift(to)];
  const raw = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
  const angle = raw >= 90 - 1e-6 ? raw - 180 : raw < -90 - 1e-6 ? raw + 180 : raw;
  const up = (angle * Math.PI) / 180;
  const lift = away ? above : 0;
  return {
    at: [(a[0] + b[0]) / 2 + Math.sin(up) * lift, (a[1] + b[1]) / 2 - Math.cos(up) * lift],
    angle,
    length: Math.hypot(b[0] - a[0], b[1] - a[1]),
  };
}
