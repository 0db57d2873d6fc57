import { add3, cross3, dot3, scale3, sub3, unit3 } from '@cloche/engine';
import type { Shape, Vec2, Vec3 } from '../engine/contract.js';

/** A box in space by its middle, three unit axes and its sizes along them. */
export interface SolidBox {
  readonly middle: Vec3;
  readonly axes: readonly [Vec3, Vec3, Vec3];
  readonly sizes: Vec3;
}

const up: Vec3 = [0, 0, 1];

/** Longest angle of a chord that stands for a bent bar [rad]. */
const chordAngle = Math.PI / 24;

function barBox(shape: Extract<Shape, { shape: 'bar' }>): SolidBox {
  const d: Vec3 = [shape.to[0] - shape.from[0], shape.to[1] - shape.from[1], shape.to[2] - shape.from[2]];
  const length = Math.hypot(...d) || 1e-6;
  const along: Vec3 = [d[0] / length, d[1] / length, d[2] / length];
  const level = Math.hypot(along[0], along[1]);
  const given = shape.across ?? [1, 0];
  const across: Vec3 = level < 1e-6 ? [given[0], given[1], 0] : [-along[1] / level, along[0] / level, 0];
  return {
    middle: [(shape.from[0] + shape.to[0]) / 2, (shape.from[1] + shape.to[1]) / 2, (shape.from[2] + shape.to[2]) / 2],
    axes: [along, across, cross3(along, across)],
    sizes: [length, shape.width, shape.height],
  };
}

function bendBoxes(shape: Extract<Shape, { shape: 'bend' }>): SolidBox[] {
  const chords = Math.max(1, Math.ceil(Math.abs(shape.sweep) / chordAngle));
  const on = (k: number): Vec3 => {
    const angle = shape.start + (shape.sweep * k) / chords;
    return [
      shape.centre[0] + shape.radius * Math.cos(angle),
      shape.centre[1] + shape.radius * Math.sin(angle),
      shape.centre[2],
    ];
  };
  return Array.from({ length: chords }, (_, k) =>
    barBox({ shape: 'bar', from: on(k), to: on(k + 1), width: shape.width, height: shape.height }),
  );
}

/** The boxes that a part is drawn by in space; none for plates, cloth and loose parts. */
export function boxesOf(shape: Shape): readonly SolidBox[] {
  switch (shape.shape) {
    case 'bar':
      return [barBox(shape)];
    case 'bend':
      return bendBoxes(shape);
    case 'box':
      return [uprightBox(shape.centre, shape.length, shape.width, shape.height, shape.turn)];
    default:
      return [];
  }
}

export function uprightBox(middle: Vec3, length: number, width: number, height: number, turn: number): SolidBox {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return { middle, axes: [[c, s, 0], [-s, c, 0], up], sizes: [length, width, height] };
}

/** The upright box over a rectangle of the plan. */
export function boxOver(ring: readonly Vec2[], bottom: number, top: number): SolidBox {
  const [a, b, c] = [ring[0]!, ring[1]!, ring[2]!];
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const width = Math.hypot(c[0] - b[0], c[1] - b[1]);
  const middle: Vec3 = [(a[0] + c[0]) / 2, (a[1] + c[1]) / 2, (bottom + top) / 2];
  return uprightBox(middle, length, width, top - bottom, Math.atan2(b[1] - a[1], b[0] - a[0]));
}

/** A flat plate as a box: its first edge, the edge that follows, its thickness half to each side. */
export function plateBox({ corners, thickness }: Extract<Shape, { shape: 'plate' }>): SolidBox {
  const along = unit3(sub3(corners[1]!, corners[0]!));
  const normal = unit3(cross3(along, sub3(corners[2]!, corners[0]!)));
  const axes = [along, cross3(normal, along), normal] as const;
  const spans = axes.map((axis) => {
    const places = corners.map((c) => dot3(axis, c));
    return [Math.min(...places), Math.max(...places)] as const;
  });
  const middle = axes.reduce<Vec3>(
    (sum, axis, i) => add3(sum, scale3(axis, (spans[i]![0] + spans[i]![1]) / 2)),
    [0, 0, 0],
  );
  const size = (i: number) => spans[i]![1] - spans[i]![0];
  return { middle, axes, sizes: [size(0), size(1), thickness] };
}

/** Thickness that hanging cloth is touched with [m]. */
const clothThickness = 0.04;

/** Hanging cloth as thin upright boxes along its line. */
export const clothBoxes = ({ line, top, bottom }: Extract<Shape, { shape: 'cloth' }>): readonly SolidBox[] =>
  line.slice(1).map((b, i) => {
    const a = line[i]!;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const middle: Vec3 = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (bottom + top) / 2];
    return uprightBox(middle, length, clothThickness, top - bottom, Math.atan2(b[1] - a[1], b[0] - a[0]));
  });

export const moved = (box: SolidBox, by: Vec3): SolidBox => ({ ...box, middle: add3(box.middle, by) });

/** Where a point lies along the axes of a box, from its middle. */
export function within(box: SolidBox, point: Vec3): Vec3 {
  const d = sub3(point, box.middle);
  return [dot3(box.axes[0], d), dot3(box.axes[1], d), dot3(box.axes[2], d)];
}

/** Whether a point lies in a box or at most `reach` from its faces. */
export const holds = (box: SolidBox, point: Vec3, reach: number): boolean =>
  within(box, point).every((place, i) => Math.abs(place) <= box.sizes[i]! / 2 + reach);

/** From where to where a box reaches along an axis of the room. */
export function reachAlong({ middle, axes, sizes }: SolidBox, axis: 0 | 1 | 2): readonly [number, number] {
  const half = axes.reduce((sum, a, i) => sum + (Math.abs(a[axis]) * sizes[i]!) / 2, 0);
  return [middle[axis] - half, middle[axis] + half];
}

/** The eight corners of a box, and its twelve edges as pairs of them. */
export function cornersOf({ middle, axes, sizes }: SolidBox): readonly Vec3[] {
  const corner = (i: number): Vec3 => {
    const signs = [i & 1 ? 0.5 : -0.5, i & 2 ? 0.5 : -0.5, i & 4 ? 0.5 : -0.5];
    const at = (k: 0 | 1 | 2) => middle[k] + axes.reduce((sum, axis, j) => sum + axis[k] * sizes[j]! * signs[j]!, 0);
    return [at(0), at(1), at(2)];
  };
  return Array.from({ length: 8 }, (_, i) => corner(i));
}

export const boxEdges: readonly (readonly [number, number])[] = [
  [0, 1],
  [2, 3],
  [4, 5],
  [6, 7],
  [0, 2],
  [1, 3],
  [4, 6],
  [5, 7],
  [0, 4],
  [1, 5],
  [2, 6],
  [3, 7],
];
