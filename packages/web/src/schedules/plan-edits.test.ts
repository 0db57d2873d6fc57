import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { briefData, withEdits } from '../brief/document.js';
import type { Shelf } from '../engine/contract.js';
import { type CellInput, planEdits } from './plan-edits.js';
import { inOrder } from './row-order.js';
import { columnName, type ScheduleId, schedules } from './schedule.js';

const text = `# invented
tables:
  - id: table-1 # the long one
    at: [2 m, 1.5 m]
    length: 2.4 m
    width: 1.2 m
    height: 0.9 m
lasers:
  - id: green
    table: table-1
    at: [0 m, 0 m]
    wavelength: 532 nm
    emission: { kind: continuous, power: 1 W }
  - id: red
    table: table-1
    at: [0 m, 0 m]
    wavelength: 1064 nm
    emission: { kind: pulsed, energy: 1 mJ, duration: 10 ns, rate: 10 Hz }
`;
const shelf: Shelf = {
  items: [{ id: 'nut', name: 'Nut', kind: 'slot nut' }],
  profiles: [],
  rules: [],
  disciplines: [],
  overlays: [],
};

const column = (id: ScheduleId, label: string): number => schedules[id].columns.findIndex((c) => c.label === label);
function paste(id: ScheduleId, row: number, from: string, block: readonly (readonly string[])[], source = text) {
  const data = briefData(source);
  const inputs = block.flatMap((cells, r) =>
    cells.map((cell, c): CellInput => ({ row: row + r, column: column(id, from) + c, text: cell })),
  );
  const rows = schedules[id].rows(data);
  const plan = planEdits({ schedule: schedules[id], rows, known: { data, shelf }, design: undefined }, inputs);
  return { ...plan, text: withEdits(source, plan.edits) };
}

describe('a pasted block', () => {
  test('changes only the letters of its cells', () => {
    const made = paste('tables', 0, 'length', [['3 m', '1.5 m']]);
    expect(made.text).toBe(text.replace('2.4 m', '3 m').replace('1.2 m', '1.5 m'));
    expect([made.taken, made.refused]).toEqual([2, []]);
  });

  test('is written where it can be read, and the rest is named with its reason', () => {
    const made = paste('tables', 0, 'length', [['3', '1.5 m', '2 kg']]);
    expect(made.text).toBe(text.replace('1.2 m', '1.5 m'));
    expect(made.refused.map(({ column: c }) => c)).toEqual([
      column('tables', 'length'),
      column('tables', 'length') + 2,
    ]);
    expect(made.refused[0]!.reason).toContain('unit');
  });

  test('that is the same as before writes nothing', () => {
    expect(paste('tables', 0, 'length', [['2.4 m']]).edits).toEqual([]);
  });

  test('below the end makes rows, each with an id of its own', () => {
    const made = paste('lasers', 2, 'id', [['blue'], [''], ['violet']]);
    expect(parse(made.text).lasers.map((l: { id: string }) => l.id)).toEqual(['green', 'red', 'blue', 'violet']);
    expect(made.text).toContain('# the long one');
  });

  test('of which nothing can be read makes no row', () => {
    expect(paste('tables', 1, 'length', [['long']]).edits).toEqual([]);
  });

  test('is read against what its earlier cells have made', () => {
    const made = paste('lasers', 0, 'emission', [['pulsed', '', '2 mJ', '5 ns']]);
    expect(parse(made.text).lasers[0].emission).toMatchObject({ kind: 'pulsed', energy: '2 mJ', duration: '5 ns' });
  });

  test('does not fill cells that do not apply', () => {
    const made = paste('lasers', 0, 'pulse energy', [['2 mJ']]);
    expect([made.edits, made.refused.length]).toEqual([[], 1]);
  });

  test('beyond the last column is refused', () => {
    const made = paste('prices', 0, 'because', [['x', 'y']], `${text}site: { prices: [{ item: nut }] }\n`);
    expect([made.taken, made.refused.length]).toEqual([1, 1]);
  });
});

describe('a cell', () => {
  test('that names a thing takes its name wherever the brief says it', () => {
    const made = paste('tables', 0, 'id', [['bench']]);
    expect(parse(made.text).lasers.map((l: { table: string }) => l.table)).toEqual(['bench', 'bench']);
  });

  test('takes no id that is in use', () => {
    expect(paste('lasers', 0, 'id', [['red']]).refused).toHaveLength(1);
  });

  test('that is cleared takes its value out', () => {
    expect(parse(paste('tables', 0, 'top above floor', [['']]).text).tables[0]).not.toHaveProperty('height');
  });

  test('takes a word of its list however it is written, and no other', () => {
    expect(parse(paste('lasers', 0, 'class declared', [['3r']]).text).lasers[0].class).toBe('3R');
    expect(paste('lasers', 0, 'class declared', [['5']]).refused[0]!.reason).toContain('3R');
    expect(paste('lasers', 0, 'on table', [['table-9']]).refused[0]!.reason).toContain('table-1');
  });

  test('makes the list of prices when it is the first', () => {
    const made = paste('prices', 0, 'item', [['Nut', '1.50 EUR', 'piece', '2026-11-02', 'offer 4711']]);
    expect(parse(made.text).site.prices).toEqual([
      { item: 'nut', price: '1.50 EUR', per: 'piece', on: '2026-11-02', from: 'offer 4711' },
    ]);
    expect(paste('prices', 0, 'of', [['2026-02-30']]).refused).toHaveLength(1);
  });
});

test('rows are looked at by size, not by letters, and empty cells stand last', () => {
  const data = { tables: [{ length: '900 mm' }, {}, { length: '2 m' }, { length: '1.2 m' }] };
  const rows = schedules.tables.rows(data);
  const sorted = (down: boolean) =>
    inOrder(rows, schedules.tables.columns, data, { column: column('tables', 'length'), down }).map((row) => row[1]);
  expect(sorted(false)).toEqual([0, 3, 2, 1]);
  expect(sorted(true)).toEqual([2, 3, 0, 1]);
});

test('no two columns of a schedule are the same', () => {
  for (const { columns } of Object.values(schedules)) {
    const names = columns.map(columnName);
    expect(new Set(names).size).toBe(names.length);
  }
});
