import fc from 'fast-check';
import { lusolve } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { valueOf } from '../floor/problem.js';
import { supportLoadBound } from './support-bound.js';
import { type BeamQuestion, hangingSupportLoads, supportLoads } from './support-loads.js';
import { worstSupportLoad } from './worst-support-load.js';

const equalSpans = (n: number): BeamQuestion => ({
  length: n,
  supports: Array.from({ length: n + 1 }, (_, i) => i),
  uniform: [{ from: 0, to: n, load: 1 }],
  points: [],
});

// Textbook coefficients of equal spans under full uniform load (handbook of layout, 3.5): reactions in w l.
test.each([
  [2, [3 / 8, 10 / 8, 3 / 8]],
  [3, [0.4, 1.1, 1.1, 0.4]],
  [4, [11 / 28, 8 / 7, 13 / 14, 8 / 7, 11 / 28]],
  [5, [15 / 38, 43 / 38, 37 / 38, 37 / 38, 43 / 38, 15 / 38]],
])('%d equal spans', (n, expected) => {
  const { reactions } = valueOf(supportLoads(equalSpans(n)));
  for (const [i, r] of reactions.entries()) expect(r).toBeCloseTo(expected[i]!, 12);
});

/** Reactions by direct stiffness (cubic beam elements, E I = 1), solved by a general-purpose library: another method. */
function byStiffness({ length, supports, uniform, points }: BeamQuestion): number[] {
  const raw = [0, length, ...supports, ...uniform.flatMap((u) => [u.from, u.to]), ...points.map((p) => p.at)];
  const nodes = raw.sort((a, b) => a - b).filter((x, i, all) => i === 0 || x - all[i - 1]! > 1e-9);
  const node = (x: number) => nodes.findIndex((n) => Math.abs(n - x) < 1e-9);
  const size = 2 * nodes.length;
  const k = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const f = new Array<number>(size).fill(0);
  for (let e = 0; e < nodes.length - 1; e++) {
    const l = nodes[e + 1]! - nodes[e]!;
    const local = [
      [12, 6 * l, -12, 6 * l],
      [6 * l, 4 * l * l, -6 * l, 2 * l * l],
      [-12, -6 * l, 12, -6 * l],
      [6 * l, 2 * l * l, -6 * l, 4 * l * l],
    ];
    const w = uniform
      .filter((u) => u.from <= nodes[e]! + 1e-9 && u.to >= nodes[e + 1]! - 1e-9)
      .reduce((s, u) => s + u.load, 0);
    const ends = [(w * l) / 2, (w * l * l) / 12, (w * l) / 2, (-w * l * l) / 12];
    for (let i = 0; i < 4; i++) {
      f[2 * e + i]! += ends[i]!;
      for (let j = 0; j < 4; j++) k[2 * e + i]![2 * e + j]! += local[i]![j]! / l ** 3;
    }
  }
  for (const p of points) f[2 * node(p.at)]! += p.load;
  const held = supports.map((s) => 2 * node(s));
  const free = k.map((_, i) => i).filter((i) => !held.includes(i));
  const solved = lusolve(
    free.map((i) => free.map((j) => k[i]![j]!)),
    free.map((i) => f[i]!),
  ) as number[][];
  const u = new Array<number>(size).fill(0);
  free.forEach((i, n) => {
    u[i] = solved[n]![0]!;
  });
  return held.map((i) => f[i]! - k[i]!.reduce((s, v, j) => s + v * u[j]!, 0));
}

const beams = fc
  .record({
    supports: fc.uniqueArray(fc.integer({ min: 0, max: 40 }), { minLength: 2, maxLength: 7 }),
    from: fc.integer({ min: 0, max: 39 }),
    width: fc.integer({ min: 1, max: 20 }),
    at: fc.integer({ min: 0, max: 40 }),
  })
  .map(
    ({ supports, from, width, at }): BeamQuestion => ({
      length: 4,
      supports: supports.map((s) => s / 10),
      uniform: [
        { from: 0, to: 4, load: 30 },
        { from: from / 10, to: Math.min(4, (from + width) / 10), load: 180 },
      ],
      points: [{ at: at / 10, load: 100 }],
    }),
  );

test('reactions agree with the direct stiffness method, overhangs and part loads included', () => {
  fc.assert(
    fc.property(beams, (beam) => {
      const expected = byStiffness(beam);
      const largest = Math.max(...expected.map(Math.abs));
      const { reactions } = valueOf(supportLoads(beam));
      for (const [i, r] of reactions.entries()) expect(Math.abs(r - expected[i]!)).toBeLessThan(1e-7 * largest);
    }),
    { numRuns: 60, seed: 8 },
  );
});

// Statics alone: the part left of the hinge is a simple beam of 0.75 m, 37.5 N at each end; moments about the last support then
// give 125 N and 37.5 N.
test('a hinge makes the beam a chain of simple ones', () => {
  const beam = { ...equalSpans(2), uniform: [{ from: 0, to: 2, load: 100 }], hinges: [0.75] };
  const { reactions } = valueOf(supportLoads(beam));
  expect(reactions[0]).toBeCloseTo(37.5, 9);
  expect(reactions[1]).toBeCloseTo(125, 9);
  expect(reactions[2]).toBeCloseTo(37.5, 9);
});

