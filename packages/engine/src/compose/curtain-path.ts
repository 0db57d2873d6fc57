import { bendTangent } from '../curtain/index.js';
import type { RunSegment } from '../design/types.js';
import {
  add2,
  between2,
  cross2,
  distance2,
  dot2,
  left2,
  scale2,
  sub2,
  unit2,
  type Vec2,
} from '../floor/geometry/vec.js';

/** Lengths below this are nothing [m]: a thousandth of what anyone measures. */
const nothing = 1e-6;

/** A track in plan: straights and bends one after another, sharp corners between straights. */
export interface TrackPath {
  readonly segments: readonly RunSegment[];
  readonly length: number;
  readonly closed: boolean;
  /** Sharp corners: distance along the path and angle by which the track turns there [rad]. */
  readonly sharp: readonly { readonly at: number; readonly turn: number }[];
}

/** Why a path cannot be laid. */
export interface PathFault {
  readonly fault: 'no room' | 'folds back' | 'too short' | 'too few corners';
  /** Number of the leg or corner. */
  readonly number: number;
  readonly have: number;
  readonly need: number;
}

/** Angle from one leg to the next, left positive [rad]. Source: geometry. */
export const turnBetween = (u: Vec2, v: Vec2): number => Math.atan2(cross2(u, v), dot2(u, v));

/** Corners without repeated points and without those at which the track runs straight on. */
export function realCorners(corners: readonly Vec2[], closed: boolean): Vec2[] {
  const distinct = corners.filter((c, i) => i === 0 || distance2(c, corners[i - 1]!) > nothing);
  if (closed && distinct.length > 1 && distance2(distinct[0]!, distinct.at(-1)!) <= nothing) distinct.pop();
  const n = distinct.length;
  return distinct.filter((c, i) => {
    if (!closed && (i === 0 || i === n - 1)) return true;
    const u = sub2(c, distinct[(i + n - 1) % n]!);
    const v = sub2(distinct[(i + 1) % n]!, c);
    return Math.abs(turnBetween(u, v)) > 1e-6;
  });
}

/** Angles by which the track turns at its corners, in their order; none at the ends of an open track [rad]. */
export function turnsOf(corners: readonly Vec2[], closed: boolean): (number | null)[] {
  const n = corners.length;
  return corners.map((c, i) => {
    if (!closed && (i === 0 || i === n - 1)) return null;
    return turnBetween(sub2(c, corners[(i + n - 1) % n]!), sub2(corners[(i + 1) % n]!, c));
  });
}

/**
 * Lays a track along corner points: straights between bends of one radius, or between sharp corners for radius 0.
 * A closed track starts where the bend at its first corner ends, and ends with that bend.
 *
 *     straight = leg - R tan(turn/2) at each of its bends
 * @param corners points without repeats or straight-on corners [m]
 * @param radius centre line of the bends, 0 for sharp corners [m]
 * Source: tangents of circles (geometry).
 */
export function trackPath(corners: readonly Vec2[], closed: boolean, radius: number): TrackPath | PathFault {
  const n = corners.length;
  if (n < (closed ? 3 : 2)) return { fault: 'too few corners', number: 0, have: n, need: closed ? 3 : 2 };
  const turns = turnsOf(corners, closed);
  const folded = turns.findIndex((t) => t !== null && Math.abs(t) > Math.PI - 1e-6);
  if (folded >= 0) return { fault: 'folds back', number: folded, have: Math.PI, need: 0 };
  const tangents = turns.map((t) => (t === null ? 0 : bendTangent(radius, Math.abs(t))));
  const segments: RunSegment[] = [];
  const sharp: { at: number; turn: number }[] = [];
  let start = 0;
  const legs = closed ? n : n - 1;
  for (let i = 0; i < legs; i++) {
    const j = (i + 1) % n;
    const from = corners[i]!;
    const to = corners[j]!;
    const leg = distance2(from, to);
    const taken = tangents[i]! + tangents[j]!;
    if (leg - taken < -nothing) return { fault: 'no room', number: i, have: leg, need: taken };
    const u = unit2(sub2(to, from));
    const a = add2(from, scale2(u, tangents[i]!));
    const b = sub2(to, scale2(u, tangents[j]!));
    const length = Math.max(0, leg - taken);
    if (length > nothing) {
      segments.push({ kind: 'straight', from: a, to: b, start, length });
      start += length;
    }
    const turn = turns[j]!;
    if (turn === null) continue;
    if (radius === 0) sharp.push({ at: start, turn });
    else {
      const bend = bendAt(b, u, turn, radius, start);
      segments.push(bend);
      start += bend.length;
    }
  }
  return { segments, length: start, closed, sharp };
}

function bendAt(from: Vec2, direction: Vec2, turn: number, radius: number, start: number): RunSegment {
  const centre = add2(from, scale2(left2(direction), Math.sign(turn) * radius));
  const out = sub2(from, centre);
  const startAngle = Math.atan2(out[1], out[0]);
  const to = onCircle(centre, radius, startAngle + turn);
  return { kind: 'bend', from, to, centre, radius, startAngle, sweep: turn, start, length: radius * Math.abs(turn) };
}

const onCircle = (centre: Vec2, radius: number, angle: number): Vec2 =>
  add2(centre, [radius * Math.cos(angle), radius * Math.sin(angle)]);

/** Distance along the path brought into the path of a closed track. */
const wrapped = (path: TrackPath, at: number): number =>
  path.closed && at > path.length ? at - path.length : path.closed && at < 0 ? at + path.length : at;

const segmentAt = (path: TrackPath, at: number): RunSegment =>
  path.segments.find((s) => at <= s.start + s.length + nothing) ?? path.segments.at(-1)!;

/** Plan point at a distance along the path; past the end of a closed track it goes on from the start. */
export function pointAt(path: TrackPath, distance: number): Vec2 {
  const at = wrapped(path, distance);
  const s = segmentAt(path, at);
  const share = (at - s.start) / s.length;
  return s.kind === 'straight'
    ? between2(s.from, s.to, share)
    : onCircle(s.centre, s.radius, s.startAngle + s.sweep * share);
}

/** Direction of the track at a distance along the path, from east [rad]. */
export function directionAt(path: TrackPath, distance: number): number {
  const at = wrapped(path, distance);
  const s = segmentAt(path, at);
  if (s.kind === 'straight') return Math.atan2(s.to[1] - s.from[1], s.to[0] - s.from[0]);
  return s.startAngle + (s.sweep * (at - s.start)) / s.length + (Math.sign(s.sweep) * Math.PI) / 2;
}

/** Chords that stand for a quarter turn in drawings and distances. */
const chordsPerQuarter = 6;

/** Points of the track line between two distances along it, bends as chords. */
export function lineBetween(path: TrackPath, from: number, to: number): Vec2[] {
  const stops = [0, ...(path.closed ? [path.length] : [])].flatMap((shift) =>
    path.segments.flatMap((s) => {
      const n = s.kind === 'bend' ? Math.max(1, Math.ceil((Math.abs(s.sweep) / (Math.PI / 2)) * chordsPerQuarter)) : 1;
      return Array.from({ length: n + 1 }, (_, k) => shift + s.start + (s.length * k) / n);
    }),
  );
  const inside = stops.filter((at) => at > from + nothing && at < to - nothing);
  const distinct = inside.filter((at, i) => i === 0 || at - inside[i - 1]! > nothing);
  return [from, ...distinct, to].map((at) => pointAt(path, at));
}
