import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Design, type DesignResult, designFrom, type Part, type Problem } from '@cloche/engine';
import fc from 'fast-check';
import { expect, test } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
const texts = (folder: string) =>
  readdirSync(join(root, folder))
    .filter((f) => f.endsWith('.yaml'))
    .sort()
    .map((name) => ({ name, text: readFileSync(join(root, folder, name), 'utf8') }));
const catalogueFiles = texts('catalogue');
const ruleTexts = Object.fromEntries(texts('rules').map(({ name, text }) => [name.replace('.yaml', ''), text]));

const mm = (min: number, max: number) => fc.integer({ min, max }).map((v) => `${v} mm`);
const maybe = <T>(arb: fc.Arbitrary<T>) => fc.option(arb, { nil: undefined });
const side = fc.constantFrom(
  { closure: 'open' },
  { closure: 'curtain' },
  { closure: 'strip' },
  { closure: 'rigid panel' },
  { closure: 'rigid panel', item: 'sheet-laser-green-6' },
);
const enclosure = fc.record({
  id: fc.constant('e1'),
  around: fc.constant(['t1']),
  kind: fc.constantFrom('close', 'walk-in'),
  gap: maybe(mm(5, 1500)),
  gaps: maybe(fc.record({ east: mm(5, 1500) })),
  clearHeight: maybe(mm(900, 2900)),
  hemGap: maybe(fc.oneof({ weight: 6, arbitrary: mm(0, 300) }, mm(300, 2500))),
  sides: maybe(fc.record({ south: side, east: side, north: side, west: side })),
  profile: maybe(fc.constantFrom('profile-30x30', 'profile-30x60', 'profile-40x40', 'profile-40x80', 'profile-60x60')),
  unitCount: maybe(fc.integer({ min: 0, max: 12 })),
  lightCount: maybe(fc.integer({ min: 0, max: 6 })),
  feet: maybe(fc.constantFrom('levelling', 'foot plate', 'caster')),
});
const corners = (x: number, y: number, w: number, d: number) => ({
  line: [[x, y], [x + w, y]],
  corner: [[x, y], [x + w, y], [x + w, y + d]],
  ring: [[x, y], [x + w, y], [x + w, y + d], [x, y + d]],
}); // biome-ignore format: three shapes
const run = fc
  .record({
    shape: fc.constantFrom('line', 'corner', 'ring'),
    w: fc.integer({ min: 300, max: 9000 }),
    d: fc.integer({ min: 300, max: 9000 }),
    corner: maybe(fc.constantFrom('curve', 'connector')),
    hung: fc.constantFrom('ceiling', 'wall', 'floor post'),
    trackHeight: mm(1800, 2900),
  })
  .map(({ shape, w, d, ...rest }) => ({
    id: 'r1',
    kind: 'partition',
    ...rest,
    closed: shape === 'ring',
    path: corners(200, 200, w, d)[shape as 'line'].map((p) => p.map((v) => `${v} mm`)),
  }));
const table = fc.record({
  id: fc.constant('t1'),
  at: fc.constant(['6 m', '6 m']),
  length: mm(300, 4800),
  width: mm(300, 2000),
  height: mm(600, 1000),
  turn: fc.oneof(fc.constantFrom(0, 45, 90, 180, 270), fc.integer({ min: -360, max: 360 })).map((v) => `${v} deg`),
});
const briefs = fc
  .record({ table, enclosure: maybe(enclosure), run: maybe(run), isoClass: maybe(fc.integer({ min: 3, max: 8 })) })
  .map(({ table: t, enclosure: e, run: r, isoClass }) => ({
    cloche: 1,
    project: { name: 'random', invented: true },
    room: { name: 'r', outline: corners(0, 0, 12, 12).ring.map((p) => p.map((v) => `${v} m`)), height: '3 m' },
    tables: [t],
    needs: {
      cleanliness: e && isoClass ? [{ where: 'e1', isoClass, size: '0.5 um', state: 'at-rest' }] : [],
    },
    layout: { enclosures: e ? [e] : [], runs: r ? [r] : [] },
  }));

type Numbers = readonly number[];
interface Box {
  readonly low: Numbers;
  readonly high: Numbers;
}

/** Envelope of a straight part in axes turned by `turn`; null for cloth and loose parts. */
function envelope({ shape }: Part, turn: number): Box | null {
  const own = (p: Numbers) => [
    p[0]! * Math.cos(turn) + p[1]! * Math.sin(turn),
    p[1]! * Math.cos(turn) - p[0]! * Math.sin(turn),
    p[2] ?? 0,
  ];
  const around = (points: readonly Numbers[], half: Numbers): Box => ({
    low: [0, 1, 2].map((i) => Math.min(...points.map((p) => p[i]!)) - half[i]!),
    high: [0, 1, 2].map((i) => Math.max(...points.map((p) => p[i]!)) + half[i]!),
  });
  if (shape.shape === 'plate') return around(shape.corners.map(own), [0, 0, 0]);
  if (shape.shape === 'box') {
    const turned = Math.abs(Math.sin(shape.turn - turn)) > 0.5;
    const [l, w] = turned ? [shape.width, shape.length] : [shape.length, shape.width];
    return around([own(shape.centre)], [l / 2, w / 2, shape.height / 2]);
  }
  if (shape.shape !== 'bar') return null;
  const ends = [own(shape.from), own(shape.to)];
  const [w, h] = [shape.width / 2, shape.height / 2];
  const along = [0, 1, 2].find((i) => Math.abs(ends[0]![i]! - ends[1]![i]!) > 1e-6);
  return around(ends, along === 2 ? [w, h, 0] : along === 0 ? [0, w, h] : [w, 0, h]);
}

