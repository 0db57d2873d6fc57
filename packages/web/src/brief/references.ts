import { fieldsAt, fieldsOf } from './fields.js';
import { listAt, type Path, shownText, valueAt } from './path.js';
import type { Kind } from './shapes.js';

const listsOf: Readonly<Record<Exclude<Kind, 'room'>, readonly Path[]>> = {
  tables: [['tables']],
  equipment: [['equipment']],
  lasers: [['lasers']],
  doors: [['room', 'doors']],
  windows: [['room', 'windows']],
  enclosures: [['layout', 'enclosures']],
  runs: [['layout', 'runs']],
  devices: ['covers', 'signs', 'stops', 'interlocks', 'sensors'].map((list) => ['layout', list]),
};

/** Something that a field may name: its id and how a person knows it. */
export interface Named {
  readonly id: string;
  readonly name: string;
}

/** Everything of some kinds that is in the brief, in its order. */
export function namedOf(data: unknown, kinds: readonly Kind[]): readonly Named[] {
  return kinds.flatMap((kind): readonly Named[] => {
    if (kind === 'room') return [{ id: 'room', name: 'the room' }];
    return listsOf[kind].flatMap((list) =>
      listAt(data, list).flatMap((entry) => {
        const [id, name] = [shownText(valueAt(entry, ['id'])), shownText(valueAt(entry, ['name']))];
        return id === '' ? [] : [{ id, name: name === '' ? id : name }];
      }),
    );
  });
}

/** The ids of some kinds, the first of which a new thing takes. */
export const idsOf = (data: unknown, ...kinds: readonly Kind[]): readonly string[] =>
  namedOf(data, kinds).map(({ id }) => id);

/** Every entry of a list anywhere in the brief that has fields: lists by their way through the data. */
function* entries(data: unknown, path: Path = []): Generator<Path> {
  if (Array.isArray(data)) {
    for (const [i, each] of data.entries()) {
      const last = path.at(-1);
      if (typeof last === 'string' && last in fieldsOf) yield [...path, i];
      yield* entries(each, [...path, i]);
    }
  } else if (typeof data === 'object' && data !== null) {
    for (const [key, each] of Object.entries(data)) {
      if (path.length === 0 && key === 'needs') yield [key];
      yield* entries(each, [...path, key]);
    }
  }
}

/** Where the brief names a thing by its id, its own id not counted. */
export function namesOf(data: unknown, id: string): readonly Path[] {
  const found: Path[] = [];
  for (const base of entries(data))
    for (const { path, shape } of fieldsAt(base)) {
      const whole = [...base, ...path];
      const value = valueAt(data, whole);
      if (('reference' in shape || 'place' in shape) && value === id) found.push(whole);
      if ('references' in shape && Array.isArray(value))
        for (const [i, each] of value.entries()) if (each === id) found.push([...whole, i]);
    }
  return found;
}