// Simple beam on the outer supports, 2.4 m apart: 12 N/m over 3 m and the load at 3 m, moments about the first support.
test('a ceiling support that would have to push carries nothing', () => {
  const beam = { length: 3, supports: [0, 1.2, 2.4], uniform: [{ from: 0, to: 3, load: 12 }] };
  const points = [{ at: 3, load: 40 }];
  const last = (12 * 3 * 1.5 + 40 * 3) / 2.4;
  expect(valueOf(supportLoads({ ...beam, points })).reactions[1]).toBeLessThan(0);
  const { reactions } = valueOf(hangingSupportLoads({ ...beam, points }));
  expect(reactions).toEqual([expect.closeTo(12 * 3 + 40 - last, 9), 0, expect.closeTo(last, 9)]);
  // With 60 N at the tip the moment about the last support, 60 · 0.6 + 12 · 0.6 · 0.3, exceeds 12 · 2.4 · 1.2: it tips.
  const tipped = hangingSupportLoads({ ...beam, points: [{ at: 3, load: 60 }] });
  expect(tipped.ok ? [] : tipped.problems.map((p) => p.code)).toEqual(['curtain/lifts-off']);
});

describe('worst load', () => {
  const base = { closed: false, joints: [], trackLoad: 10, stretches: [], pull: 0, pullOnly: false } as const;
  // Two equal spans: the middle support carries 1.25 w l; a pull adds itself at a support.
  test('of two equal spans is the middle one', () => {
    const found = valueOf(worstSupportLoad({ ...base, length: 2, supports: [0, 1, 2] }));
    expect(found.support).toBe(1);
    expect(found.reaction).toBeCloseTo(1.25 * 10, 9);
    const pulled = valueOf(worstSupportLoad({ ...base, length: 2, supports: [0, 1, 2], pull: 200 }));
    expect(pulled.reaction).toBeCloseTo(12.5 + 200, 9);
    expect(pulled.pullAt).toBeCloseTo(1, 9);
    expect(valueOf(supportLoadBound(10, 1, 200))).toBeCloseTo(pulled.reaction, 9);
  });

  // Symmetry: every support of a closed track with equal spans carries its own span.
  test('of a closed track with equal spans is one span of weight', () => {
    const supports = Array.from({ length: 12 }, (_, i) => 0.25 + i * 0.5);
    const found = valueOf(worstSupportLoad({ ...base, closed: true, length: 6, supports }));
    expect(Math.abs(found.reaction / 5 - 1)).toBeLessThan(2e-3);
  });

  test('grows when the curtain is pushed together', () => {
    const ask = { ...base, length: 4, supports: [0.2, 1.1, 2, 2.9, 3.8], joints: [2.1] };
    const bare = valueOf(worstSupportLoad({ ...ask, stretches: [{ from: 0, to: 4, weight: 120, stack: 4 }] }));
    const parked = valueOf(worstSupportLoad({ ...ask, stretches: [{ from: 0, to: 4, weight: 120, stack: 0.6 }] }));
    expect(parked.reaction).toBeGreaterThan(bare.reaction);
    expect(parked.state).not.toBe('drawn');
    const { simple, moment, before, after, reaction } = parked;
    const side = (n: typeof before) => (n ? (n.moment - moment) / n.span : 0);
    expect(simple + side(before) + side(after)).toBeCloseTo(reaction, 9);
  });
});

describe('refusals', () => {
  const codes = (beam: BeamQuestion) => {
    const found = supportLoads(beam);
    return found.ok ? [] : found.problems.map((p) => p.code);
  };
  test.each<[string, BeamQuestion]>([
    ['curtain/length', { ...equalSpans(2), length: 0 }],
    ['curtain/outside-track', { ...equalSpans(2), supports: [0, 3] }],
    ['curtain/interval', { ...equalSpans(2), uniform: [{ from: 1, to: 0.5, load: 1 }] }],
    ['curtain/load', { ...equalSpans(2), points: [{ at: 1, load: Number.NaN }] }],
    ['curtain/too-few-supports', { ...equalSpans(2), supports: [1] }],
    ['curtain/too-few-supports', { ...equalSpans(2), supports: [1, 1] }],
    ['curtain/mechanism', { ...equalSpans(2), supports: [0.5, 1, 2], hinges: [0.2] }],
  ])('%s', (code, beam) => {
    expect(codes(beam)).toContain(code);
  });
  test('of the worst load and the bound', () => {
    const ask = {
      length: 2,
      closed: false,
      supports: [1],
      joints: [],
      trackLoad: 1,
      stretches: [],
      pull: 0,
      pullOnly: true,
    };
    const worst = worstSupportLoad(ask);
    expect(worst.ok ? [] : worst.problems.map((p) => p.code)).toEqual(['curtain/too-few-supports']);
    const bound = supportLoadBound(-1, 0, -1);
    expect(bound.ok ? [] : bound.problems.map((p) => p.code)).toEqual([
      'curtain/spacing',
      'curtain/negative',
      'curtain/negative',
    ]);
  });
});
