import type { Design } from '../engine/contract.js';
import { boxOf } from '../plan/card-corner.js';
import { wallThickness } from '../plan/wall-band.js';
import type { Axis } from './section.js';

/** Where a cut may lie: from outside the one wall to outside the other, from the floor to the ceiling [m]. */
export function cutLimits({ outline, height }: Design['room'], axis: Axis): readonly [number, number] {
  if (axis === 2) return [0, height];
  const { min, max } = boxOf(outline);
  return [min[axis] - wallThickness, max[axis] + wallThickness];
}

/** A first cut through the middle; from the floor at the height in which plans are cut [m] (common practice). */
const planHeight = 1.2;

export function middleCut(room: Design['room'], axis: Axis): number {
  const [low, high] = cutLimits(room, axis);
  return axis === 2 ? Math.min(planHeight, high) : (low + high) / 2;
}
