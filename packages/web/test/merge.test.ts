import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { briefData, withEntry, withValue } from '../src/brief/document.js';
import { listAt, type Path, valueAt } from '../src/brief/path.js';
import { merge } from '../src/session/merge.js';
import { pathOfSpot } from '../src/session/spot.js';

const base = `# invented
cloche: 1
project:
  name: Two tables # for the group
tables:
  - { id: table-1, at: [2 m, 1.5 m], length: 2.4 m }
  - id: table-2 # the short one
    at: [5 m, 1.5 m]
    length: 1.8 m
room:
  outline: [[0 m, 0 m], [6 m, 0 m], [6 m, 4 m], [0 m, 4 m]]
  doors:
    - { id: door-1, wall: 0, at: 0.5 m }
`;

const at = (text: string, path: Path) => valueAt(briefData(text), path);

test('two who change different fields of one thing both have their way, and comments stay', () => {
  const { text, conflicts } = merge(
    base,
    withValue(base, ['tables', 1, 'length'], '2 m'),
    withValue(base, ['tables', 1, 'name'], 'Clock'),
  );
  expect(conflicts).toEqual([]);
  expect(at(text, ['tables', 1])).toEqual({ id: 'table-2', at: ['5 m', '1.5 m'], length: '2 m', name: 'Clock' });
  expect(text).toContain('# the short one');
  expect(text).toContain('# for the group');
});

test('things are told apart by id, not by their place in the list', () => {
  const mine = withValue(base, ['tables', 1, 'length'], '2 m');
  const theirs = withValue(base, ['tables', 0], undefined);
  const { text, conflicts } = merge(base, mine, theirs);
  expect(conflicts).toEqual([]);
  expect(at(text, ['tables'])).toEqual([{ id: 'table-2', at: ['5 m', '1.5 m'], length: '2 m' }]);
});

test('where both changed one field theirs stands, and mine is told with its place', () => {
  const mine = withValue(base, ['tables', 1, 'length'], '2 m');
  const theirs = withValue(withValue(base, ['tables', 1, 'length'], '3 m'), ['tables', 0], undefined);
  const { text, conflicts } = merge(base, mine, theirs);
  expect(text).toBe(theirs);
  expect(conflicts).toEqual([{ spot: ['tables', { id: 'table-2' }, 'length'], theirs: '3 m', mine: '2 m' }]);
  expect(pathOfSpot(briefData(text), conflicts[0]!.spot)).toEqual(['tables', 0, 'length']);
});

test('a place is taken as a whole: half of each would be a place that nobody chose', () => {
  const mine = withValue(base, ['tables', 0, 'at', 0], '1 m');
  const theirs = withValue(base, ['tables', 0, 'at', 1], '3 m');
  expect(merge(base, mine, theirs).conflicts).toEqual([
    { spot: ['tables', { id: 'table-1' }, 'at'], theirs: ['2 m', '3 m'], mine: ['1 m', '1.5 m'] },
  ]);
});

test('what one takes out and the other changes is told, whichever way round', () => {
  const changed = withValue(base, ['tables', 0, 'length'], '3 m');
  const gone = withValue(base, ['tables', 0], undefined);
  expect(merge(base, changed, gone)).toEqual({
    text: gone,
    conflicts: [
      {
        spot: ['tables', { id: 'table-1' }],
        theirs: undefined,
        mine: { id: 'table-1', at: ['2 m', '1.5 m'], length: '3 m' },
      },
    ],
  });
  expect(merge(base, gone, changed)).toMatchObject({ text: changed, conflicts: [{ mine: undefined }] });
});

test('things that both add stand one after the other; the same id in both is brought together or told', () => {
  const one = withEntry(base, ['tables'], { id: 'table-3', length: '1 m' });
  const two = withEntry(base, ['tables'], { id: 'table-4', length: '1 m' });
  expect(listAt(briefData(merge(base, one, two).text), ['tables'])).toHaveLength(4);
  const same = withEntry(base, ['tables'], { id: 'table-3', length: '2 m' });
  const { text, conflicts } = merge(base, one, same);
  expect(listAt(briefData(text), ['tables'])).toHaveLength(3);
  expect(conflicts).toEqual([{ spot: ['tables', { id: 'table-3' }, 'length'], theirs: '2 m', mine: '1 m' }]);
});

