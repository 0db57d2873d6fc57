import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse, stringify } from 'yaml';
import { valueOf } from '../floor/problem.js';
import { readBrief } from './read.js';

const folder = new URL('../../../../examples/', import.meta.url);
const examples = readdirSync(folder).filter((name) => name.endsWith('.yaml'));

type Raw = Record<string, unknown>;

const room = {
  name: 'Room',
  outline: [
    ['0 m', '0 m'],
    ['6 m', '0 m'],
    ['6 m', '4 m'],
    ['0 m', '4 m'],
  ],
  height: '3 m',
  doors: [{ id: 'door-1', wall: 0, at: '1 m', width: '1 m', height: '2 m', swing: 'out' }],
  windows: [{ id: 'window-1', wall: 2, at: '1 m', width: '1 m', height: '1 m', sill: '1 m' }],
};
const table = { id: 'table-1', at: ['3 m', '2 m'], length: '2.4 m', width: '1.2 m', height: '0.9 m' };
const laser = {
  id: 'laser-1',
  table: 'table-1',
  at: ['0 m', '0 m'],
  beamHeight: '0.1 m',
  direction: '0 deg',
  wavelength: '532 nm',
  emission: { kind: 'continuous', power: '1 W' },
  beam: { diameter: '2 mm', measuredAt: '1/e2', divergence: '1 mrad' },
};
const run = {
  id: 'run-1',
  kind: 'partition',
  path: [
    ['1 m', '1 m'],
    ['1 m', '3 m'],
  ],
  hung: 'ceiling',
  trackHeight: '2.5 m',
};
const base = { cloche: 1, project: { name: 'Test' }, room, tables: [table] };

const problems = (change: Raw) => {
  const read = readBrief(stringify({ ...base, ...change }), 'brief.yaml');
  return read.ok ? [] : read.problems;
};
const found = (change: Raw) => problems(change).map(({ code, path }) => `${code} ${path.join('.')}`);
const inRoom = (change: Raw) => found({ room: { ...room, ...change } });
const withRun = (change: Raw) => found({ layout: { runs: [{ ...run, ...change }] } });

describe.each(examples)('the example %s', (name) => {
  const text = readFileSync(new URL(name, folder), 'utf8');

  test('is read without problems and says that it is invented', () => {
    const brief = valueOf(readBrief(text, name));
    expect(brief.project.invented).toBe(true);
    expect(text.split('\n')[0]).toContain('nvented');
  });

  test('means the same written as JSON', () => {
    expect(readBrief(JSON.stringify(parse(text)))).toEqual(readBrief(text));
  });
});

test('quantities are in SI after reading', () => {
  const brief = valueOf(readBrief(stringify({ ...base, room: { ...room, height: '10 ft' } })));
  // 1 ft = 0.3048 m exactly (NIST SP 811, Appendix B, from memory).
  expect(brief.room.height).toBeCloseTo(3.048, 12);
  expect(brief.tables![0]!.at).toEqual([3, 2]);
});

test('a problem says where it stands and in which file', () => {
  const text = stringify({ ...base, tables: [{ ...table, at: ['9 m', '2 m'] }] });
  const line = text.split('\n').findIndex((each) => each.includes('9 m')) + 1;
  const read = readBrief(text, 'brief.yaml');
  expect(read.ok ? [] : read.problems).toMatchObject([
    { code: 'brief/outside-room', path: ['tables', 0, 'at'], file: 'brief.yaml', place: { line, column: 7 } },
  ]);
});

test('the sound brief has no problems', () => {
  expect(found({ lasers: [laser], layout: { runs: [run] } })).toEqual([]);
});

describe('the outline of the room', () => {
  test('may not cross itself; both walls are named', () => {
    const outline = [
      ['0 m', '0 m'],
      ['6 m', '4 m'],
      ['6 m', '0 m'],
      ['0 m', '4 m'],
    ];
    const crossed = problems({ room: { ...room, outline, doors: [], windows: [] } });
    expect(crossed.map(({ code }) => code)).toContain('brief/room-crosses-itself');
    expect(crossed[0]!.message).toMatch(/Wall 0 .* wall 2 /);
  });

  test('may not repeat a corner', () => {
    expect(inRoom({ outline: [room.outline[0], ...room.outline] })).toEqual(['brief/repeated-corner room.outline.1']);
  });

  test('closes by itself', () => {
    expect(inRoom({ outline: [...room.outline, room.outline[0]] })).toEqual(['brief/repeated-corner room.outline.4']);
  });

  test('has an area', () => {
    const outline = [
      ['0 m', '0 m'],
      ['3 m', '0 m'],
      ['6 m', '0 m'],
    ];
    expect(inRoom({ outline })).toEqual(['brief/room-without-area room.outline']);
  });

  test('may run clockwise', () => {
    expect(found({ room: { ...room, outline: [...room.outline].reverse(), doors: [], windows: [] } })).toEqual([]);
  });
});

