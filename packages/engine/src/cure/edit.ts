import type { Brief } from '../brief/schema.js';
import type { Path } from '../reading/path.js';

/** One value of the brief set to another: a length in metres, a count, or the name of an item. */
export interface CureEdit {
  readonly path: Path;
  readonly value: number | string;
  /** How the number is written: a length gets its unit, a count none. */
  readonly as: 'length' | 'count' | 'name';
}

/** The brief with some values set; lists and objects on the way are copied, the rest is shared. */
export function edited(brief: Brief, edits: readonly CureEdit[]): Brief {
  return edits.reduce((now, { path, value }) => set(now, path, value) as Brief, brief);
}

function set(data: unknown, path: Path, value: unknown): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  if (Array.isArray(data)) return data.map((each, i) => (i === step ? set(each, rest, value) : each));
  const object = (data ?? {}) as Readonly<Record<string, unknown>>;
  return { ...object, [step]: set(object[step], rest, value) };
}