test('both last things of a list taken out by two leave an empty list', () => {
  const [one, two] = [0, 1].map((i) => withValue(base, ['tables', i], undefined)) as [string, string];
  const { text, conflicts } = merge(base, one, two);
  expect(conflicts).toEqual([]);
  expect(listAt(briefData(text), ['tables'])).toEqual([]);
});

test('corners of the room that lie apart are merged, neighbours are told', () => {
  const corner = (i: number, x: string) => withValue(base, ['room', 'outline', i, 0], x);
  expect(at(merge(base, corner(0, '1 m'), corner(2, '7 m')).text, ['room', 'outline'])).toEqual([
    ['1 m', '0 m'],
    ['6 m', '0 m'],
    ['7 m', '4 m'],
    ['0 m', '4 m'],
  ]);
  expect(merge(base, corner(1, '5 m'), corner(2, '7 m')).conflicts).toHaveLength(1);
});

test('a text that cannot be read is merged by lines, and told as a whole when the same line was changed', () => {
  const broken = base.replace('wall: 0', 'wall: [0');
  const theirs = base.replace('name: Two tables', 'name: Three tables');
  expect(merge(base, broken, theirs)).toEqual({
    text: theirs.replace('wall: 0', 'wall: [0'),
    conflicts: [],
  });
  const both = base.replace('wall: 0', 'wall: 1');
  expect(merge(base, broken, both)).toEqual({ text: both, conflicts: [{ spot: [], theirs: both, mine: broken }] });
});

test('comments of both are kept where their lines lie apart', () => {
  const mine = `${base}# seen by the group\n`;
  const theirs = withValue(base, ['tables', 0, 'length'], '3 m');
  expect(merge(base, mine, theirs)).toEqual({ text: `${theirs}# seen by the group\n`, conflicts: [] });
  expect(merge(base, theirs, mine)).toEqual({ text: `${theirs}# seen by the group\n`, conflicts: [] });
});

test('a comment that cannot be kept is told', () => {
  const mine = base.replace('# the short one', '# the new one');
  const theirs = base.replace('- id: table-2 # the short one', '- id: table-2 # the old one\n    width: 1 m');
  const { text, conflicts } = merge(base, mine, theirs);
  expect(text).toBe(theirs);
  expect(conflicts).toEqual([{ spot: [], theirs, mine }]);
});

test('a value that begins like a comment is none', () => {
  const noted = base.replace('name: Two tables', 'note: |\n    # not a comment\n  name: Two tables');
  const theirs = noted.replace('name: Two tables', 'name: Three tables');
  const mine = noted
    .replace('# not a comment', '# still none')
    .replace('name: Two tables', 'number: N-1\n  name: Two tables');
  const { text, conflicts } = merge(noted, mine, theirs);
  expect(conflicts).toEqual([]);
  expect(at(text, ['project'])).toEqual({ note: '# still none\n', name: 'Three tables', number: 'N-1' });
});

test('a text with aliases loses nothing', () => {
  const shared = 'a: &x { id: q, n: 1 }\nb: *x\nc: 1\n';
  const { text, conflicts } = merge(shared, shared.replace('n: 1', 'n: 2'), shared.replace('c: 1', 'c: 2'));
  expect(conflicts.length > 0 || /n: 2/.test(text)).toBe(true);
});

// Properties, on the largest example and on random edits of the kinds that two people make.
const large = readFileSync(new URL('../../../examples/three-tables.yaml', import.meta.url), 'utf8');
const tables = listAt(briefData(large), ['tables']).length;

type Edit =
  | { readonly do: 'set'; readonly path: Path; readonly value: string }
  | { readonly do: 'add'; readonly list: Path; readonly id: string }
  | { readonly do: 'remove'; readonly table: number };

const fields = ['length', 'width', 'height', 'name', 'load'];
const paths: readonly Path[] = [
  ...Array.from({ length: tables }, (_, i) => fields.map((field): Path => ['tables', i, field])).flat(),
  ['project', 'name'],
  ['project', 'note'],
  ['room', 'height'],
  ['room', 'outline', 0, 0],
  ['room', 'outline', 2, 1],
  ['layout', 'note'],
];

