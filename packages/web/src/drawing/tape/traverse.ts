import { distance2, type Vec2 } from '@cloche/engine';

/** One wall as taped: its length, and the turn at its end to the next (left positive) [m, rad]. */
export interface TapedWall {
  readonly length: number;
  readonly turn: number;
}

export interface Traverse {
  /** Where each wall starts; the first is the origin. */
  readonly corners: readonly Vec2[];
  /** Each wall as a vector. */
  readonly legs: readonly Vec2[];
  /** From the first corner to where the last wall ends: nothing when the list closes [m]. */
  readonly error: Vec2;
  readonly perimeter: number;
  /** What the turns of a closed room leave of a full turn [rad]. */
  readonly turnError: number;
}

/**
 * Walls one after the other.
 *
 *     leg_i = L_i · (cos a_i, sin a_i),  a_(i+1) = a_i + turn_i,  error = sum of legs
 * @param walls   in order round the room [m, rad]
 * @param heading which way the first wall runs, from east [rad]
 * Source: closed traverse, latitudes and departures: Wolf and Ghilani, Elementary Surveying, chapter 10 (from memory).
 */
export function traverse(walls: readonly TapedWall[], heading = 0): Traverse {
  const legs: Vec2[] = [];
  let angle = heading;
  for (const { length, turn } of walls) {
    legs.push([length * exact(Math.cos(angle)), length * exact(Math.sin(angle))]);
    angle += turn;
  }
  const turned = angle - heading;
  const whole = turned < 0 ? -2 * Math.PI : 2 * Math.PI;
  return { ...cornersOf(legs), legs, perimeter: sum(walls.map((w) => w.length)), turnError: turned - whole };
}

/** Right angles leave nothing of a cosine. */
const exact = (value: number): number => (Math.abs(value) < 1e-12 ? 0 : value);
const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

/** Where legs start, one after the other, and where the last ends. */
export function cornersOf(legs: readonly Vec2[]): { readonly corners: readonly Vec2[]; readonly error: Vec2 } {
  const corners: Vec2[] = [];
  let at: Vec2 = [0, 0];
  for (const [dx, dy] of legs) {
    corners.push(at);
    at = [at[0] + dx, at[1] + dy];
  }
  return { corners, error: at };
}

/**
 * Spreads the closing error over all walls in proportion to their length (compass rule, Bowditch). Right angles do not stay quite
 * right: the rule takes lengths and angles to be equally good.
 *
 *     correction_i = -error · L_i / sum of L
 * @param legs  walls as vectors [m]
 * @returns     the corrections, wall by wall; they add up to the error with its sign turned [m]
 * Source: compass (Bowditch) rule: Wolf and Ghilani, Elementary Surveying, section 10.7 (from memory).
 */
export function compassRule(legs: readonly Vec2[]): readonly Vec2[] {
  const { error } = cornersOf(legs);
  const lengths = legs.map((leg) => Math.hypot(...leg));
  const perimeter = sum(lengths);
  return lengths.map(
    (length): Vec2 => (perimeter === 0 ? [0, 0] : [(-error[0] * length) / perimeter, (-error[1] * length) / perimeter]),
  );
}

/** Corners with the error spread by the compass rule. */
export function spreadCorners({ legs }: Traverse): readonly Vec2[] {
  const corrections = compassRule(legs);
  return cornersOf(legs.map((leg, i): Vec2 => [leg[0] + corrections[i]![0], leg[1] + corrections[i]![1]])).corners;
}

/** Walls whose length alone could be wrong: they run the way the error points, within 10 degrees. */
export function suspects({ legs, error }: Traverse): readonly number[] {
  const size = Math.hypot(...error);
  if (size < 1e-4) return [];
  return legs.flatMap((leg, i) => {
    const length = Math.hypot(...leg);
    const along = length === 0 ? 0 : Math.abs(leg[0] * error[0] + leg[1] * error[1]) / (length * size);
    return along > Math.cos((10 * Math.PI) / 180) ? [i] : [];
  });
}

export interface Diagonal {
  readonly from: number;
  readonly to: number;
  readonly measured: number;
}

/** How much longer than drawn each diagonal was measured [m]. */
export const diagonalErrors = (corners: readonly Vec2[], diagonals: readonly Diagonal[]): readonly number[] =>
  diagonals.map(({ from, to, measured }) => measured - distance2(corners[from]!, corners[to]!));
