import { groupDigits, type Vec2 } from '@cloche/engine';
import type { Box } from '../plan/view.js';
import { arrangeTexts as say } from '../texts/arrange.js';
import type { Arranged } from './arranged.js';
import { unitsOf } from './members.js';
import { shiftedEach } from './shifted.js';

export const lines = ['west', 'centre', 'east', 'south', 'middle', 'north'] as const;
/** What comes to lie in one line: an edge, or the middles from west to east (`centre`) or south to north (`middle`). */
export type Line = (typeof lines)[number];

/** 0 from west to east, 1 from south to north. */
export type Axis = 0 | 1;

/** The room that a thing takes in the plan; undefined for what is not drawn. */
export type BoxOf = (id: string) => Box | undefined;

const axisOf = (line: Line): Axis => (line === 'west' || line === 'centre' || line === 'east' ? 0 : 1);

const placeIn = (line: Line, { min, max }: Box): number => {
  const k = axisOf(line);
  if (line === 'west' || line === 'south') return min[k];
  return line === 'east' || line === 'north' ? max[k] : (min[k] + max[k]) / 2;
};

interface Unit {
  readonly id: string;
  readonly box: Box;
}

const boxed = (data: unknown, ids: readonly string[], boxOf: BoxOf): readonly Unit[] =>
  unitsOf(data, ids).flatMap((id) => {
    const box = boxOf(id);
    return box ? [{ id, box }] : [];
  });

const along = (axis: Axis, distance: number): Vec2 => (axis === 0 ? [distance, 0] : [0, distance]);

/** Everything in hand in one line: edges with the outermost of them, middles with the middle of all. */
export function aligned(data: unknown, ids: readonly string[], line: Line, boxOf: BoxOf): Arranged {
  const units = boxed(data, ids, boxOf);
  if (units.length < 2) return { changes: [], told: [say.twoToAlign] };
  const axis = axisOf(line);
  const whole: Box = {
    min: [Math.min(...units.map(({ box }) => box.min[0])), Math.min(...units.map(({ box }) => box.min[1]))],
    max: [Math.max(...units.map(({ box }) => box.max[0])), Math.max(...units.map(({ box }) => box.max[1]))],
  };
  const wanted = placeIn(line, whole);
  return shiftedEach(
    data,
    units.map(({ id, box }) => [id, along(axis, wanted - placeIn(line, box))]),
  );
}

/** Equal gaps between everything in hand; the two outermost stay. */
export function distributed(data: unknown, ids: readonly string[], axis: Axis, boxOf: BoxOf): Arranged {
  const middle = ({ box }: Unit) => box.min[axis] + box.max[axis];
  const units = [...boxed(data, ids, boxOf)].sort((a, b) => middle(a) - middle(b));
  if (units.length < 3) return { changes: [], told: [say.threeToSpread] };
  const size = ({ box }: Unit) => box.max[axis] - box.min[axis];
  const [first, last] = [units[0]!, units.at(-1)!];
  const between = units.slice(1, -1);
  const free = last.box.min[axis] - first.box.max[axis] - between.reduce((sum, unit) => sum + size(unit), 0);
  const gap = free / (units.length - 1);
  let edge = first.box.max[axis];
  const moves = between.map((unit): readonly [string, Vec2] => {
    const by = edge + gap - unit.box.min[axis];
    edge += gap + size(unit);
    return [unit.id, along(axis, by)];
  });
  const { changes, told } = shiftedEach(data, moves);
  const overlap = gap < -1e-9 ? [say.overlapBy(`${groupDigits(Math.round(-gap * 1000))} mm`)] : [];
  return { changes, told: [...overlap, ...told] };
}
