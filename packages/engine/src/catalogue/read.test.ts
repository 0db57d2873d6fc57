import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { stringify } from 'yaml';
import { signedArea } from '../floor/geometry/polygon.js';
import { valueOf } from '../floor/problem.js';
import { readCatalogue } from './read.js';
import { type FanFilterUnit, type Item, type ItemOf, type Profile, schemasByKind } from './schema.js';

const folder = new URL('../../../../catalogue/', import.meta.url);
const files = readdirSync(folder)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => ({ name, text: readFileSync(new URL(name, folder), 'utf8') }));

type Raw = Record<string, unknown>;

/** One small file with the given items and all else sound. */
const file = (...items: readonly Raw[]) => ({
  name: 'a.yaml',
  text: stringify({
    cloche: 1,
    catalogue: { group: 'test', invented: true, priceDate: '2026-10-01', priceBasis: 'invented' },
    items,
  }),
});
const problems = (...items: readonly Raw[]) => {
  const read = readCatalogue([file(...items)]);
  return read.ok ? [] : read.problems.map(({ code, path }) => [code, path.join('.')]);
};

const nut = { id: 'nut', kind: 'slot nut', name: 'Nut', mass: '0.01 kg', price: '0.50 EUR' };
const bracket = {
  id: 'bracket',
  kind: 'angle bracket',
  name: 'Bracket',
  mass: '0.1 kg',
  price: '4.00 EUR',
  series: 's',
  size: ['40 mm', '40 mm', '30 mm'],
  needs: [{ item: 'nut', count: 2 }],
};
const unit = {
  id: 'unit',
  kind: 'fan filter unit',
  name: 'Unit',
  mass: '20 kg',
  size: ['1 m', '0.5 m', '0.3 m'],
  face: ['0.9 m', '0.4 m'],
  filterClass: 'H14',
  soundPower: '55 dB',
  power: '100 W',
  voltage: '230 V',
  nominalFlow: '0.3 m3/s',
  curve: [
    { flow: '0 m3/s', pressure: '200 Pa' },
    { flow: '0.4 m3/s', pressure: '0 Pa' },
  ],
};
const square = (half: number) => [
  [-half, -half],
  [half, -half],
  [half, half],
  [-half, half],
];
const profile = (outer: unknown, holes: unknown = []) => ({
  id: 'profile',
  kind: 'profile',
  name: 'Profile',
  size: ['40 mm', '40 mm'],
  outline: { unit: 'mm', outer, holes },
  alloy: 'any',
  proofStrength: '120 MPa',
  proofStrengthSource: { work: 'none', mark: 'invented' },
  slot: { width: '8 mm', depth: '12 mm', series: 's' },
  massPerLength: '2 kg/m',
  stockLengths: ['6 m'],
});

describe('the demo catalogue', () => {
  const catalogue = valueOf(readCatalogue(files));
  const of = <K extends Item['kind']>(kind: K) =>
    catalogue.items.filter((item): item is ItemOf<K> => item.kind === kind);

  test('is marked as invented, in one currency', () => {
    expect(catalogue).toMatchObject({ invented: true, currency: 'EUR', priceDate: '2026-10-01' });
  });

  test('has something of every kind, and a part number and a price for each', () => {
    expect(new Set(catalogue.items.map(({ kind }) => kind))).toEqual(new Set(schemasByKind.keys()));
    for (const item of catalogue.items) {
      const priced = item.price ?? (item.kind === 'track' ? item.stock[0]!.price : undefined);
      expect([item.id, (priced ?? (item.kind === 'cloth' ? item.widths[0]!.price : undefined)) !== undefined]).toEqual([
        item.id,
        true,
      ]);
    }
    const numbers = catalogue.items.map(({ partNumber }) => partNumber);
    expect(new Set(numbers).size).toBe(numbers.length);
  });

  // Density of aluminium 2700 kg/m3: EN 1999-1-1:2007, 3.2.5 (from memory). Stored to a gram per metre.
  test.each(of('profile').map((p) => [p.id, p as Profile] as const))('%s weighs what its outline says', (_, p) => {
    const area =
      Math.abs(signedArea(p.outline.outer)) - p.outline.holes.reduce((s, h) => s + Math.abs(signedArea(h)), 0);
    expect(Math.abs(area * 1e-6 * 2700 - p.massPerLength)).toBeLessThan(0.0006);
    const xs = p.outline.outer.map(([x]) => x!);
    const ys = p.outline.outer.map(([, y]) => y!);
    expect((Math.max(...xs) - Math.min(...xs)) / 1000).toBeCloseTo(p.size[0], 9);
    expect((Math.max(...ys) - Math.min(...ys)) / 1000).toBeCloseTo(p.size[1], 9);
  });

  test('every series of profile finds corner blocks, brackets, feet, nuts and screws', () => {
    for (const series of new Set(of('profile').map((p) => (p as Profile).slot.series)))
      for (const kind of [
        'corner block',
        'angle bracket',
        'joiner',
        'foot plate',
        'levelling foot',
        'caster',
        'slot nut',
        'screw',
      ] as const)
        expect([
          series,
          kind,
          catalogue.items.some((i) => i.kind === kind && 'series' in i && i.series === series),
        ]).toEqual([series, kind, true]);
  });

  test('a track can be hung in every way, from nothing to the longest reach without a gap', () => {
    const reaches = (hung: string) =>
      catalogue.items
        .flatMap((i) => (i.kind === 'track support' && i.hung === hung ? [i.reach] : []))
        .sort((a, b) => a[0] - b[0]);
    expect(reaches('ceiling').at(-1)![1]).toBeCloseTo(1.5);
    expect(reaches('floor post').at(-1)![1]).toBeCloseTo(3);
    expect(reaches('shelf').at(-1)![1]).toBeCloseTo(1.2);
    for (const hung of ['ceiling', 'wall', 'floor post', 'frame', 'shelf'])
      reaches(hung).forEach(([low], i, all) => {
        if (i > 0) expect(low).toBeCloseTo(all[i - 1]![1]);
      });
  });

  test('nothing is rated for ultrashort pulses, and no plain blackout cloth is rated at all', () => {
    const rated = catalogue.items.flatMap((i) => ('ratings' in i ? [i] : []));
    expect(rated.flatMap((i) => i.ratings).filter((r) => r.regime === 'ultrashort pulses')).toEqual([]);
    for (const i of rated) if ('purpose' in i && i.purpose === 'blackout') expect(i.ratings).toEqual([]);
  });

  test('a fan filter unit reaches its nominal flow against some pressure', () => {
    for (const u of of('fan filter unit') as FanFilterUnit[]) {
      expect(u.curve.at(-1)!.flow).toBeGreaterThan(u.nominalFlow);
      expect(u.size[0] * u.size[1]).toBeGreaterThan(u.face[0] * u.face[1]);
    }
  });

  test('has the same hash whatever the order of its files, and another when a price changes', () => {
    expect(valueOf(readCatalogue([...files].reverse())).hash).toBe(catalogue.hash);
    const dearer = files.map((f) => ({ ...f, text: f.text.replace('985.00 EUR', '986.00 EUR') }));
    expect(valueOf(readCatalogue(dearer)).hash).not.toBe(catalogue.hash);
  });
});

