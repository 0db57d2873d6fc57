import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { type DesignResult, designFrom } from '../design-from.js';
import { compareGeometry } from './geometry.js';
import { type Comparison, compareDesigns, type ThingChange } from './index.js';

const root = new URL('../../../../', import.meta.url);
const texts = (folder: string) =>
  readdirSync(new URL(folder, root))
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => ({ name, text: readFileSync(new URL(`${folder}/${name}`, root), 'utf8') }));
const catalogueFiles = texts('catalogue');
const ruleTexts = Object.fromEntries(texts('rules').map(({ name, text }) => [name.replace('.yaml', ''), text]));

function made(brief: string | object): DesignResult {
  const briefText = typeof brief === 'string' ? brief : JSON.stringify(brief);
  const result = designFrom({ briefText, catalogueFiles, ruleTexts });
  if (!result.ok) throw new Error(result.problems.map((p) => `${p.path.join('.')}: ${p.message}`).join('\n'));
  return result.value;
}

/** An invented room with what the properties below need. */
interface Wish {
  readonly x: number;
  readonly y: number;
  readonly turn: number;
  readonly length: number;
  readonly bench: boolean;
  readonly box: boolean;
  readonly gap: number;
  readonly run: number;
}
const mm = (value: number) => `${value} mm`;
const usual: Wish = { x: 4000, y: 3000, turn: 0, length: 2400, bench: true, box: true, gap: 100, run: 2000 };
const brief = (wish: Partial<Wish> = {}) => {
  const w = { ...usual, ...wish };
  return {
    cloche: 1,
    project: { name: 'Invented', invented: true },
    room: {
      name: 'Lab',
      outline: [['0 m', '0 m'], ['9 m', '0 m'], ['9 m', '7 m'], ['0 m', '7 m']],
      height: '3 m',
      doors: [{ id: 'door', wall: 0, at: '0.5 m', width: '1 m', height: '2.1 m', swing: 'in', exit: true }],
      obstructions: w.bench ? [{ id: 'bench', at: ['8.5 m', '6 m'], size: ['0.6 m', '1 m'], to: '0.9 m' }] : [],
    },
    tables: [
      {
        id: 'table',
        at: [mm(w.x), mm(w.y)],
        turn: `${w.turn} deg`,
        length: mm(w.length),
        width: '1.2 m',
        height: '0.9 m',
        equipment: [{ id: 'chamber', at: ['0.3 m', '0.1 m'], size: ['0.4 m', '0.3 m', '0.3 m'] }],
      },
    ],
    lasers: [
      {
        id: 'laser',
        table: 'table',
        at: ['-0.5 m', '0 m'],
        beamHeight: '100 mm',
        direction: '0 deg',
        wavelength: '1064 nm',
        emission: { kind: 'continuous', power: '20 mW' },
        beam: { diameter: '2 mm', measuredAt: '1/e2', divergence: '1 mrad' },
      },
    ],
    layout: {
      enclosures: w.box ? [{ id: 'box', kind: 'close', around: ['table'], gap: mm(w.gap) }] : [],
      runs: [{ id: 'run', kind: 'partition', path: [['0.3 m', '4 m'], [mm(300 + w.run), '4 m']], hung: 'ceiling', trackHeight: '2.6 m' }],
    },
  };
}; // biome-ignore format: rings in one line

const wishes: fc.Arbitrary<Wish> = fc.record({
  x: fc.integer({ min: 3600, max: 5200 }),
  y: fc.integer({ min: 2200, max: 2800 }),
  turn: fc.constantFrom(0, 0, 15, 90),
  length: fc.constantFrom(1800, 2400),
  bench: fc.boolean(),
  box: fc.boolean(),
  gap: fc.constantFrom(80, 100, 150),
  run: fc.constantFrom(1500, 2000),
});

const byField = (fields: ThingChange['changed']) => [...fields].sort((a, b) => (a.field < b.field ? -1 : 1));

