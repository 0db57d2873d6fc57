import type { Ring, Shape, Vec2, Vec3 } from '../engine/contract.js';
import { wave } from './wave.js';

const number = (value: number): string => String(Math.round(value * 1e5) / 1e5);
const point = ([x, y]: Vec2): string => `${number(x)} ${number(y)}`;

export const linePath = (points: readonly Vec2[]): string =>
  points.length < 2 ? '' : `M${points.map(point).join('L')}`;
export const ringPath = (ring: Ring): string => `${linePath(ring)}Z`;

/** Arc about a centre, angles counter-clockwise in the plan. */
export function arcPath(centre: Vec2, radius: number, start: number, end: number): string {
  const on = (angle: number): Vec2 => [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
  const large = Math.abs(end - start) > Math.PI ? 1 : 0;
  return `M${point(on(start))}A${number(radius)} ${number(radius)} 0 ${large} ${end > start ? 1 : 0} ${point(on(end))}`;
}

export function rectangleRing(centre: Vec2, length: number, width: number, turn: number): Ring {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const corners: Vec2[] = [
    [-length / 2, -width / 2],
    [length / 2, -width / 2],
    [length / 2, width / 2],
    [-length / 2, width / 2],
  ];
  return corners.map(([x, y]) => [centre[0] + x * c - y * s, centre[1] + x * s + y * c]);
}

const flat = ([x, y]: Vec3): Vec2 => [x, y];

function barPath(shape: Extract<Shape, { shape: 'bar' }>): string {
  const [a, b] = [flat(shape.from), flat(shape.to)];
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const middle: Vec2 = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  if (length > 1e-4) return ringPath(rectangleRing(middle, length, shape.width, Math.atan2(b[1] - a[1], b[0] - a[0])));
  const across = shape.across ?? [1, 0];
  return ringPath(rectangleRing(middle, shape.width, shape.height, Math.atan2(across[1], across[0])));
}

function bendPath(shape: Extract<Shape, { shape: 'bend' }>): string {
  const centre = flat(shape.centre);
  const end = shape.start + shape.sweep;
  return [-1, 1].map((side) => arcPath(centre, shape.radius + (side * shape.width) / 2, shape.start, end)).join('');
}

/** Period of a curtain's wave in the plan: longer than its real folds, so that it can be seen at room scale [m]. */
const drawnPeriod = 0.36;

/** A part as seen from above, as path data in metres. */
export function partPath(shape: Shape): string {
  switch (shape.shape) {
    case 'bar':
      return barPath(shape);
    case 'bend':
      return bendPath(shape);
    case 'box':
      return ringPath(rectangleRing(flat(shape.centre), shape.length, shape.width, shape.turn));
    case 'plate':
      return ringPath(shape.corners.map(flat));
    case 'cloth':
      return linePath(wave(shape.line, shape.fullness, drawnPeriod));
    case 'loose':
      return '';
  }
}
