import { parse } from 'yaml';
import { shownText, valueAt } from '../brief/path.js';
import { isEqual } from '../session/equal.js';
import type { ShelfKind } from './shelf-lines.js';

/** How many items or rules of a file came, went or read otherwise; `head` when what stands above them does. */
export interface TextDifference {
  readonly added: readonly string[];
  readonly removed: readonly string[];
  readonly changed: readonly string[];
  readonly head: boolean;
}

/**
 * What differs between two texts of one data file, item by item: items of a catalogue by their id, rules by their name. Comments,
 * order and spelling do not count.
 */
export function textDifference(kind: ShelfKind, before: string, after: string): TextDifference {
  const [was, is] = [entriesOf(kind, before), entriesOf(kind, after)];
  return {
    added: [...is.entries.keys()].filter((id) => !was.entries.has(id)),
    removed: [...was.entries.keys()].filter((id) => !is.entries.has(id)),
    changed: [...is.entries]
      .filter(([id, entry]) => was.entries.has(id) && !isEqual(entry, was.entries.get(id)))
      .map(([id]) => id),
    head: !isEqual(was.head, is.head),
  };
}

/** Texts on the shelf were found sound before they came there; an empty one stands for no file. */
function entriesOf(kind: ShelfKind, text: string) {
  const data: unknown = parse(text);
  const list = valueAt(data, [kind === 'catalogue' ? 'items' : 'rules']);
  const entries: readonly (readonly [string, unknown])[] = Array.isArray(list)
    ? list.map((item: unknown) => [shownText(valueAt(item, ['id'])), item])
    : Object.entries(typeof list === 'object' && list !== null ? list : {});
  return { entries: new Map(entries), head: valueAt(data, [kind === 'catalogue' ? 'catalogue' : 'profile']) };
}
