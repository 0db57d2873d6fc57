import { describe, expect, test } from 'vitest';
import type { BriefRun } from '../brief/schema.js';
import type { Cloth, Track } from '../catalogue/schema.js';
import type { DesignEnclosure, DesignTable } from '../design/types.js';
import { distance2, type Vec2 } from '../floor/geometry/vec.js';
import { type Outcome, valueOf } from '../floor/problem.js';
import { curtainCatalogue, curtainRules } from './curtain-fixture.js';
import { lineBetween, pointAt, type TrackPath, trackPath } from './curtain-path.js';
import { composeRun, type RunContext } from './curtain-run.js';
import { composeStraightCurtain } from './curtain-straight.js';

const table = { id: 'table-1', name: 'Table 1', height: 0.9 } as DesignTable;
const context: RunContext = {
  catalogue: curtainCatalogue,
  rules: curtainRules,
  roomHeight: 3,
  structureHeight: 3,
  floorFall: 0.005,
  tables: [table],
  enclosures: [{ id: 'enc-1', clearHeight: 2.3 } as DesignEnclosure],
};
const bay: BriefRun = {
  id: 'bay-1',
  kind: 'bay',
  path: [
    [1, 1],
    [5, 1],
    [5, 4],
    [1, 4],
  ],
  closed: true,
  hung: 'ceiling',
  trackHeight: 2.6,
  openings: [{ at: 2, width: 1 }],
};
const partition: BriefRun = {
  id: 'part-1',
  kind: 'partition',
  path: [
    [0, 2],
    [6.35, 2],
  ],
  hung: 'floor post',
  trackHeight: 2.2,
};

const made = (run: BriefRun) => valueOf(composeRun(run, 0, context));
const problems = (outcome: Outcome<unknown>) =>
  outcome.ok ? [] : outcome.problems.map((p) => `${p.code} ${p.path.join('.')}`);
const refused = (run: BriefRun, changed: Partial<RunContext> = {}) =>
  problems(composeRun(run, 2, { ...context, ...changed }));

