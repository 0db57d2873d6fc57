import { add2, sub2, type Vec2 } from '@cloche/engine';

/**
 * A motion of the plan that keeps sizes: a point is mirrored about the east axis through `about` (when `mirrored`), then turned
 * about it, counter-clockwise. A mirror line at an angle φ is the mirrored motion that turns by 2φ.
 */
export interface Motion {
  readonly about: Vec2;
  /** [rad] */
  readonly turn: number;
  readonly mirrored: boolean;
}

export const turning = (about: Vec2, turn: number): Motion => ({ about, turn, mirrored: false });

/** The mirror image about a line through a point. @param angle of the line, counter-clockwise from east [rad] */
export const mirroring = (through: Vec2, angle: number): Motion => ({
  about: through,
  turn: 2 * angle,
  mirrored: true,
});

/** Quarter turns have whole cosines; a sum of roundings must not creep in. */
function cosineSine(angle: number): Vec2 {
  const quarters = angle / (Math.PI / 2);
  const whole = Math.round(quarters);
  if (Math.abs(quarters - whole) > 1e-12) return [Math.cos(angle), Math.sin(angle)];
  const k = ((whole % 4) + 4) % 4;
  return [[1, 0] as const, [0, 1] as const, [-1, 0] as const, [0, -1] as const][k]!;
}

/** True when lines along the walls stay so. */
export const isSquare = ({ turn }: Motion): boolean => Math.abs(Math.sin(2 * turn)) < 1e-9;

export function movedPoint({ about, turn, mirrored }: Motion, point: Vec2): Vec2 {
  const [c, s] = cosineSine(turn);
  const [x, y] = sub2(point, about);
  const v = mirrored ? -y : y;
  return add2(about, [x * c - v * s, x * s + v * c]);
}

/** A direction in the room after the motion. */
export const movedAngle = ({ turn, mirrored }: Motion, angle: number): number => turn + (mirrored ? -angle : angle);

/** From the axes of a table (its middle and turn) to the room. */
export function fromTable(middle: Vec2, turn: number, [u, v]: Vec2): Vec2 {
  const [c, s] = cosineSine(turn);
  return add2(middle, [u * c - v * s, u * s + v * c]);
}

export function onTable(middle: Vec2, turn: number, point: Vec2): Vec2 {
  const [c, s] = cosineSine(turn);
  const [x, y] = sub2(point, middle);
  return [x * c + y * s, -x * s + y * c];
}