/** The same comparison read from the other side. */
function mirrored(c: Comparison): unknown {
  const swap = <T>({ before, after }: { readonly before: T; readonly after: T }) => ({ before: after, after: before });
  const change = { added: 'removed', removed: 'added', changed: 'changed' } as const;
  const number = (v: number) => (v === 0 ? 0 : -v);
  const money = (v: string | null) => (v === null || Number(v) === 0 ? v : v.startsWith('-') ? v.slice(1) : `-${v}`);
  const kind = { appeared: 'gone', gone: 'appeared' } as Readonly<Record<string, string>>;
  const field = (f: ThingChange['changed'][number]) => ({ ...f, ...swap(f) });
  return {
    revisions: swap(c.revisions),
    rules: c.rules.map((r) => ({ ...r, ...swap(r) })),
    project: c.project.map(field),
    geometry: c.geometry.map((g) => ({
      ...g,
      change: change[g.change],
      moved: g.moved?.map(number) ?? null,
      turned: g.turned === null ? null : number(g.turned),
      resized: byField(g.resized.map(field)),
      changed: byField(g.changed.map(field)),
    })),
    // By id: worse and better change places, and what failed and is not assessed is neither.
    findings: c.findings
      .map(({ direction: _, ...f }) => ({ ...f, ...swap(f), change: kind[f.change] ?? f.change }))
      .sort((a, b) => (a.id < b.id ? -1 : 1)),
    items: c.parts.items.map((i) => ({
      ...i,
      change: change[i.change],
      pieces: { ...swap(i.pieces), added: i.pieces.removed, removed: i.pieces.added },
      sizes: i.sizes.map((s) => ({ ...s, count: swap(s.count) })),
      order: swap(i.order),
      mass: swap(i.mass),
      cost: swap(i.cost),
      difference: money(i.difference),
    })),
    cost: swap(c.parts.cost),
    difference: money(c.parts.difference),
  };
}

/** In the form of `mirrored`, as it stands. */
const straight = (c: Comparison): unknown => ({
  revisions: c.revisions,
  rules: c.rules,
  project: c.project,
  geometry: c.geometry.map((g) => ({ ...g, resized: byField(g.resized), changed: byField(g.changed) })),
  findings: c.findings.map(({ direction: _, ...f }) => f).sort((a, b) => (a.id < b.id ? -1 : 1)),
  items: c.parts.items,
  cost: c.parts.cost,
  difference: c.parts.difference,
});

/** Numbers rounded so far that the noise of turned coordinates is gone. */
const plain = (value: unknown): unknown =>
  JSON.parse(
    JSON.stringify(value, (_key, v) =>
      typeof v === 'number' ? (Math.abs(v) < 1e-9 ? 0 : Number(v.toPrecision(8))) : v === '-0.00' ? '0.00' : v,
    ),
  );

let still: DesignResult;
beforeAll(() => {
  still = made(brief());
});

describe('two states of a project', () => {
  test('a state does not differ from itself', () => {
    fc.assert(
      fc.property(wishes, (wish) => {
        const c = compareDesigns(made(brief(wish)), made(brief(wish)));
        expect([c.geometry, c.findings, c.parts.items, c.falls, c.rules, c.worse]).toEqual([[], [], [], [], [], false]);
        expect(Number(c.parts.difference)).toBe(0);
      }),
      { numRuns: 8 },
    );
  });

  test('read from the other side, everything has the other sign', () => {
    fc.assert(
      fc.property(wishes, wishes, (one, other) => {
        const [a, b] = [made(brief(one)), made(brief(other))];
        expect(plain(mirrored(compareDesigns(a, b)))).toEqual(plain(straight(compareDesigns(b, a))));
      }),
      { numRuns: 8 },
    );
  });

  test('a table moved by d tells exactly d, and what stands on it goes along', () => {
    const shift = fc.tuple(fc.integer({ min: -400, max: 400 }), fc.integer({ min: -400, max: 400 }));
    fc.assert(
      fc.property(shift, wishes, ([dx, dy], wish) => {
        fc.pre(dx !== 0 || dy !== 0);
        const there = { ...wish, x: wish.x + dx, y: wish.y + dy };
        const { geometry } = compareDesigns(made(brief(wish)), made(brief(there)));
        expect(geometry.map((g) => g.id).sort()).toEqual(
          ['chamber', 'laser', 'table', ...(wish.box ? ['box'] : [])].sort(),
        );
        for (const g of geometry) {
          expect(g.moved![0]).toBeCloseTo(dx / 1000, 9);
          expect(g.moved![1]).toBeCloseTo(dy / 1000, 9);
          expect([g.turned, g.resized, g.changed]).toEqual([null, [], []]);
          expect(g.along).toBe(g.id === 'table' ? null : 'table');
        }
      }),
      { numRuns: 8 },
    );
  });
});