describe('a closed bay with bends', () => {
  const { run, parts, barriers, assumptions } = made(bay);

  // Path of four quarter bends: perimeter less 4 (2 - pi/2) R.
  test('has the length of its straights and bends', () => {
    expect(run.pathLength).toBeCloseTo(14 - 4 * (2 - Math.PI / 2) * 0.3, 9);
    expect(run.segments.filter((s) => s.kind === 'bend')).toHaveLength(4);
  });

  test('has pieces that together are exactly each straight', () => {
    for (const s of run.segments.filter((s) => s.kind === 'straight')) {
      const own = parts.filter(
        (p) =>
          p.role === 'track' &&
          p.shape.shape === 'bar' &&
          s.start >= 0 &&
          onSegment(p.shape.from, s.from, s.to) &&
          onSegment(p.shape.to, s.from, s.to),
      );
      expect(own.reduce((sum, p) => sum + p.length!, 0)).toBeCloseTo(s.length, 9);
    }
  });

  test('carries its track by the rules: spacing, joints, both legs of every bend', () => {
    const at = run.supports.map((s) => s.at);
    const gaps = at.map((p, i) => (at[i + 1] ?? at[0]! + run.pathLength) - p);
    expect(Math.max(...gaps)).toBeLessThanOrEqual(1);
    for (const joint of run.joints) {
      const near = at.map((p) => Math.min(Math.abs(p - joint), run.pathLength - Math.abs(p - joint)));
      expect(Math.min(...near)).toBeLessThanOrEqual(0.15);
    }
    for (const s of run.segments.filter((s) => s.kind === 'bend')) {
      const end = (s.start + s.length) % run.pathLength;
      expect(at.some((p) => p <= s.start && p >= s.start - 0.15)).toBe(true);
      expect(at.some((p) => p >= end - 1e-6 && p <= end + 0.15)).toBe(true);
    }
  });

  test('chooses the rod that reaches, with its fasteners', () => {
    expect(run.supportItem).toBe('rod-500');
    const rods = parts.filter((p) => p.role === 'support');
    expect(rods.every((p) => Math.abs(p.length! - (3 - 2.6 - 0.02)) < 1e-9)).toBe(true);
    const screws = parts.filter((p) => p.role === 'fastener').reduce((sum, p) => sum + p.count, 0);
    expect(screws).toBe(2 * rods.length);
  });

  test('joins every two neighbouring pieces with one connector and has no end stops', () => {
    const pieces = parts.filter((p) => p.role === 'track' || p.role === 'track curve').length;
    expect(parts.filter((p) => p.role === 'connector')).toHaveLength(pieces);
    expect(parts.some((p) => p.role === 'end stop')).toBe(false);
  });

  test('hangs to the hem gap and orders the next standard drop', () => {
    expect(run.drop).toBeCloseTo(2.6 - 0.03 - 0.015, 12);
    const panel = parts.find((p) => p.role === 'curtain panel')!;
    expect(panel.note).toContain('2800');
    expect(panel.mass).toBeCloseTo(panel.width! * run.drop * 0.8, 9);
    const chain = parts.find((p) => p.role === 'hem weight')!;
    expect(chain.mass).toBeCloseTo(chain.length! * 0.2, 9);
  });

  test('covers the whole way round with a lap, within the fullness rules', () => {
    const [stretch] = run.stretches;
    expect(run.stretches).toHaveLength(1);
    expect(stretch!.to - stretch!.from).toBeCloseTo(run.pathLength, 9);
    const width = stretch!.panels.reduce((sum, p) => sum + p.width, 0);
    expect(width / (run.pathLength + 0.3)).toBeGreaterThanOrEqual(1.07 - 1e-9);
    expect(width / (run.pathLength + 0.3)).toBeLessThanOrEqual(1.1 + 1e-9);
    expect(stretch!.fits).toBe(true);
  });

  test('marks equal pieces alike and different ones apart', () => {
    const marks = new Map<string, Set<string>>();
    for (const p of parts.filter((p) => p.mark)) {
      const size = `${p.item} ${p.length?.toFixed(4)} ${p.width?.toFixed(4)}`;
      marks.set(p.mark!, new Set([...(marks.get(p.mark!) ?? []), size]));
    }
    expect([...marks.values()].every((sizes) => sizes.size === 1)).toBe(true);
    expect(new Set([...marks.values()].map((s) => [...s][0])).size).toBe(marks.size);
    expect([...marks.keys()].every((m) => /^BAY-1-[TCKSP]\d+$/.test(m))).toBe(true);
    expect(new Set(parts.map((p) => p.id)).size).toBe(parts.length);
  });

  test('has one barrier for each straight and bend, closed all round', () => {
    expect(barriers).toHaveLength(8);
    for (const [i, b] of barriers.entries())
      expect(distance2(b.to, barriers[(i + 1) % barriers.length]!.from)).toBeLessThan(1e-9);
    expect(barriers.every((b) => b.bottom === 0.015 && b.top === run.curtainTop && b.item === 'barrier')).toBe(true);
  });

  test('says what it assumed, and is the same every time', () => {
    expect(assumptions.map((a) => a.path.at(-1))).toEqual(['track', 'cloth', 'corner', 'hemGap']);
    expect(made(bay)).toEqual({ run, parts, barriers, assumptions, questions: [] });
  });

  test('mirrored, it has the same parts', () => {
    const other = made({ ...bay, path: bay.path.map(([x, y]): [number, number] => [x, -y]) });
    const list = (ps: typeof parts) => ps.map((p) => `${p.item} ${p.length?.toFixed(6)}`).sort();
    expect(list(other.parts)).toEqual(list(parts));
  });
});

const onSegment = (p: readonly number[], a: Vec2, b: Vec2): boolean => {
  const q: Vec2 = [p[0]!, p[1]!];
  return Math.abs(distance2(a, q) + distance2(q, b) - distance2(a, b)) < 1e-9;
};