describe('what is on the walls', () => {
  const door = room.doors[0]!;

  test.each([
    ['wall that does not exist', { wall: 4 }, 'brief/no-such-wall room.doors.0.wall'],
    ['beyond the end of the wall', { at: '5.5 m' }, 'brief/beyond-wall room.doors.0.at'],
    ['through the ceiling', { height: '3.1 m' }, 'brief/above-ceiling room.doors.0.height'],
  ])('%s', (_, change, expected) => {
    expect(inRoom({ doors: [{ ...door, ...change }] })).toEqual([expected]);
  });

  test('may fill a wall from corner to corner, in any unit', () => {
    expect(inRoom({ doors: [{ ...door, at: '0 mm', width: '600 cm' }] })).toEqual([]);
  });

  test('a window counts from its sill', () => {
    expect(inRoom({ windows: [{ ...room.windows[0]!, sill: '2.5 m' }] })).toEqual([
      'brief/above-ceiling room.windows.0.height',
    ]);
  });
});

describe('what stands in the room is wholly inside', () => {
  const solid = { id: 'x', at: ['5.8 m', '2 m'], size: ['1 m', '1 m'] };

  test.each<[string, Raw, string]>([
    ['table', { tables: [{ ...table, at: ['1 m', '2 m'] }] }, 'tables.0.at'],
    ['turned table', { tables: [{ ...table, at: ['3 m', '1 m'], turn: '90 deg' }] }, 'tables.0.at'],
    ['column', { room: { ...room, columns: [solid] } }, 'room.columns.0.at'],
    ['obstruction', { room: { ...room, obstructions: [{ ...solid, to: '1 m' }] } }, 'room.obstructions.0.at'],
    ['equipment', { equipment: [{ ...solid, size: ['1 m', '1 m', '1 m'] }] }, 'equipment.0.at'],
    [
      'equipment on a table',
      { tables: [{ ...table, equipment: [{ ...solid, size: ['1 m', '1 m', '1 m'] }] }] },
      'tables.0.equipment.0.at',
    ],
    [
      'enclosure',
      { layout: { enclosures: [{ id: 'e', kind: 'close', around: ['table-1'], gap: '2 m' }] } },
      'layout.enclosures.0',
    ],
    [
      'sprinkler',
      { room: { ...room, sprinklers: [{ id: 's', at: ['7 m', '1 m'], deflector: '2.9 m' }] } },
      'room.sprinklers.0.at',
    ],
    ['laser without table', { lasers: [{ ...laser, table: undefined, at: ['-1 m', '0 m'] }] }, 'lasers.0.at'],
    [
      'corner of a run',
      {
        layout: {
          runs: [
            {
              ...run,
              path: [
                ['1 m', '1 m'],
                ['1 m', '5 m'],
              ],
            },
          ],
        },
      },
      'layout.runs.0.path.1',
    ],
  ])('%s', (_, change, path) => {
    expect(found(change)).toEqual([`brief/outside-room ${path}`]);
  });

  test('it may touch the walls', () => {
    expect(found({ tables: [{ ...table, at: ['1.2 m', '0.6 m'] }] })).toEqual([]);
  });

  test('also where the room has an inner corner', () => {
    const outline = [
      ['0 m', '0 m'],
      ['6 m', '0 m'],
      ['6 m', '4 m'],
      ['3 m', '4 m'],
      ['3 m', '2.2 m'],
      ['2.9 m', '2.2 m'],
      ['2.9 m', '4 m'],
      ['0 m', '4 m'],
    ];
    expect(found({ room: { ...room, outline, windows: [] } })).toEqual(['brief/outside-room tables.0.at']);
  });
});