const cut = (a: Box, b: Box) => [0, 1, 2].every((i) => a.low[i]! < b.high[i]! - 1e-6 && b.low[i]! < a.high[i]! - 1e-6);

function expectApart(parts: readonly (readonly [string, Box])[]): void {
  parts.forEach(([a, x], i) => {
    for (const [b, y] of parts.slice(i + 1)) expect(cut(x, y), `${a} cuts ${b}`).toBe(false);
  });
}

/** Every number in a value, so that none is NaN or infinite. */
function expectFinite(value: unknown, path: string): void {
  if (typeof value === 'number') expect(Number.isFinite(value), path).toBe(true);
  else if (value && typeof value === 'object')
    for (const [k, v] of Object.entries(value)) expectFinite(v, `${path}.${k}`);
}

function expectSoundFrame(design: Design, sheets: ReadonlyMap<string, readonly number[]>): void {
  for (const e of design.enclosures) {
    const own = design.parts.filter((p) => p.of === e.id);
    const boxes = (...roles: readonly string[]) =>
      own
        .filter((p) => roles.includes(p.role))
        .flatMap((p): (readonly [string, Box])[] => {
          const box = envelope(p, e.turn);
          return box ? [[p.id, box]] : [];
        });
    const members = boxes('post', 'beam', 'cross beam', 'rail');
    expectApart([...members, ...boxes('track', 'light')]);
    const roof = boxes('fan filter unit', 'roof panel').map(
      ([id, b]) => [id, { low: [b.low[0]!, b.low[1]!, 0], high: [b.high[0]!, b.high[1]!, 1] }] as const,
    );
    expectApart(roof);
    const beams = own.filter((p) => p.role === 'beam' || p.role === 'cross beam');
    expect(e.roofBeams.map((b) => b.part).sort()).toEqual(beams.map((p) => p.id).sort());
    for (const b of e.roofBeams) {
      expect(b.span).toBeCloseTo(beams.find((p) => p.id === b.part)!.length!, 9);
      for (const p of b.points)
        expect(p.at >= -1e-9 && p.at <= b.span + 1e-9, `${b.part} carries at ${p.at}`).toBe(true);
    }
    for (const p of own.filter((q) => q.group === 'panels')) {
      const [long, short] = [...sheets.get(p.item)!].sort((a, b) => b - a);
      expect(Math.max(p.length!, p.width!), p.id).toBeLessThanOrEqual(long! + 1e-9);
      expect(Math.min(p.length!, p.width!), p.id).toBeLessThanOrEqual(short! + 1e-9);
    }
    for (const t of design.tables) {
      const table = envelope(
        {
          shape: { shape: 'plate', corners: t.outline.map((c) => [...c, 0] as const), thickness: 0 },
        } as unknown as Part,
        e.turn,
      )!;
      const body = { low: [table.low[0]!, table.low[1]!, 0], high: [table.high[0]!, table.high[1]!, t.height] };
      for (const [id, m] of members) expect(cut(m, body), `${id} cuts the table`).toBe(false);
    }
  }
}

function expectCoveredRuns(design: Design): void {
  for (const r of design.runs) {
    expect(r.stretches.reduce((sum, s) => sum + s.to - s.from, 0)).toBeCloseTo(r.pathLength, 6);
    for (const s of r.stretches) expect(s.flatWidth).toBeGreaterThanOrEqual(s.to - s.from - 1e-6);
    for (const s of r.supports) expect(s.at >= -1e-9 && s.at <= r.pathLength + 1e-9).toBe(true);
    expect(r.supports.length).toBeGreaterThanOrEqual(2);
  }
}

function expectUsable({ design, findings, catalogue }: DesignResult): void {
  expectFinite(design, 'design');
  expectFinite(findings, 'findings');
  for (const p of design.parts)
    for (const s of [p.length, p.width]) if (s !== undefined) expect(s, p.id).toBeGreaterThan(0);
  for (const f of findings) if (f.verdict !== 'not assessed') expect(f.calculation, f.id).not.toBeNull();
  const sheets = catalogue.items.flatMap((i) => (i.kind === 'sheet' ? [[i.id, i.sheetSize] as const] : []));
  expectSoundFrame(design, new Map(sheets));
  expectCoveredRuns(design);
}

const expectTold = (problems: readonly Problem[]): void => {
  for (const p of problems) {
    expect(p.path.length, p.code).toBeGreaterThan(0);
    expect(p.hint.length, p.code).toBeGreaterThan(10);
  }
};

test('any brief gives a sound design or problems with place and hint, never a throw', () => {
  let designs = 0;
  fc.assert(
    fc.property(briefs, (brief) => {
      const result = designFrom({ briefText: JSON.stringify(brief), catalogueFiles, ruleTexts });
      if (!result.ok) return expectTold(result.problems);
      designs++;
      expectUsable(result.value);
    }),
    { numRuns: 150, seed: 20261125 },
  );
  // Wishes that cannot be are many here on purpose, but not all.
  expect(designs).toBeGreaterThan(40);
});
