import { type Change, withObject, withValues } from '../brief/document.js';
import { type Path, pathKey } from '../brief/path.js';

/** An object of the brief put anew as a whole. */
export type ObjectEdit = readonly [Path, unknown];

/** Changes of the brief that carry out one wish, and what of it was not possible. */
export interface Arranged {
  readonly changes: readonly Change[];
  readonly objects?: readonly ObjectEdit[];
  /** Sentences for the person. */
  readonly told: readonly string[];
}

/** A sentence about some things, when there are any. */
export const tell = (ids: readonly string[], sentence: (ids: readonly string[]) => string): readonly string[] =>
  ids.length === 0 ? [] : [sentence(ids)];

const onceEach = (changes: readonly Change[]): readonly Change[] => [
  ...new Map(changes.map((change) => [pathKey(change[0]), change])).values(),
];

/** The brief with the changes made: one new text, and so one step of undo. */
export const arrangedText = (text: string, { changes, objects = [] }: Arranged): string =>
  objects.reduce(
    (now, [path, value]) => withObject(now, path, value),
    changes.length === 0 ? text : withValues(text, onceEach(changes)),
  );