describe('other runs', () => {
  test('with corner connectors panels meet at every corner that runners cannot pass', () => {
    const { run, parts } = made({ ...bay, corner: 'connector' });
    expect(run.pathLength).toBeCloseTo(14, 9);
    expect(run.stretches).toHaveLength(5);
    expect(parts.filter((p) => p.item === 'corner')).toHaveLength(4);
    expect(run.stretches.reduce((sum, s) => sum + s.to - s.from, 0)).toBeCloseTo(14, 9);
  });

  test('an open partition on posts has stops at both ends and posts of its height', () => {
    const { run, parts } = made(partition);
    expect(parts.filter((p) => p.role === 'end stop')).toHaveLength(2);
    expect(parts.filter((p) => p.role === 'support').every((p) => p.length === 2.2 && p.item === 'post')).toBe(true);
    expect(run.supports[0]!.at).toBeLessThanOrEqual(0.2);
    expect(6.35 - run.supports.at(-1)!.at).toBeLessThanOrEqual(0.2 + 1e-9);
  });

  test('a track shorter than both end distances together still hangs from two supports', () => {
    const short: BriefRun = { ...bay, closed: false, path: [[0, 0], [0.35, 0]], openings: [], hung: 'ceiling' }; // biome-ignore format: short
    const places = made(short).run.supports.map((s) => s.at);
    expect(places.length).toBeGreaterThanOrEqual(2);
    expect(places[0]!).toBeLessThanOrEqual(0.4 * 0.35 + 1e-9);
    expect(places.at(-1)!).toBeGreaterThanOrEqual(0.6 * 0.35 - 1e-9);
  });

  test('a shelf curtain stands on its table and ends above its top', () => {
    const { run, parts, barriers } = made({
      id: 'shelf-1',
      kind: 'shelf',
      path: [
        [0, 0],
        [2, 0],
      ],
      hung: 'shelf',
      on: 'table-1',
      trackHeight: 1.6,
    });
    expect(run.cloth).toBe('dark');
    expect(run.drop).toBeCloseTo(1.6 - 0.03 - 0.9 - 0.015, 9);
    expect(barriers[0]!.bottom).toBeCloseTo(0.915, 9);
    expect(parts.find((p) => p.role === 'support')!.length).toBeCloseTo(0.7, 9);
  });

  test('hung from a frame it takes the clamp; from a wall the bracket, and says that the distance is assumed', () => {
    expect(made({ ...partition, hung: 'frame', on: 'enc-1' }).run.supportItem).toBe('clamp');
    const wall = made({ ...partition, hung: 'wall' });
    expect(wall.run.supportItem).toBe('bracket');
    expect(wall.assumptions.some((a) => a.path.at(-1) === 'hung')).toBe(true);
  });

  test('a stretch that no standard widths fit says so and still closes', () => {
    const { run, assumptions } = made({
      ...partition,
      cloth: 'dark',
      path: [
        [0, 0],
        [1.5, 0],
      ],
    });
    expect(run.stretches[0]!.fits).toBe(false);
    expect(run.stretches[0]!.flatWidth).toBeGreaterThanOrEqual(1.5);
    expect(assumptions.some((a) => a.reason.startsWith('No standard panels'))).toBe(true);
  });

  test('a bay without an opening asks where people enter', () => {
    const { questions } = made({ ...bay, openings: [] });
    expect(questions.map((q) => q.path.join('.'))).toEqual(['layout.runs.0.openings']);
  });

  test('a forbidden stretch stays free of supports', () => {
    const { run } = made({ ...partition, noSupport: [{ from: 1.4, to: 2.3, because: 'duct' }] });
    expect(run.supports.filter((s) => s.at > 1.4 + 1e-6 && s.at < 2.3 - 1e-6)).toEqual([]);
  });

  test('a straight corner point changes nothing', () => {
    const bent = made({
      ...partition,
      path: [
        [0, 2],
        [3, 2],
        [6.35, 2],
      ],
    });
    expect(bent.parts).toEqual(made(partition).parts);
  });
});

