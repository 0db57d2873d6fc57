import type { Design, Vec2 } from '../engine/contract.js';
import { linePath, ringPath } from './path-text.js';
import { wallThickness } from './wall-band.js';

type Opening = Design['room']['windows'][number];

/** Point of an opening in the wall: share along it, share of the wall thickness outward. */
const inWall = (opening: Opening, end: 'from' | 'to', share: number): Vec2 => {
  const p = opening[end];
  const depth = wallThickness * share;
  return [p[0] - opening.inward[0] * depth, p[1] - opening.inward[1] * depth];
};

/** The hole that an opening leaves in the wall, a little beyond both faces. */
export const openingRing = (opening: Opening): string =>
  ringPath([
    inWall(opening, 'from', -0.06),
    inWall(opening, 'to', -0.06),
    inWall(opening, 'to', 1.06),
    inWall(opening, 'from', 1.06),
  ]);

export const acrossWall = (opening: Opening, share: number): string =>
  linePath([inWall(opening, 'from', share), inWall(opening, 'to', share)]);