describe('names', () => {
  test('are used once', () => {
    expect(found({ tables: [{ ...table, id: 'door-1' }] })).toEqual(['brief/same-id tables.0.id']);
  });

  test('may not be that of the room', () => {
    expect(found({ tables: [{ ...table, id: 'room' }] })).toEqual(['brief/reserved-id tables.0.id']);
  });

  test.each<[string, Raw, string, string]>([
    ['table of a laser', { lasers: [{ ...laser, table: 'tabel-1' }] }, 'lasers.0.table', 'table-1'],
    [
      'tables of an enclosure',
      { layout: { enclosures: [{ id: 'e', kind: 'close', around: ['table-2'] }] } },
      'layout.enclosures.0.around.0',
      'table-1',
    ],
    [
      'carrier of a run',
      { layout: { runs: [{ ...run, hung: 'shelf', on: 'table-9' }] } },
      'layout.runs.0.on',
      'table-1',
    ],
    ['what is covered', { layout: { covers: [{ id: 'c', over: 'window-2' }] } }, 'layout.covers.0.over', 'window-1'],
    ['door of a sign', { layout: { signs: [{ id: 's', door: 'dor-1' }] } }, 'layout.signs.0.door', 'door-1'],
    [
      'place of an interlock',
      { layout: { interlocks: [{ id: 'i', on: 'dor-1' }] } },
      'layout.interlocks.0.on',
      'door-1',
    ],
    [
      'place of a sensor',
      { layout: { sensors: [{ id: 's', where: 'tabel-1', at: ['1 m', '1 m'] }] } },
      'layout.sensors.0.where',
      'table-1',
    ],
    [
      'place of a class',
      { needs: { cleanliness: [{ where: 'tabel-1', isoClass: 5, size: '0.5 um', state: 'at-rest' }] } },
      'needs.cleanliness.0.where',
      'table-1',
    ],
    ['end of a way', { needs: { ways: [{ from: 'door-1', to: 'tabel-1' }] } }, 'needs.ways.0.to', 'table-1'],
    ['side to reach', { needs: { access: [{ to: 'tabel-1', sides: ['south'] }] } }, 'needs.access.0.to', 'table-1'],
    ['movable thing', { needs: { movable: ['tabel-1'] } }, 'needs.movable.0', 'table-1'],
    [
      'part of a phase',
      { needs: { phases: [{ id: 'p', name: 'P', includes: ['tabel-1'] }] } },
      'needs.phases.0.includes.0',
      'table-1',
    ],
  ])('%s must exist', (_, change, path, near) => {
    const [first, ...more] = problems(change);
    expect([first!.code, first!.path.join('.'), more]).toEqual(['brief/unknown-reference', path, []]);
    expect(first!.hint).toContain(near);
  });

  test('must be of the right kind', () => {
    const [first] = problems({ layout: { signs: [{ id: 's', door: 'window-1' }] } });
    expect(first!.message).toBe('window-1 is a window; a door is needed here.');
  });

  test('the room itself may be a place', () => {
    expect(found({ needs: { darkness: [{ where: 'room', illuminance: '1 lx' }] } })).toEqual([]);
  });
});

describe('columns, diagonals, ranges', () => {
  const column = { id: 'c', at: ['1 m', '1 m'] };

  test.each<[string, Raw, string]>([
    ['column without size', { columns: [column] }, 'brief/column-size room.columns.0'],
    [
      'column with both sizes',
      { columns: [{ ...column, size: ['1 m', '1 m'], diameter: '1 m' }] },
      'brief/column-size room.columns.0',
    ],
    [
      'diagonal to no corner',
      { diagonals: [{ from: 0, to: 4, measured: '7 m' }] },
      'brief/no-such-corner room.diagonals.0.to',
    ],
    [
      'diagonal to itself',
      { diagonals: [{ from: 1, to: 1, measured: '7 m' }] },
      'brief/no-such-corner room.diagonals.0.to',
    ],
    [
      'structure below the ceiling',
      { ceiling: { kind: 'concrete slab', structureHeight: '2.9 m' } },
      'brief/wrong-order room.ceiling.structureHeight',
    ],
    [
      'obstruction upside down',
      { obstructions: [{ ...column, size: ['1 m', '1 m'], from: '2 m', to: '1 m' }] },
      'brief/wrong-order room.obstructions.0.from',
    ],
  ])('%s', (_, change, expected) => {
    expect(inRoom(change)).toEqual([expected]);
  });

  test('wavelength range that falls', () => {
    expect(found({ lasers: [{ ...laser, wavelengthRange: ['540 nm', '530 nm'] }] })).toEqual([
      'brief/wrong-order lasers.0.wavelengthRange',
    ]);
  });
});

