import type { Change } from '../brief/document.js';
import { listAt, type Path, valueAt } from '../brief/path.js';
import type { ObjectEdit } from './arranged.js';
import { tablesIn } from './members.js';

const opposite: Readonly<Record<string, string>> = { east: 'west', west: 'east', north: 'south', south: 'north' };

/** East and west change places when the length of the table is reversed in its mirror image, north and south when its width is. */
const swapper =
  (lengthReversed: boolean) =>
  (side: string): string =>
    (side === 'east' || side === 'west') === lengthReversed ? (opposite[side] ?? side) : side;

const entries = (data: unknown, list: Path): readonly { readonly path: Path; readonly entry: unknown }[] =>
  listAt(data, list).map((entry, i) => ({ path: [...list, i], entry }));

/** Enclosures that are measured along a table: the first of those that they stand around. */
const along = (data: unknown, table: string) =>
  entries(data, ['layout', 'enclosures']).filter(({ path }) => tablesIn(data, path)[0] === table);

/** Sides and clear distances of the enclosures along a table, in its mirror image. */
export function swappedObjects(data: unknown, table: string, lengthReversed: boolean): readonly ObjectEdit[] {
  const swap = swapper(lengthReversed);
  return along(data, table).flatMap(({ path, entry }) =>
    ['sides', 'gaps'].flatMap((key): readonly ObjectEdit[] => {
      const object = valueAt(entry, [key]);
      if (typeof object !== 'object' || object === null) return [];
      const value = Object.fromEntries(Object.entries(object).map(([side, each]) => [swap(side), each]));
      const same = Object.keys(value).every(
        (side) => JSON.stringify(value[side]) === JSON.stringify(valueAt(object, [side])),
      );
      return same ? [] : [[[...path, key], value]];
    }),
  );
}

/** Sides that people must reach, of a table and of the enclosures along it. */
export function swappedSides(data: unknown, table: string, lengthReversed: boolean): readonly Change[] {
  const swap = swapper(lengthReversed);
  const measured = new Set<unknown>([table, ...along(data, table).map(({ entry }) => valueAt(entry, ['id']))]);
  return entries(data, ['needs', 'access'])
    .filter(({ entry }) => measured.has(valueAt(entry, ['to'])))
    .flatMap(({ path, entry }) =>
      listAt(entry, ['sides']).flatMap((side, i): readonly Change[] => {
        const now = swap(String(side));
        return now === side ? [] : [[[...path, 'sides', i], now]];
      }),
    );
}
