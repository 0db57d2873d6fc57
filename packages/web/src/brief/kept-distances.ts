import type { Vec2 } from '@cloche/engine';
import { metresOf } from './lengths.js';
import { listAt, type Path, shownText, valueAt } from './path.js';

export const distanceList: Path = ['distances'];
const ends = ['from', 'to'] as const;

/** Ends of kept distances on a thing: where its id stands. */
export const distanceEndsOn = (data: unknown, id: string): readonly Path[] =>
  listAt(data, distanceList).flatMap((entry, i) =>
    ends.filter((end) => valueAt(entry, [end, 'of']) === id).map((end): Path => [...distanceList, i, end, 'of']),
  );

/** A point as it is written: on a thing, from its middle, or in the room. */
interface End {
  readonly on: string | null;
  readonly at: Vec2;
}

/** A distance that stays on the sheet, written in the brief: its ends go along with the things they are on. */
export interface KeptDistance {
  /** Where it stands in the list. */
  readonly index: number;
  readonly number: number;
  readonly a: End;
  readonly b: End;
}

/** The distances in a brief; those that cannot be read are left out, and told where the brief is read. */
export const keptIn = (data: unknown): readonly KeptDistance[] =>
  listAt(data, distanceList).flatMap((entry, index) => {
    const [a, b] = [readEnd(valueAt(entry, ['from'])), readEnd(valueAt(entry, ['to']))];
    const number = Number(/\d+$/.exec(shownText(valueAt(entry, ['id'])))?.[0] ?? index + 1);
    return a && b ? [{ index, number, a, b }] : [];
  });

function readEnd(end: unknown): End | null {
  const [x, y] = [metresOf(valueAt(end, ['at', 0])), metresOf(valueAt(end, ['at', 1]))];
  if (x === null || y === null) return null;
  const on = valueAt(end, ['of']);
  return { on: typeof on === 'string' ? on : null, at: [x, y] };
}
