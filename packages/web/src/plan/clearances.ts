import { bounds, edges, type Ring, type Vec2 } from '@cloche/engine';
import type { Design } from '../engine/contract.js';
import { extentOf } from './places.js';
import type { Box } from './view.js';

export type Side = 'west' | 'east' | 'south' | 'north';

/** From the outermost point of a thing on one side straight to the wall. */
export interface Clearance {
  readonly side: Side;
  readonly from: Vec2;
  readonly to: Vec2;
  readonly distance: number;
}

export const directions: Readonly<Record<Side, Vec2>> = { west: [-1, 0], east: [1, 0], south: [0, -1], north: [0, 1] };

/**
 * Distance from a point to the first wall in a direction.
 * @returns null when no wall lies there [m]
 */
export function toWall(outline: Ring, from: Vec2, [dx, dy]: Vec2): number | null {
  const hits = edges(outline).flatMap(({ from: a, to: b }) => {
    const [ex, ey] = [b[0] - a[0], b[1] - a[1]];
    const cross = dx * ey - dy * ex;
    if (Math.abs(cross) < 1e-12) return [];
    const [px, py] = [a[0] - from[0], a[1] - from[1]];
    const t = (px * ey - py * ex) / cross;
    const s = (px * dy - py * dx) / cross;
    return t >= -1e-9 && s >= -1e-9 && s <= 1 + 1e-9 ? [Math.max(0, t)] : [];
  });
  return hits.length === 0 ? null : Math.min(...hits);
}

/** What a thing leaves free to the walls, from the middle of each side of the box round it. */
export const clearancesOf = (design: Design, id: string): readonly Clearance[] =>
  clearancesAbout(design.room.outline, extentOf(design, id));

/** The same for anything that covers some points of the plan. */
export function clearancesAbout(outline: Ring, points: readonly Vec2[]): readonly Clearance[] {
  if (points.length === 0) return [];
  const { min, max } = bounds(points);
  const [x, y] = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
  const starts: Readonly<Record<Side, Vec2>> = {
    west: [min[0], y],
    east: [max[0], y],
    south: [x, min[1]],
    north: [x, max[1]],
  };
  return (Object.keys(directions) as Side[]).flatMap((side) => {
    const [from, direction] = [starts[side], directions[side]];
    const distance = toWall(outline, from, direction);
    if (distance === null) return [];
    const to: Vec2 = [from[0] + direction[0] * distance, from[1] + direction[1] * distance];
    return [{ side, from, to, distance }];
  });
}

/** The move that gives a clearance another size. */
export function moveFor({ side, distance }: Clearance, wanted: number): Vec2 {
  const [x, y] = directions[side];
  return [x * (distance - wanted), y * (distance - wanted)];
}

export const middleOf = ({ from, to }: Clearance): Vec2 => [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];

/** Room that a typed distance takes on the sheet, pixels. */
export const distanceBox = ([x, y]: Vec2): Box => ({ min: [x - 40, y - 13], max: [x + 40, y + 13] });
