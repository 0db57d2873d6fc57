import { type Bounds, bounds, contains, distanceToSegment, edges, type Ring, type Vec2 } from '@cloche/engine';
import type { Design } from '../engine/contract.js';

interface Stretch {
  readonly wall: number;
  readonly from: number;
  readonly to: number;
}

/** What a new thing must fit between: the walls, what stands on the floor, what is in the walls. */
export interface Ground {
  readonly outline: Ring;
  readonly height: number;
  readonly taken: readonly Ring[];
  readonly inWalls: readonly Stretch[];
}

/** The ground of the drawn room; an empty one of 6 m by 4 m as long as nothing could be drawn. */
export function groundOf(design: Design | undefined): Ground {
  if (!design)
    return {
      outline: [
        [0, 0],
        [6, 0],
        [6, 4],
        [0, 4],
      ],
      height: 3,
      taken: [],
      inWalls: [],
    };
  const { room } = design;
  const corners = room.outline;
  return {
    outline: corners,
    height: room.height,
    taken: [...design.tables, ...design.enclosures, ...design.equipment, ...room.columns, ...room.obstructions].map(
      (thing) => thing.outline,
    ),
    inWalls: [...room.doors, ...room.windows, ...room.boards].map(({ wall, from, to }) => {
      const [a, b] = [away(corners[wall], from), away(corners[wall], to)];
      return { wall, from: Math.min(a, b), to: Math.max(a, b) };
    }),
  };
}

const away = (a: Vec2 | undefined, b: Vec2): number => (a ? Math.hypot(b[0] - a[0], b[1] - a[1]) : 0);

const boxAbout = ([x, y]: Vec2, [length, width]: Vec2): Ring => [
  [x - length / 2, y - width / 2],
  [x + length / 2, y - width / 2],
  [x + length / 2, y + width / 2],
  [x - length / 2, y + width / 2],
];

/** Distance of two upright boxes; below zero where they overlap. */
function apart(a: Bounds, b: Bounds): number {
  const gaps = [0, 1].map((k) => Math.max(a.min[k]! - b.max[k]!, b.min[k]! - a.max[k]!));
  return Math.max(...gaps) < 0 ? Math.max(...gaps) : Math.hypot(...gaps.map((gap) => Math.max(0, gap)));
}

/** Least distance of a box to the walls; below zero where it is not wholly inside. */
function toWalls(outline: Ring, ring: Ring): number {
  if (ring.some((corner) => !contains(outline, corner))) return -1;
  const box = bounds(ring);
  const within = (p: Vec2) => [0, 1].every((k) => p[k]! > box.min[k]! && p[k]! < box.max[k]!);
  if (outline.some(within)) return -1;
  return Math.min(
    ...edges(outline).flatMap(({ from, to }) => ring.map((corner) => distanceToSegment(corner, from, to))),
    ...outline.flatMap((corner) => edges(ring).map(({ from, to }) => distanceToSegment(corner, from, to))),
  );
}

/** More free room than this on all sides makes no place better. */
const enough = 1.2;
/** Places are tried on this grid. */
const grid = 0.1;
/** A hall is tried on a wider grid, so that a click stays quick. */
const mostTries = 6000;

/**
 * Middle of a place for a box: free of walls and of what stands on the floor, with as much room round it as there is, near the middle.
 * @param size length along x and width along y [m]
 * @returns    null when it fits nowhere
 */
export function freePlace({ outline, taken }: Ground, size: Vec2): Vec2 | null {
  const room = bounds(outline);
  const solids = taken.map(bounds);
  const middle: Vec2 = [(room.min[0] + room.max[0]) / 2, (room.min[1] + room.max[1]) / 2];
  const tries = ((room.max[0] - room.min[0]) * (room.max[1] - room.min[1])) / grid ** 2;
  const step = grid * Math.max(1, Math.ceil(Math.sqrt(tries / mostTries)));
  let best: { readonly at: Vec2; readonly score: number } | null = null;
  for (const at of latticeOf(room, middle, step)) {
    const ring = boxAbout(at, size);
    const box = bounds(ring);
    const room = Math.min(toWalls(outline, ring), ...solids.map((solid) => apart(box, solid)));
    if (room < 0) continue;
    const score = Math.min(room, enough) - 0.01 * away(middle, at);
    if (!best || score > best.score + 1e-9) best = { at, score };
  }
  return best?.at ?? null;
}

/** Points over a room, one of them in its middle. */
function* latticeOf(room: Bounds, middle: Vec2, step: number): Generator<Vec2> {
  const reach = (k: 0 | 1) => Math.floor((room.max[k] - middle[k]) / step + 1e-9);
  for (let j = -reach(1); j <= reach(1); j++)
    for (let i = -reach(0); i <= reach(0); i++) yield [middle[0] + i * step, middle[1] + j * step];
}

/** The first of some sizes that fits, with its place; the smallest in the middle of the room when none does. */
export function firstFit(ground: Ground, sizes: readonly Vec2[]): { readonly at: Vec2; readonly size: Vec2 } {
  for (const size of sizes) {
    const at = freePlace(ground, size);
    if (at) return { at, size };
  }
  const { min, max } = bounds(ground.outline);
  return { at: [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2], size: sizes.at(-1)! };
}

/** From corner to corner a free stretch of wall; the longer walls first asked for. */
export function freeStretch(
  { outline, inWalls }: Ground,
  width: number,
  walls: readonly number[] = [],
): { readonly wall: number; readonly at: number } {
  const order = [...new Set([...walls, ...outline.keys()])].filter((wall) => wall < outline.length);
  for (const wall of order) {
    const length = away(outline[wall], outline[(wall + 1) % outline.length]!);
    const busy = inWalls.filter((s) => s.wall === wall);
    for (let at = Math.min(0.5, Math.max(0, (length - width) / 2)); at + width <= length + 1e-9; at += 0.25)
      if (busy.every((s) => at >= s.to + 0.1 || at + width <= s.from - 0.1)) return { wall, at };
  }
  return { wall: 0, at: 0 };
}
