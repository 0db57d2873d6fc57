import { closestOnSegment, contains, edges, type Ring } from '../floor/geometry/polygon.js';
import { add2, between2, cross2, distance2, sub2, type Vec2 } from '../floor/geometry/vec.js';
import { type Outcome, ok, positive, refuse } from '../floor/problem.js';
import { badSweep } from './messages.js';

/** What a door leaf sweeps: hinge [m], leaf width [m], angles of the leaf closed and open from east, either way round [rad]. */
export interface SwingSector {
  readonly hinge: Vec2;
  readonly leaf: number;
  readonly from: number;
  readonly to: number;
}

/**
 * Floor area that a door leaf sweeps.
 *
 *     A = r^2 |b - a| / 2
 * @param sector leaf width r [m], angles a, b [rad]; turning by more than a full circle is refused
 * @returns      area [m2], or `room/door-leaf`, `room/door-sweep`
 * Source: area of a circular sector (derived).
 */
export function swingArea(sector: SwingSector): Outcome<number> {
  const sweep = Math.abs(sector.to - sector.from);
  const problems = positive('room/door-leaf', 'leaf', sector.leaf, 'm');
  if (!(sweep > 0 && sweep <= 2 * Math.PI)) problems.push(badSweep());
  return problems.length > 0 ? refuse(problems) : ok((sector.leaf ** 2 * sweep) / 2);
}

/**
 * Whether a point lies where the leaf sweeps; the edge counts.
 * Source: plan geometry (derived).
 */
export function swingHolds(sector: SwingSector, p: Vec2): boolean {
  const d = sub2(p, sector.hinge);
  if (Math.hypot(d[0], d[1]) > sector.leaf + 1e-9) return false;
  return angleWithin(sector, Math.atan2(d[1], d[0]));
}

function angleWithin(sector: SwingSector, angle: number): boolean {
  const low = Math.min(sector.from, sector.to);
  const turn = (angle - low) % (2 * Math.PI);
  const positiveTurn = turn < -1e-9 ? turn + 2 * Math.PI : turn;
  return positiveTurn <= Math.abs(sector.to - sector.from) + 1e-9;
}

/**
 * How long a leaf could be and still swing past the outlines: least distance from the hinge to any of them within the angle of
 * the swing, with the place. `free` is unlimited when nothing stands there.
 * @param sector   the door leaf
 * @param outlines rings, or two points for a curtain
 * Source: plan geometry: edges clipped to the angle, then point to segment (derived).
 */
export function freeSwing(
  sector: SwingSector,
  outlines: readonly Ring[],
): { readonly free: number; readonly at: Vec2 | null; readonly which: number } {
  let best = { free: Number.POSITIVE_INFINITY, at: null as Vec2 | null, which: -1 };
  outlines.forEach((ring, which) => {
    if (ring.length > 2 && contains(ring, sector.hinge)) best = { free: 0, at: sector.hinge, which };
    for (const wedge of wedges(sector))
      for (const edge of edges(ring)) {
        const part = clipToWedge(edge.from, edge.to, sector.hinge, wedge);
        if (!part) continue;
        const at = closestOnSegment(sector.hinge, part[0], part[1]);
        const free = distance2(at, sector.hinge);
        if (free < best.free) best = { free, at, which };
      }
  });
  return best;
}

/** The swing in wedges of at most a quarter turn each, so that each is the meeting of two half planes. */
function wedges(sector: SwingSector): (readonly [number, number])[] {
  const low = Math.min(sector.from, sector.to);
  const sweep = Math.abs(sector.to - sector.from);
  const parts = Math.max(1, Math.ceil(sweep / (Math.PI / 2) - 1e-9));
  return Array.from({ length: parts }, (_, i) => [low + (sweep * i) / parts, low + (sweep * (i + 1)) / parts] as const);
}

function clipToWedge(
  a: Vec2,
  b: Vec2,
  hinge: Vec2,
  [low, high]: readonly [number, number],
): readonly [Vec2, Vec2] | null {
  let part: readonly [Vec2, Vec2] | null = [a, b];
  const left: Vec2 = [Math.cos(low), Math.sin(low)];
  const right: Vec2 = [-Math.cos(high), -Math.sin(high)];
  for (const direction of [left, right]) part = part && clipToLeft(part, hinge, direction);
  return part;
}

/** The part of a segment on the left of a line through `origin`; null when there is none. */
function clipToLeft([a, b]: readonly [Vec2, Vec2], origin: Vec2, direction: Vec2): readonly [Vec2, Vec2] | null {
  const sa = cross2(direction, sub2(a, origin));
  const sb = cross2(direction, sub2(b, origin));
  if (sa < 0 && sb < 0) return null;
  if (sa >= 0 && sb >= 0) return [a, b];
  const cut = between2(a, b, sa / (sa - sb));
  return sa >= 0 ? [a, cut] : [cut, b];
}

/** The corner points of a swing as a ring with short chords outside the arc, for drawing and as a keep-out. Source: derived. */
export function swingRing(sector: SwingSector, parts = 12): Ring {
  const low = Math.min(sector.from, sector.to);
  const step = Math.abs(sector.to - sector.from) / parts;
  const radius = sector.leaf / Math.cos(step / 2);
  const arc = Array.from({ length: parts }, (_, i) => {
    const angle = low + step * (i + 0.5);
    return add2(sector.hinge, [radius * Math.cos(angle), radius * Math.sin(angle)]);
  });
  const end = (angle: number): Vec2 =>
    add2(sector.hinge, [sector.leaf * Math.cos(angle), sector.leaf * Math.sin(angle)]);
  return [sector.hinge, end(low), ...arc, end(low + step * parts)];
}
