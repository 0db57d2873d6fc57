import { closestOnSegment, contains, distance2 } from '@cloche/engine';
import type { Design, Ring, Vec2 } from '../engine/contract.js';

type Stretch = readonly [Vec2, Vec2];

/** What a person on foot cannot pass. */
export interface Ground {
  readonly room: Ring;
  readonly stretches: readonly Stretch[];
  readonly solids: readonly Ring[];
}

/** Half the width that a person takes, shoulders [m] (common practice). */
export const bodyRadius = 0.25;
/** What ends under this is stepped over, what begins above it and the head is walked under [m] (common practice). */
const stepHeight = 0.12;
const headRoom = 1.9;

const ringStretches = (ring: Ring): Stretch[] => ring.map((a, i) => [a, ring[(i + 1) % ring.length]!] as const);

/** Walls, tables, equipment, columns and rigid panels stop a walk; curtains can be parted. */
export function groundOf(design: Design): Ground {
  const { room } = design;
  const solids = [
    ...design.tables.map((t) => t.outline),
    ...[...design.equipment, ...room.columns, ...room.obstructions]
      .filter((s) => s.top > stepHeight && s.bottom < headRoom)
      .map((s) => s.outline),
  ];
  const panels = design.parts.flatMap(({ role, shape }): Stretch[] => {
    if (role !== 'side panel' || shape.shape !== 'plate') return [];
    const low = Math.min(...shape.corners.map((c) => c[2]));
    if (low > headRoom) return [];
    const ends = shape.corners.filter((c) => Math.abs(c[2] - low) < 1e-6).map((c): Vec2 => [c[0], c[1]]);
    return ends.length >= 2 ? [[ends[0]!, ends[1]!]] : [];
  });
  return {
    room: room.outline,
    stretches: [...ringStretches(room.outline), ...solids.flatMap(ringStretches), ...panels],
    solids,
  };
}

const nearestOn = ([a, b]: Stretch, p: Vec2): Vec2 => closestOnSegment(p, a, b);

const noise = 1e-6;

/** Whether a person may stand at a place. */
export const isFree = (ground: Ground, at: Vec2): boolean =>
  contains(ground.room, at) &&
  !ground.solids.some((ring) => contains(ring, at)) &&
  ground.stretches.every((s) => distance2(at, nearestOn(s, at)) >= bodyRadius - noise);

/** Longest step that is looked at in one piece [m]: shorter than a body, so that no thin panel is passed through. */
const longestStep = 0.1;

/** One walk along a straight wish: what stands in the way turns it along itself, or ends it. */
export function walked(ground: Ground, from: Vec2, wish: Vec2): Vec2 {
  const pieces = Math.max(1, Math.ceil(Math.hypot(...wish) / longestStep));
  let at = from;
  for (let i = 0; i < pieces; i++) at = stepped(ground, at, [wish[0] / pieces, wish[1] / pieces]);
  return at;
}

function stepped(ground: Ground, from: Vec2, by: Vec2): Vec2 {
  let to: Vec2 = [from[0] + by[0], from[1] + by[1]];
  for (let round = 0; round < 4; round++) {
    const hit = ground.stretches
      .map((s) => nearestOn(s, to))
      .map((on) => ({ on, far: distance2(to, on) }))
      .reduce((best, next) => (next.far < best.far ? next : best));
    if (hit.far >= bodyRadius - noise) break;
    if (hit.far < 1e-9) return from;
    const push = bodyRadius / hit.far;
    to = [hit.on[0] + (to[0] - hit.on[0]) * push, hit.on[1] + (to[1] - hit.on[1]) * push];
  }
  return isFree(ground, to) ? to : from;
}

/** A place to begin a walk: inside the first way out, else the free place nearest to the middle of the room; null where nobody fits in. */
export function firstPlace(design: Design, ground: Ground): Vec2 | null {
  const { outline, doors } = design.room;
  const door = doors.find((d) => d.exit) ?? doors[0];
  if (door) {
    const middle: Vec2 = [(door.from[0] + door.to[0]) / 2, (door.from[1] + door.to[1]) / 2];
    for (const far of [0.6, 0.4, 0.9, 1.3]) {
      const at: Vec2 = [middle[0] + door.inward[0] * far, middle[1] + door.inward[1] * far];
      if (isFree(ground, at)) return at;
    }
  }
  return freeNear(ground, outline);
}

const grid = 0.2;

function freeNear(ground: Ground, outline: Ring): Vec2 | null {
  const [xs, ys] = [outline.map((p) => p[0]), outline.map((p) => p[1])];
  const [west, south, east, north] = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
  const middle: Vec2 = [(west + east) / 2, (south + north) / 2];
  let best: Vec2 | null = null;
  const far = (p: Vec2) => distance2(p, middle);
  for (let x = west + grid / 2; x < east; x += grid)
    for (let y = south + grid / 2; y < north; y += grid)
      if ((best === null || far([x, y]) < far(best)) && isFree(ground, [x, y])) best = [x, y];
  return best;
}
