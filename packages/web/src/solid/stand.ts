import { add3, between3, cross3, dot3, length3, scale3, sub3, unit3 } from '@cloche/engine';
import type { Vec2, Vec3 } from '../engine/contract.js';

/** Where the eye is and what it looks at [m]. */
export interface Stand {
  readonly eye: Vec3;
  readonly target: Vec3;
}

/** The set views by where one looks from, as directions from the middle of the room to the eye. */
export const looks = {
  above: [0, -0.0005, 1],
  south: [0, -1, 0.12],
  east: [1, 0, 0.12],
  north: [0, 1, 0.12],
  west: [-1, 0, 0.12],
  corner: [0.5, -1, 0.75],
} as const satisfies Readonly<Record<string, Vec3>>;
export type Look = keyof typeof looks;
export const lookNames = Object.keys(looks) as readonly Look[];

/** Room left round what is looked at: the words over the drawing lie on its edges. */
const margin = 1.16;

export interface Lens {
  /** Full angle of view upright [rad]. */
  readonly angle: number;
  /** Width of the picture over its height. */
  readonly aspect: number;
}

/**
 * Where to stand so that everything is in the picture: the nearest place in a direction from the middle of the points from which
 * each of them lies within the angle of view.
 *
 *     far = max over points of (c · n + |c · side| / tan(half angle across), c · n + |c · up| / tan(half angle upright))
 * with c from the middle to the point and n the unit direction to the eye.
 */
export function standFor(points: readonly Vec3[], direction: Vec3, { angle, aspect }: Lens): Stand {
  const middle = middleOf(points);
  const n = unit3(direction);
  const side = unit3(cross3([0, 0, 1], n));
  const upright = cross3(n, side);
  const tan = Math.tan(angle / 2);
  const far = points.map((p) => {
    const c = sub3(p, middle);
    return dot3(c, n) + Math.max(Math.abs(dot3(c, side)) / (tan * aspect), Math.abs(dot3(c, upright)) / tan) * margin;
  });
  const distance = Math.max(0.5, ...far);
  return { eye: add3(middle, scale3(n, distance)), target: middle };
}

const middleOf = (points: readonly Vec3[]): Vec3 => {
  const mid = (k: 0 | 1 | 2) => {
    const all = points.map((p) => p[k]);
    return (Math.min(...all) + Math.max(...all)) / 2;
  };
  return [mid(0), mid(1), mid(2)];
};

/** Corners of a room. */
export const roomPoints = (outline: readonly Vec2[], height: number): readonly Vec3[] =>
  outline.flatMap(([x, y]): Vec3[] => [
    [x, y, 0],
    [x, y, height],
  ]);

/**
 * Upright angle of view of a picture, such that its shorter side always sees the same angle: what was in the picture stays in it when the
 * picture becomes narrower.
 */
export const uprightAngle = (shorter: number, aspect: number): number =>
  aspect >= 1 ? shorter : 2 * Math.atan(Math.tan(shorter / 2) / aspect);

/** On the way from one stand to another: round what is looked at by the shorter way, never through it. */
export function standBetween(from: Stand, to: Stand, share: number): Stand {
  const [a, b] = [roundTarget(from), roundTarget(to)];
  const mix = (x: number, y: number) => x + (y - x) * share;
  const turn = Math.atan2(Math.sin(b.azimuth - a.azimuth), Math.cos(b.azimuth - a.azimuth));
  const azimuth = a.azimuth + turn * share;
  const elevation = mix(a.elevation, b.elevation);
  const far = mix(a.far, b.far);
  const target = between3(from.target, to.target, share);
  const level = Math.cos(elevation);
  const way: Vec3 = [Math.cos(azimuth) * level, Math.sin(azimuth) * level, Math.sin(elevation)];
  return { eye: add3(target, scale3(way, far)), target };
}

function roundTarget({ eye, target }: Stand) {
  const d = sub3(eye, target);
  return { far: length3(d), azimuth: Math.atan2(d[1], d[0]), elevation: Math.asin(d[2] / length3(d)) };
}
