import { listAt, type Path, valueAt } from './path.js';

/** Lists of the brief whose entries have an id and stand in the drawing. */
const lists: readonly Path[] = [
  ['tables'],
  ['equipment'],
  ['lasers'],
  ['room', 'doors'],
  ['room', 'windows'],
  ['room', 'columns'],
  ['room', 'beams'],
  ['room', 'obstructions'],
  ['room', 'sprinklers'],
  ['room', 'detectors'],
  ['room', 'exitSigns'],
  ['room', 'boards'],
  ['room', 'airTerminals'],
  ['room', 'luminaires'],
  ['layout', 'enclosures'],
  ['layout', 'runs'],
  ['layout', 'covers'],
  ['layout', 'signs'],
  ['layout', 'stops'],
  ['layout', 'interlocks'],
  ['layout', 'sensors'],
];

/** Lists, with those that stand under each table. */
const listsIn = (data: unknown): readonly Path[] => [
  ...lists,
  ...listAt(data, ['tables']).map((_, i): Path => ['tables', i, 'equipment']),
  ['needs', 'phases'],
];

/** Where the thing with this id stands in the brief. */
export function pathOfThing(data: unknown, id: string): Path | undefined {
  for (const list of listsIn(data)) {
    const index = listAt(data, list).findIndex((entry) => valueAt(entry, ['id']) === id);
    if (index >= 0) return [...list, index];
  }
  return undefined;
}

/** Every id in use, so that a new one can be chosen free. */
export const idsInUse = (data: unknown): ReadonlySet<string> =>
  new Set(listsIn(data).flatMap((list) => listAt(data, list).map((entry) => String(valueAt(entry, ['id'])))));

/** `table-2`: the first number that is free. */
export function freeId(data: unknown, stem: string): string {
  const used = idsInUse(data);
  let number = 1;
  while (used.has(`${stem}-${number}`)) number++;
  return `${stem}-${number}`;
}

/** Everything with an id: what it is called, and where it stands in the brief. */
export const thingsIn = (
  data: unknown,
): readonly { readonly id: string; readonly name: string; readonly path: Path }[] =>
  listsIn(data).flatMap((list) =>
    listAt(data, list).flatMap((entry, i) => {
      const [id, name] = [valueAt(entry, ['id']), valueAt(entry, ['name'])];
      return typeof id === 'string' ? [{ id, name: typeof name === 'string' ? name : id, path: [...list, i] }] : [];
    }),
  );