const edits = (who: string): fc.Arbitrary<readonly Edit[]> =>
  fc.uniqueArray(
    fc.oneof(
      {
        weight: 5,
        arbitrary: fc.record({
          do: fc.constant('set' as const),
          path: fc.constantFrom(...paths),
          value: fc.string({ minLength: 1, maxLength: 8 }).map((s) => `${who}${s}`),
        }),
      },
      {
        weight: 2,
        arbitrary: fc.record({
          do: fc.constant('add' as const),
          list: fc.constantFrom<Path>(['tables'], ['lasers'], ['room', 'doors']),
          id: fc.nat(9).map((n) => `${who}-${n}`),
        }),
      },
      { weight: 1, arbitrary: fc.record({ do: fc.constant('remove' as const), table: fc.nat(tables - 1) }) },
    ),
    { minLength: 1, maxLength: 6, selector: keyOf },
  );

/** The thing that an edit touches. */
const keyOf = (edit: Edit): string =>
  edit.do === 'set' ? edit.path.join('/') : edit.do === 'add' ? edit.id : `tables/${edit.table}`;

/** Removals last, highest first, so that paths mean what they say. */
function edited(text: string, list: readonly Edit[]): string {
  const order = (e: Edit) => (e.do === 'remove' ? 100 - e.table : 0);
  return [...list]
    .sort((a, b) => order(a) - order(b))
    .reduce((now, e) => {
      if (e.do === 'set') return withValue(now, e.path, e.value);
      return e.do === 'add' ? withEntry(now, e.list, { id: e.id }) : withValue(now, ['tables', e.table], undefined);
    }, text);
}

/** Data with things in the order of their ids: two who add to one list do not ask who came first. */
function sorted(data: unknown): unknown {
  if (Array.isArray(data)) {
    const list = data.map(sorted);
    const id = (each: unknown) => String(valueAt(each, ['id']));
    return list.every((each) => valueAt(each, ['id']) !== undefined)
      ? list.sort((a, b) => (id(a) < id(b) ? -1 : 1))
      : list;
  }
  if (typeof data === 'object' && data !== null)
    return Object.fromEntries(Object.entries(data).map(([key, value]) => [key, sorted(value)]));
  return data;
}

test('one who changed nothing gets what the other made', () => {
  fc.assert(
    fc.property(edits('m'), (list) => {
      const other = edited(large, list);
      expect(merge(large, large, other)).toEqual({ text: other, conflicts: [] });
      expect(briefData(merge(large, other, large).text)).toEqual(briefData(other));
      // Also where the other one has touched comments alone.
      const noted = `# seen\n${large}`;
      const { text, conflicts } = merge(large, other, noted);
      expect(conflicts).toEqual([]);
      expect(sorted(briefData(text))).toEqual(sorted(briefData(other)));
      expect(text.startsWith('# seen\n')).toBe(true);
    }),
    { numRuns: 6 },
  );
}, 60_000);

test('edits that touch different things commute', () => {
  fc.assert(
    fc.property(edits('m'), edits('t'), (all, others) => {
      const touches = (a: string, b: string) => a === b || a.startsWith(`${b}/`) || b.startsWith(`${a}/`);
      const theirs = others.filter((t) => !all.some((m) => touches(keyOf(m), keyOf(t))));
      const [m, t] = [edited(large, all), edited(large, theirs)];
      const [one, two] = [merge(large, m, t), merge(large, t, m)];
      expect(one.conflicts).toEqual([]);
      expect(two.conflicts).toEqual([]);
      expect(sorted(briefData(one.text))).toEqual(sorted(briefData(two.text)));
    }),
    { numRuns: 6 },
  );
}, 60_000);

test('every value that was changed here is in the text or told', () => {
  fc.assert(
    fc.property(edits('m'), edits('t'), (mine, theirs) => {
      const { text, conflicts } = merge(large, edited(large, mine), edited(large, theirs));
      const found = JSON.stringify([briefData(text), conflicts.map((c) => c.mine)]);
      const removed = new Set(mine.flatMap((e) => (e.do === 'remove' ? [`tables/${e.table}/`] : [])));
      for (const e of mine) {
        if (e.do === 'remove') {
          const id = valueAt(briefData(large), ['tables', e.table, 'id']);
          const there = listAt(briefData(text), ['tables']).some((each) => valueAt(each, ['id']) === id);
          expect(!there || conflicts.some((c) => c.mine === undefined)).toBe(true);
        } else if (![...removed].some((prefix) => keyOf(e).startsWith(prefix)))
          expect(found).toContain(JSON.stringify(e.do === 'set' ? e.value : e.id));
      }
    }),
    { numRuns: 6 },
  );
}, 60_000);
