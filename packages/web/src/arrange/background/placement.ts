import type { Vec2 } from '@cloche/engine';
import { metresOf } from '../../brief/lengths.js';
import { valueAt } from '../../brief/path.js';
import { radiansOf } from '../exact.js';
import { fromTable, onTable } from '../motion.js';

/** How the background lies in the room, as the brief says. */
export interface Placement {
  readonly file: string;
  readonly name: string;
  /** Its lower left corner. */
  readonly at: Vec2;
  readonly width: number;
  /** [rad] */
  readonly turn: number;
  readonly shown: boolean;
}

/** Null where the brief has no background, or one that cannot be read. */
export function placementIn(data: unknown): Placement | null {
  const text = (key: string): string => String(valueAt(data, ['background', key]) ?? '');
  const [x, y] = [0, 1].map((k) => metresOf(valueAt(data, ['background', 'at', k])));
  const width = metresOf(text('width'));
  if (text('file') === '' || x == null || y == null || width === null || width <= 0) return null;
  return {
    file: text('file'),
    name: text('name'),
    at: [x, y],
    width,
    turn: radiansOf(valueAt(data, ['background', 'turn'])),
    shown: valueAt(data, ['background', 'shown']) !== false,
  };
}

/** A point of the background, in widths from its lower left corner, in the room; and back. */
export const inRoom = ({ at, width, turn }: Placement, [u, v]: Vec2): Vec2 =>
  fromTable(at, turn, [u * width, v * width]);
export function onBackground({ at, width, turn }: Placement, point: Vec2): Vec2 {
  const [x, y] = onTable(at, turn, point);
  return [x / width, y / width];
}

/**
 * Another width such that two of its points come to lie as far from each other as they are in truth; the first stays where it is.
 * @returns null when both are one point
 */
export function scaledTo(
  placement: Placement,
  a: Vec2,
  b: Vec2,
  metres: number,
): Pick<Placement, 'at' | 'width'> | null {
  const now = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (now < 1e-9 || !(metres > 0)) return null;
  const k = metres / now;
  return {
    width: placement.width * k,
    at: [a[0] + (placement.at[0] - a[0]) * k, a[1] + (placement.at[1] - a[1]) * k],
  };
}
