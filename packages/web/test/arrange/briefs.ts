import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { stringify } from 'yaml';
import { radiansOf } from '../../src/arrange/exact.js';
import { metresOf } from '../../src/brief/lengths.js';
import { listAt, valueAt } from '../../src/brief/path.js';

/** The largest invented example, as a text to arrange. */
export const threeTables = readFileSync(new URL('../../../../examples/three-tables.yaml', import.meta.url), 'utf8');

const millimetres = (min: number, max: number) => fc.integer({ min, max }).map((mm) => `${mm / 1000} m`);
const inches = (min: number, max: number) => fc.integer({ min, max }).map((tenths) => `${tenths / 10} in`);
const length = (min: number, max: number) =>
  fc.oneof(millimetres(min, max), inches(Math.ceil(min / 2.54), Math.floor(max / 2.54)));
const point = fc.tuple(length(1000, 9000), length(1000, 9000));
const onTable = fc.tuple(length(-400, 400), length(-300, 300));
const turn = fc.option(fc.constantFrom('0 deg', '90 deg', '30.5 deg', '-45 deg', '0.25 rad'), { nil: undefined });

const table = fc.record({ at: point, turn, spot: onTable, own: turn, laser: onTable, direction: turn });

/** A room with tables, what stands on them, and things of every kind that has a place. */
export const briefs = fc
  .record({
    tables: fc.array(table, { minLength: 3, maxLength: 4 }),
    run: fc.array(point, { minLength: 2, maxLength: 4 }),
    column: point,
    lamp: point,
    turn,
  })
  .map((drawn) => {
    const ids = drawn.tables.map((_, i) => `table-${i + 1}`);
    const brief = {
      cloche: 1,
      project: { name: 'Drawn' },
      room: {
        name: 'Room',
        outline: [
          ['0 m', '0 m'],
          ['10 m', '0 m'],
          ['10 m', '10 m'],
          ['0 m', '10 m'],
        ],
        height: '3 m',
        doors: [{ id: 'door-1', wall: 0, at: '1 m', width: '1 m', height: '2 m', swing: 'in', hinge: 'left' }],
        columns: [{ id: 'column-1', at: drawn.column, size: ['0.4 m', '0.2 m'], turn: drawn.turn }],
        luminaires: [{ id: 'lamp-1', at: drawn.lamp, size: ['1.2 m', '0.3 m'] }],
      },
      tables: drawn.tables.map((each, i) => ({
        id: ids[i],
        at: each.at,
        turn: each.turn,
        length: '1.2 m',
        width: '0.8 m',
        height: '0.9 m',
        equipment: [{ id: `part-${i + 1}`, at: each.spot, size: ['0.2 m', '0.1 m', '0.1 m'], turn: each.own }],
      })),
      lasers: drawn.tables.map((each, i) => ({
        id: `laser-${i + 1}`,
        table: ids[i],
        at: each.laser,
        beamHeight: '0.1 m',
        direction: each.direction ?? '10 deg',
        wavelength: '532 nm',
        emission: { kind: 'continuous', power: '1 W' },
        beam: { diameter: '2 mm', measuredAt: '1/e2', divergence: '1 mrad' },
        legs: [{ to: each.spot }],
      })),
      needs: { access: [{ to: 'table-1', sides: ['south', 'east'] }], movable: ['table-2'] },
      layout: {
        enclosures: [
          {
            id: 'enclosure-1',
            kind: 'close',
            around: ['table-1'],
            gaps: { east: '0.3 m' },
            sides: { north: { closure: 'curtain' }, west: { closure: 'open' } },
          },
        ],
        runs: [{ id: 'run-1', kind: 'partition', path: drawn.run, hung: 'ceiling', trackHeight: '2.4 m' }],
      },
    };
    return { text: stringify(JSON.parse(JSON.stringify(brief)), { lineWidth: 0 }), ids };
  });

/** Every length and angle of a brief as a number, in order; what is turned by nothing counts as turned by zero. */
export function numbersOf(data: unknown): readonly number[] {
  const tables = listAt(data, ['tables']);
  const points = [
    ...tables.flatMap((t) => [valueAt(t, ['at']), ...listAt(t, ['equipment']).map((e) => valueAt(e, ['at']))]),
    ...listAt(data, ['lasers']).flatMap((l) => [
      valueAt(l, ['at']),
      ...listAt(l, ['legs']).map((e) => valueAt(e, ['to'])),
    ]),
    ...listAt(data, ['layout', 'runs']).flatMap((r) => listAt(r, ['path'])),
    ...['columns', 'luminaires'].flatMap((list) =>
      listAt(data, ['room', list]).flatMap((e) => [valueAt(e, ['at']), valueAt(e, ['size'])]),
    ),
  ];
  const angles = [
    ...tables.flatMap((t) => [valueAt(t, ['turn']), ...listAt(t, ['equipment']).map((e) => valueAt(e, ['turn']))]),
    ...listAt(data, ['lasers']).map((l) => valueAt(l, ['direction'])),
    ...listAt(data, ['room', 'columns']).map((c) => valueAt(c, ['turn'])),
  ];
  // A direction is compared as the point that it leads to, so that a whole turn makes no difference.
  return [
    ...points.flatMap((p) => [metresOf(valueAt(p, [0])) ?? Number.NaN, metresOf(valueAt(p, [1])) ?? Number.NaN]),
    ...angles.flatMap((a) => [Math.cos(radiansOf(a)), Math.sin(radiansOf(a))]),
  ];
}

export const largestDifference = (a: readonly number[], b: readonly number[]): number =>
  a.length === b.length ? Math.max(...a.map((value, i) => Math.abs(value - b[i]!))) : Number.POSITIVE_INFINITY;
