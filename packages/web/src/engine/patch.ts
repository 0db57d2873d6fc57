/** A list told by what changed: the place of an item in the list before, or the item itself. */
export type ListPatch<T> = readonly (number | { readonly is: T })[];

/** A record told by what changed, field by field; fields that stay are left out. */
export interface RecordPatch {
  readonly lists: Readonly<Record<string, ListPatch<unknown>>>;
  readonly values: Readonly<Record<string, unknown>>;
  readonly gone: readonly string[];
}

type Plain = Readonly<Record<string, unknown>>;

/**
 * Tells lists and records to the other side of a channel that copies what it carries: what was told last is remembered by its
 * content, so that only what changed is copied, and what stays keeps its identity over there.
 */
export interface Teller {
  readonly list: <T extends object>(name: string, list: readonly T[]) => ListPatch<T>;
  readonly record: (name: string, record: object) => RecordPatch;
}

export function teller(): Teller {
  const lists = new Map<string, ReadonlyMap<string, number>>();
  /** Fields by their letters; null for lists. */
  const records = new Map<string, ReadonlyMap<string, string | null>>();
  /** Answers that the engine remembered are the same object again. */
  const letters = new WeakMap<object, string>();
  const textOf = (value: unknown): string => {
    if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? '';
    const known = letters.get(value);
    if (known !== undefined) return known;
    const text = JSON.stringify(value);
    letters.set(value, text);
    return text;
  };
  const list = <T>(name: string, items: readonly T[]): ListPatch<T> => {
    const before = lists.get(name);
    const now = new Map<string, number>();
    const patch = items.map((item, i) => {
      const text = textOf(item);
      now.set(text, i);
      return before?.get(text) ?? { is: item };
    });
    lists.set(name, now);
    return patch;
  };
  return {
    list,
    record(name, record) {
      const before = records.get(name);
      const now = new Map<string, string | null>();
      const values: Record<string, unknown> = {};
      const told: Record<string, ListPatch<unknown>> = {};
      for (const [key, value] of Object.entries(record as Plain)) {
        const place = `${name}.${key}`;
        if (Array.isArray(value)) {
          if (before?.get(key) !== null) lists.delete(place);
          told[key] = list(place, value);
          now.set(key, null);
        } else {
          const text = textOf(value);
          if (before?.get(key) !== text) values[key] = value;
          now.set(key, text);
        }
      }
      records.set(name, now);
      return { lists: told, values, gone: [...(before?.keys() ?? [])].filter((key) => !now.has(key)) };
    },
  };
}

const unchanged = <T>(before: readonly T[], patch: ListPatch<T>): boolean =>
  before.length === patch.length && patch.every((each, i) => each === i);

/** The list that a patch tells of; the same list again when nothing changed. */
export const patchedList = <T>(before: readonly T[], patch: ListPatch<T>): readonly T[] =>
  unchanged(before, patch) ? before : patch.map((each) => (typeof each === 'number' ? before[each]! : each.is));

/** The record that a patch tells of; fields that stay are the same objects again. */
export function patchedRecord<T extends object>(before: T | null, { lists, values, gone }: RecordPatch): T {
  const kept = { ...(before as Plain | null) };
  for (const key of gone) delete kept[key];
  const made: Record<string, unknown> = { ...kept, ...values };
  for (const [key, patch] of Object.entries(lists))
    made[key] = patchedList(Array.isArray(kept[key]) ? kept[key] : [], patch);
  return made as T;
}