describe('curtain runs', () => {
  const [a, b] = run.path as [string[], string[]];
  const u = [a, b, ['2 m', '3 m'], ['2 m', '1 m']];

  test.each<[string, Raw, string]>([
    ['closed with two corners', { closed: true }, 'brief/run-too-short layout.runs.0.path'],
    ['corner twice', { path: [a, a, b] }, 'brief/run-repeats-corner layout.runs.0.path.1'],
    ['closed twice', { path: [...u, a], closed: true }, 'brief/run-repeats-corner layout.runs.0.path.4'],
    [
      'crossing itself',
      { path: [a, b, ['2 m', '3 m'], ['0.5 m', '2 m']] },
      'brief/run-crosses-itself layout.runs.0.path.2',
    ],
    [
      'opening past the end',
      { openings: [{ at: '1.8 m', width: '1 m' }] },
      'brief/opening-beyond-run layout.runs.0.openings.0',
    ],
    [
      'opening before the start',
      { openings: [{ at: '0.2 m', width: '1 m' }] },
      'brief/opening-beyond-run layout.runs.0.openings.0',
    ],
    [
      'no support past the end',
      { noSupport: [{ from: '1 m', to: '3 m', because: 'x' }] },
      'brief/no-support-range layout.runs.0.noSupport.0',
    ],
    [
      'no support backwards',
      { noSupport: [{ from: '1 m', to: '0.5 m', because: 'x' }] },
      'brief/no-support-range layout.runs.0.noSupport.0',
    ],
    ['hung from no frame', { hung: 'frame' }, 'brief/run-needs-on layout.runs.0'],
    ['above the ceiling', { trackHeight: '3.2 m' }, 'brief/above-ceiling layout.runs.0.trackHeight'],
  ])('%s', (_, change, expected) => {
    expect(withRun(change)).toEqual([expected]);
  });

  test('an opening of a closed run may lie over its start', () => {
    expect(withRun({ path: u, closed: true, openings: [{ at: '0.2 m', width: '1 m' }] })).toEqual([]);
  });
});

test('all problems are reported at once', () => {
  const codes = found({
    tables: [{ ...table, id: 'door-1', at: ['9 m', '2 m'] }],
    lasers: [laser],
    layout: { runs: [{ ...run, closed: true }] },
  });
  expect(codes).toEqual([
    'brief/outside-room tables.0.at',
    'brief/same-id tables.0.id',
    'brief/unknown-reference lasers.0.table',
    'brief/run-too-short layout.runs.0.path',
  ]);
});

/** Every path to something inside plain data. */
const pathsIn = (value: unknown, above: readonly (string | number)[] = []): (string | number)[][] =>
  typeof value === 'object' && value !== null
    ? Object.entries(value).flatMap(([key, inner]) => {
        const path = [...above, Array.isArray(value) ? Number(key) : key];
        return [path, ...pathsIn(inner, path)];
      })
    : [];

const replaced = (value: unknown, [step, ...rest]: readonly (string | number)[], by: unknown): unknown => {
  if (step === undefined) return by;
  if (Array.isArray(value)) return value.map((inner, i) => (i === step ? replaced(inner, rest, by) : inner));
  return Object.fromEntries(
    Object.entries(value as Raw).map(([key, inner]) => [key, key === step ? replaced(inner, rest, by) : inner]),
  );
};

test('whatever is put in place of a field of an example, the reader answers with problems that help, and never throws', () => {
  const data = parse(readFileSync(new URL('three-tables.yaml', folder), 'utf8'));
  const path = fc.constantFrom(...pathsIn(data));
  const junk = fc.oneof(
    fc.jsonValue({ maxDepth: 2 }),
    fc.constantFrom('1 m', '-1 m', '0 m', '1e9 m', '5 kg', 'table-1', 'room'),
  );
  fc.assert(
    fc.property(path, junk, (where, by) => {
      const read = readBrief(JSON.stringify(replaced(data, where, by)), 'junk.json');
      if (read.ok) return;
      expect(read.problems.length).toBeGreaterThan(0);
      for (const each of read.problems) {
        expect(each.code).toMatch(/^(brief|units)\//);
        expect(each.message).toMatch(/^\S.*[.?!]$/s);
        expect(each.hint).toMatch(/^\S.*[.?!]$/s);
        expect(each.place!.line).toBeGreaterThan(0);
      }
    }),
    { seed: 6, numRuns: 150 },
  );
});