describe('problems carry their place in the brief', () => {
  test.each<[string, BriefRun]>([
    ['compose/item-missing layout.runs.2.cloth', { ...bay, cloth: 'barier' }],
    ['compose/item-missing layout.runs.2.track', { ...bay, track: 'barrier' }],
    [
      'compose/item-missing layout.runs.2.corner',
      {
        ...partition,
        path: [
          [0, 0],
          [3, 0],
          [5, 2],
        ],
      },
    ],
    [
      'compose/no-bend-room layout.runs.2.path.0',
      {
        ...partition,
        path: [
          [0, 0],
          [0.2, 0],
          [0.2, 3],
        ],
      },
    ],
    [
      'compose/path layout.runs.2.path.1',
      {
        ...partition,
        path: [
          [0, 0],
          [3, 0],
          [1, 0],
        ],
      },
    ],
    [
      'compose/path layout.runs.2.path',
      {
        ...partition,
        path: [
          [0, 0],
          [0, 0],
        ],
      },
    ],
    [
      'compose/path layout.runs.2.path',
      {
        ...bay,
        path: [
          [0, 0],
          [4, 0],
        ],
      },
    ],
    ['compose/no-support-reaches layout.runs.2.trackHeight', { ...bay, trackHeight: 1.5 }],
    ['compose/track-height layout.runs.2.trackHeight', { ...bay, trackHeight: 3 }],
    ['compose/carrier-missing layout.runs.2.on', { ...partition, hung: 'frame', on: 'enc-9' }],
    ['compose/carrier-missing layout.runs.2.on', { ...partition, hung: 'shelf' }],
    ['compose/opening-outside layout.runs.2.openings.0.at', { ...partition, openings: [{ at: 7, width: 1 }] }],
    [
      'compose/curtain-too-long layout.runs.2.trackHeight',
      { ...partition, cloth: 'dark', trackHeight: 2.55, hemGap: 0 },
    ],
    [
      'curtain/no-split layout.runs.2.path',
      {
        ...partition,
        path: [
          [0, 0],
          [0.2, 0],
        ],
      },
    ],
    [
      'curtain/no-support-place layout.runs.2.noSupport',
      { ...partition, noSupport: [{ from: 1, to: 2.5, because: 'duct' }] },
    ],
    ['curtain/no-drop layout.runs.2.trackHeight', { ...bay, hung: 'wall', trackHeight: 0.04 }],
  ])('%s', (expected, run) => {
    expect(refused(run)).toContain(expected);
  });

  test('and a missing item names the most alike', () => {
    const found = composeRun({ ...bay, cloth: 'barier' }, 0, context);
    expect(found.ok ? '' : found.problems[0]!.hint).toBe('Did you mean barrier?');
  });

  test('a system without runners or connectors cannot be composed', () => {
    const without = (kind: string) => ({
      catalogue: { ...curtainCatalogue, items: curtainCatalogue.items.filter((i) => i.kind !== kind) },
    });
    expect(refused(partition, without('runner'))).toEqual(['compose/item-missing layout.runs.2.track']);
    expect(refused(partition, without('track connector'))).toEqual(['compose/item-missing layout.runs.2']);
    expect(refused(partition, without('track'))).toEqual(['compose/item-missing layout.runs.2.track']);
    expect(refused(partition, without('track support'))).toEqual(['compose/item-missing layout.runs.2.trackHeight']);
  });
});

describe('track path', () => {
  const path = trackPath(
    [
      [0, 0],
      [2, 0],
      [2, 2],
    ],
    false,
    0.5,
  ) as TrackPath;
  test('points lie on straights and on the arc', () => {
    expect(pointAt(path, 1)).toEqual([1, 0]);
    const middle = pointAt(path, 1.5 + (0.5 * Math.PI) / 4);
    expect(distance2(middle, [1.5, 0.5])).toBeCloseTo(0.5, 12);
    expect(distance2(pointAt(path, path.length), [2, 2])).toBeLessThan(1e-12);
  });
  // Chords of a quarter bend in six parts: length 6 · 2 R sin(7.5 degrees).
  test('the line follows the bend in chords', () => {
    const line = lineBetween(path, 0, path.length);
    const length = line.slice(1).reduce((sum, p, i) => sum + distance2(p, line[i]!), 0);
    expect(length).toBeCloseTo(3 + 6 * Math.sin(Math.PI / 24), 9);
  });
});

describe('a straight curtain on a frame', () => {
  const ask = {
    id: 'enc-1-north',
    of: 'enc-1',
    markPrefix: 'ENC-1-N',
    rulePrefix: 'compose.enclosure.curtain',
    from: [0, 0],
    to: [3.1, 0],
    trackHeight: 2.2,
    hemGap: 0.02,
    cloth: curtainCatalogue.byId.get('barrier') as Cloth,
    track: curtainCatalogue.byId.get('rail') as Track,
    hung: 'frame',
    catalogue: curtainCatalogue,
    rules: curtainRules,
    path: ['layout', 'enclosures', 0, 'sides', 'north'],
  } as const;
  test('gives the parts of a run, named after the side', () => {
    const curtain = valueOf(composeStraightCurtain(ask));
    expect(curtain.parts.every((p) => p.of === 'enc-1' && p.id.startsWith('enc-1-north.'))).toBe(true);
    expect(curtain.parts.every((p) => p.placed.rule.startsWith('compose.enclosure.curtain.'))).toBe(true);
    expect(curtain.mass).toBeCloseTo(
      curtain.parts.reduce((sum, p) => sum + p.mass, 0),
      9,
    );
    expect(curtain.drop).toBeCloseTo(2.2 - 0.03 - 0.02, 12);
  });
  test('is refused without length', () => {
    expect(problems(composeStraightCurtain({ ...ask, to: ask.from }))).toEqual([
      'compose/path layout.enclosures.0.sides.north',
    ]);
  });
});