describe('refusals', () => {
  test('sound items are read', () => {
    expect(problems(nut, bracket, unit, profile(square(20), [square(5)]))).toEqual([]);
  });

  test('no files', () => {
    const read = readCatalogue([]);
    expect(read.ok ? '' : read.problems[0]!.code).toBe('catalogue/no-files');
  });

  test('a fault of syntax names the file and the line', () => {
    const read = readCatalogue([{ name: 'b.yaml', text: 'a: 1\na: 2\n' }]);
    expect(read.ok ? [] : read.problems).toMatchObject([
      { code: 'catalogue/syntax', file: 'b.yaml', place: { line: 2 } },
    ]);
  });

  test.each<[string, readonly Raw[], readonly (readonly string[])[]]>([
    ['an unknown kind', [{ ...nut, kind: 'slot nutt' }], [['catalogue/unknown-kind', 'items.0.kind']]],
    ['no kind', [{ id: 'x' }], [['catalogue/unknown-kind', 'items.0.kind']]],
    ['an item that is no record', ['nut' as unknown as Raw], [['catalogue/unknown-kind', 'items.0.kind']]],
    ['an unknown field', [{ ...nut, weight: '1 kg' }], [['catalogue/unknown-field', 'items.0.weight']]],
    ['a missing mass', [{ ...nut, mass: undefined }], [['catalogue/missing', 'items.0.mass']]],
    ['a negative price', [{ ...nut, price: '-1 EUR' }], [['catalogue/negative-price', 'items.0.price']]],
    ['a price without currency', [{ ...nut, price: '5' }], [['catalogue/money', 'items.0.price']]],
    ['an id used twice', [nut, { ...nut, name: 'Other' }], [['catalogue/same-id', 'items.1.id']]],
    ['a need that is not there', [bracket], [['catalogue/unknown-item', 'items.0.needs.0.item']]],
    ['two currencies', [nut, { ...bracket, price: '4.00 USD' }], [['catalogue/mixed-currencies', 'items.1.price']]],
    [
      'a fan curve that rises',
      [{ ...unit, curve: [...unit.curve, { flow: '0.5 m3/s', pressure: '10 Pa' }] }],
      [['catalogue/curve-not-falling', 'items.0.curve.2']],
    ],
    [
      'an outline that crosses itself',
      [
        profile([
          [0, 0],
          [40, 40],
          [40, 0],
          [0, 40],
        ]),
      ],
      [['catalogue/outline', 'items.0.outline.outer']],
    ],
    [
      'an outline without area',
      [
        profile([
          [0, 0],
          [10, 0],
          [20, 0],
        ]),
      ],
      [['catalogue/outline', 'items.0.outline.outer']],
    ],
    ['a hole outside', [profile(square(5), [square(20)])], [['catalogue/outline', 'items.0.outline.holes.0']]],
    [
      'a hole in a hole',
      [profile(square(20), [square(10), square(5)])],
      [['catalogue/outline', 'items.0.outline.holes.1']],
    ],
  ])('%s', (_, items, expected) => {
    expect(problems(...items)).toEqual(expected);
  });

  test('all at once, over all files', () => {
    const a = file({ ...nut, mass: 1 });
    const b = { ...file({ ...nut, id: 'Nut 2' }), name: 'b.yaml' };
    const read = readCatalogue([b, a]);
    expect(read.ok ? [] : read.problems.map(({ code, file: name }) => [code, name])).toEqual([
      ['units/bare-number', 'a.yaml'],
      ['catalogue/malformed', 'b.yaml'],
    ]);
  });
});
