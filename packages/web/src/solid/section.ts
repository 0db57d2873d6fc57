import type { Vec2, Vec3 } from '../engine/contract.js';
import { boxEdges } from './boxes.js';

/** Axis that a cut stands across: 0 east, 1 north, 2 up. */
export type Axis = 0 | 1 | 2;

/** A plane that opens the drawing; what lies on its kept side stays. */
export interface Cut {
  readonly axis: Axis;
  /** Place along the axis [m]. */
  readonly at: number;
  readonly keeps: 'lesser' | 'greater';
}

export const isKept = ({ axis, at, keeps }: Cut, point: Vec3): boolean =>
  keeps === 'lesser' ? point[axis] <= at : point[axis] >= at;

const between = (a: Vec3, b: Vec3, axis: Axis, at: number): Vec3 => {
  const t = (at - a[axis]) / (b[axis] - a[axis]);
  const on: [number, number, number] = [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t];
  on[axis] = at;
  return on;
};

/** The two coordinates in a plane across an axis. */
export const inPlane = (axis: Axis, p: Vec3): Vec2 =>
  axis === 0 ? [p[1], p[2]] : axis === 1 ? [p[0], p[2]] : [p[0], p[1]];
export const outOfPlane = (axis: Axis, at: number, [u, v]: Vec2): Vec3 =>
  axis === 0 ? [at, u, v] : axis === 1 ? [u, at, v] : [u, v, at];

/** A plane that only touches a face would cut it or not by the last binary digit; it is taken to lie this much further [m]. */
const beside = 1e-7;

/**
 * The face that a plane cuts from a convex body of eight corners (numbered as the corners of a box), in order round its middle; empty
 * where the plane passes by.
 */
export function sectionOf(corners: readonly Vec3[], axis: Axis, at: number): readonly Vec3[] {
  const place = at + beside;
  const points = boxEdges.flatMap(([i, j]) => {
    const [a, b] = [corners[i]!, corners[j]!];
    return a[axis] < place !== b[axis] < place ? [between(a, b, axis, place)] : [];
  });
  if (points.length < 3) return [];
  const flat = points.map((p) => inPlane(axis, p));
  const middle: Vec2 = [
    flat.reduce((sum, p) => sum + p[0], 0) / flat.length,
    flat.reduce((sum, p) => sum + p[1], 0) / flat.length,
  ];
  const angle = (p: Vec2) => Math.atan2(p[1] - middle[1], p[0] - middle[0]);
  return [...flat].sort((a, b) => angle(a) - angle(b)).map((p) => outOfPlane(axis, at, p));
}

/** What another cut leaves of a face. */
export function keptFace(face: readonly Vec3[], cut: Cut): readonly Vec3[] {
  return face.flatMap((a, i) => {
    const b = face[(i + 1) % face.length]!;
    const [inA, inB] = [isKept(cut, a), isKept(cut, b)];
    const crossing = inA !== inB && a[cut.axis] !== b[cut.axis] ? [between(a, b, cut.axis, cut.at)] : [];
    return inA ? [a, ...crossing] : crossing;
  });
}

/** What a cut leaves of a stretch; null when nothing. */
export function keptStretch(a: Vec3, b: Vec3, cut: Cut): readonly [Vec3, Vec3] | null {
  const [inA, inB] = [isKept(cut, a), isKept(cut, b)];
  if (!inA && !inB) return null;
  if (inA && inB) return [a, b];
  const on = between(a, b, cut.axis, cut.at);
  return inA ? [a, on] : [on, b];
}