describe('one change tells itself', () => {
  const against = (wish: Partial<Wish>) => compareDesigns(still, made(brief(wish)));
  const told = (c: Comparison, id: string) => c.geometry.find((g) => g.id === id)!;

  test('a turned table', () => {
    const c = against({ turn: 15 });
    expect(told(c, 'table').turned).toBeCloseTo((15 * Math.PI) / 180, 9);
    expect(told(c, 'table').moved).toBeNull();
    expect([told(c, 'chamber').along, told(c, 'laser').along]).toEqual(['table', 'table']);
  });

  test('a longer table', () => {
    const table = told(against({ length: 3000 }), 'table');
    expect(table.resized).toEqual([{ field: 'length', before: 2.4, after: 3, quantity: 'length' }]);
    expect([table.moved, table.turned, table.changed]).toEqual([null, null, []]);
  });

  test('a bench that is taken away', () => {
    const c = against({ bench: false });
    expect(c.geometry.map((g) => [g.id, g.kind, g.change])).toEqual([['bench', 'obstruction', 'removed']]);
  });

  test('a run whose end is moved tells the corner and its track', () => {
    const run = told(against({ run: 2600 }), 'run');
    expect(run.moved).toBeNull();
    expect(run.resized.map((f) => f.field)).toEqual(['length of track', 'corner 2']);
    expect(run.resized[1]!.before).toEqual([expect.closeTo(2.3, 9), 4]);
    expect(run.resized[1]!.after).toEqual([expect.closeTo(2.9, 9), 4]);
  });

  test('an enclosure that is taken away takes its findings and its parts along', () => {
    const c = against({ box: false });
    expect(told(c, 'box').change).toBe('removed');
    expect(c.findings.filter((f) => f.subject === 'box').every((f) => f.change === 'gone')).toBe(true);
    expect(c.parts.pieces.after).toBeLessThan(c.parts.pieces.before);
    expect(Number(c.parts.difference)).toBeLessThan(0);
    expect(c.falls.flatMap((f) => f.findings)).toEqual(
      expect.arrayContaining(c.findings.filter((f) => f.before).map((f) => f.id)),
    );
  });

  test('another name of the project', () => {
    const c = compareDesigns(still, made({ ...brief(), project: { name: 'Renamed', invented: true } }));
    expect(c.project).toEqual([{ field: 'name', before: 'Invented', after: 'Renamed', quantity: null }]);
    expect([c.geometry, c.findings, c.parts.items]).toEqual([[], [], []]);
  });

  test('other site rules are told by their written values', () => {
    const other = made({
      ...brief(),
      site: { overrides: [{ rule: 'air.noise-limit', value: '61 dB', because: 'Tried here.' }] },
    });
    const { rules } = compareDesigns(still, other);
    expect(rules.map((r) => [r.id, r.after])).toEqual([['air.noise-limit', '61 dB']]);
  });
});

describe('no number or word of a thing is forgotten', () => {
  type Path = readonly (string | number)[];
  const leaves = (value: unknown, path: Path): Path[] =>
    typeof value === 'object' && value !== null
      ? Object.entries(value).flatMap(([key, inner]) =>
          leaves(inner, [...path, Array.isArray(value) ? Number(key) : key]),
        )
      : [path];
  const other = (value: unknown) =>
    typeof value === 'number' ? value + 0.5 : typeof value === 'boolean' ? !value : value === null ? 1 : `${value} x`;
  const withOther = (value: unknown, [key, ...rest]: Path): unknown => {
    if (key === undefined) return other(value);
    const at = (value as Record<string | number, unknown>)[key];
    if (Array.isArray(value)) return value.map((v, i) => (i === key ? withOther(at, rest) : v));
    return { ...(value as object), [key]: withOther(at, rest) };
  };

  /** What follows from the rest of its thing, or is told as its parts, findings or barriers. */
  const derived = [
    /^enclosures\.\*\.(inside|insideLength|insideWidth|unitAreas|footPoints|roofBeams|volume|cleanArea|openings|mass|centreOfMass|tries)\b/,
    /^enclosures\.\*\.sides\.\*\.(from|to|bottom|top)\b/,
    /^runs\.\*\.(line|segments|curtainTop|joints|stretches|massPerLength|mass|stackBack)\b/,
    /^runs\.\*\.supports\.\*\./,
    /^covers\.\*\.(part|fits)$/,
    /^lasers\.\*\.legs\.\*\.(from|to)\b/,
    /^room\.(doors|windows|boards)\.\*\.(wall|inward)\b/,
    /^room\.doors\.\*\.leaves\.\*\.(hinge|leaf|closed|open)\b/,
    // Outline, centre and turn say one thing three times.
    /^(tables|enclosures)\.\*\.(outline|centre|turn)\b/,
    /^room\.(doors|windows|boards)\.\*\.to\b/,
    // A pair where there is one; its two numbers are told.
    /^lasers\.\*\.wavelengthRange$/,
  ];

  test('each one that changes is told, or follows from others', () => {
    const { design } = made(texts('examples').find((e) => e.name === 'three-tables.yaml')!.text);
    const { room, tables, equipment, lasers, enclosures, runs, covers, devices } = design;
    const things = { room, tables, equipment, lasers, enclosures, runs, covers, devices };
    const pattern = (path: Path) => path.map((p) => (typeof p === 'number' ? '*' : p)).join('.');
    const one = new Map(leaves(things, []).map((path) => [pattern(path), path]));
    const untold = [...one]
      .filter(([name]) => !derived.some((each) => each.test(name)))
      .filter(([, path]) => compareGeometry(design, withOther(design, path) as typeof design).length === 0)
      .map(([name]) => name);
    expect(one.size).toBeGreaterThan(100);
    expect(untold).toEqual([]);
  });
});
