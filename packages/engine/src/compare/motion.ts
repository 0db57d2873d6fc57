import { cross2, dot2, plan, sub2, turn2, type Vec2, type Vec3 } from '../floor/geometry/vec.js';
import { sameAngle, sameLength } from './quantities.js';

/** A thing moved and turned about its own middle. */
export interface Motion {
  readonly shift: Vec3;
  /** Counter-clockwise, in (-pi, pi] [rad]. */
  readonly turn: number;
}

export const still: Motion = { shift: [0, 0, 0], turn: 0 };

/** An angle in (-pi, pi]. */
export const wholeTurn = (angle: number): number => Math.atan2(Math.sin(angle), Math.cos(angle));

const mean = (points: readonly Vec3[]): Vec3 => {
  const sum = (k: 0 | 1 | 2) => points.reduce((all, p) => all + p[k], 0) / points.length;
  return [sum(0), sum(1), sum(2)];
};

export const difference = (after: Vec3, before: Vec3): Vec3 => [
  after[0] - before[0],
  after[1] - before[1],
  after[2] - before[2],
];

/** Point by point in the same place. */
export const samePlaces = (a: readonly Vec3[], b: readonly Vec3[]): boolean =>
  a.length === b.length && a.every((p, i) => difference(p, b[i]!).every((d) => Math.abs(d) <= sameLength));

/** Points as they lie after a motion about a middle. */
export const carried = (points: readonly Vec3[], about: Vec3, { shift, turn }: Motion): Vec3[] =>
  points.map((p) => {
    const [x, y] = turn2(sub2(plan(p), plan(about)), turn);
    return [about[0] + shift[0] + x, about[1] + shift[1] + y, p[2] + shift[2]];
  });

/**
 * The motion that takes one set of points to another without changing its form: the turn about the upright axis that fits the points
 * best in the sense of least squares, and the shift of their middle.
 *
 *     turn = atan2(sum of a_i x b_i, sum of a_i . b_i)     a_i, b_i from the middle of each set
 * @param before points [m]
 * @param after  the same points, in the same order [m]
 * @returns      null when the form changed by more than `sameLength`
 * Source: geometry (derived): least squares for a rotation in the plane.
 */
export function rigidMotion(before: readonly Vec3[], after: readonly Vec3[]): Motion | null {
  if (before.length === 0 || before.length !== after.length) return null;
  const [from, to] = [mean(before), mean(after)];
  const arms = (points: readonly Vec3[], middle: Vec3): Vec2[] => points.map((p) => sub2(plan(p), plan(middle)));
  const [a, b] = [arms(before, from), arms(after, to)];
  const across = a.reduce((sum, arm, i) => sum + cross2(arm, b[i]!), 0);
  const along = a.reduce((sum, arm, i) => sum + dot2(arm, b[i]!), 0);
  const angle = Math.atan2(across, along);
  // Points over each other have no direction; what is left of one is noise.
  const turn = Math.hypot(across, along) <= sameLength ** 2 || Math.abs(angle) <= sameAngle ? 0 : angle;
  const motion = { shift: difference(to, from), turn };
  return samePlaces(carried(before, from, motion), after) ? motion : null;
}

export const isStill = ({ shift, turn }: Motion): boolean =>
  shift.every((d) => Math.abs(d) <= sameLength) && Math.abs(turn) <= sameAngle;

export const middleOf = mean;
