import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Outcome, valueOf } from '../floor/problem.js';
import { type BeamEnds, type SingleSpan, singleSpan, singleSpanAt } from './index.js';

const base: SingleSpan = {
  ends: 'simple',
  span: 2.4,
  elasticity: 70e9,
  secondMoment: 1.4e-7,
  uniform: 0,
  points: [],
};
const [l, ei] = [base.span, base.elasticity * base.secondMoment];
const [q, p] = [80, 150];
const codes = (outcome: Outcome<unknown>): string[] => (outcome.ok ? [] : outcome.problems.map((x) => x.code));
const near = (got: number, expected: number, relative = 1e-9) =>
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(relative * Math.abs(expected) + 1e-15);

// Roark's Formulas for Stress and Strain, beam tables (Table 8.1, from memory); handbook of structures, section 17.
describe('beam tables', () => {
  test.each<[BeamEnds, number, number, number]>([
    ['simple', (5 * q * l ** 4) / (384 * ei), (q * l ** 2) / 8, l / 2],
    ['fixed', (q * l ** 4) / (384 * ei), -(q * l ** 2) / 12, l / 2],
    ['cantilever', (q * l ** 4) / (8 * ei), -(q * l ** 2) / 2, l],
  ])('uniform load, %s', (ends, deflection, moment, at) => {
    const found = valueOf(singleSpan({ ...base, ends, uniform: q }));
    near(found.deflection.value, deflection);
    near(found.deflection.at, at);
    near(found.moment.value, moment);
  });

  test('uniform load, fixed and simple: q L^2/8, 5/8 q L, q L^4/184.6 E I at 0.4215 L from the simple end', () => {
    const found = valueOf(singleSpan({ ...base, ends: 'fixed and simple', uniform: q }));
    near(found.moment.value, -(q * l ** 2) / 8);
    near(found.startReaction, (5 * q * l) / 8);
    near(found.endReaction, (3 * q * l) / 8);
    // Printed to four digits.
    near(found.deflection.value, (q * l ** 4) / (184.6 * ei), 0.05 / 184.6);
    near(found.deflection.at, l * (1 - 0.4215), 1e-3);
  });

  test.each<[BeamEnds, number, number, number]>([
    ['simple', l / 2, (p * l ** 3) / (48 * ei), (p * l) / 4],
    ['fixed', l / 2, (p * l ** 3) / (192 * ei), (p * l) / 8],
    ['cantilever', l, (p * l ** 3) / (3 * ei), p * l],
  ])('point load, %s', (ends, at, deflection, moment) => {
    const found = valueOf(singleSpan({ ...base, ends, points: [{ at, load: p }] }));
    near(found.deflection.value, deflection);
    near(Math.abs(found.moment.value), moment);
  });

  test('point load in the middle, fixed and simple: 3 P L/16, 7 P L^3/768 E I under the load', () => {
    const span: SingleSpan = { ...base, ends: 'fixed and simple', points: [{ at: l / 2, load: p }] };
    near(valueOf(singleSpan(span)).startMoment, (-3 * p * l) / 16);
    near(valueOf(singleSpan(span)).endReaction, (5 * p) / 16);
    near(valueOf(singleSpanAt(span, l / 2)).deflection, (7 * p * l ** 3) / (768 * ei));
  });

  test('point load anywhere, fixed: P a b^2/L^2, P a^2 b/L^2, end force P b^2 (3a + b)/L^3', () => {
    const [a, b] = [0.7, l - 0.7];
    const found = valueOf(singleSpan({ ...base, ends: 'fixed', points: [{ at: a, load: p }] }));
    near(found.startMoment, (-p * a * b ** 2) / l ** 2);
    near(found.endMoment, (-p * a ** 2 * b) / l ** 2);
    near(found.startReaction, (p * b ** 2 * (3 * a + b)) / l ** 3);
  });

  test('point load off the middle, simple: P b (L^2 - b^2)^1.5/(9 sqrt 3 L E I) at sqrt((L^2 - b^2)/3)', () => {
    const [a, b] = [1.6, l - 1.6];
    const found = valueOf(singleSpan({ ...base, points: [{ at: a, load: p }] }));
    near(found.deflection.value, (p * b * (l * l - b * b) ** 1.5) / (9 * Math.sqrt(3) * l * ei));
    near(found.deflection.at, Math.sqrt((l * l - b * b) / 3));
    near(found.moment.value, (p * a * b) / l);
  });

  test('two equal loads at the thirds, simple: 23 P L^3/648 E I', () => {
    const points = [
      { at: l / 3, load: p },
      { at: (2 * l) / 3, load: p },
    ];
    near(valueOf(singleSpan({ ...base, points })).deflection.value, (23 * p * l ** 3) / (648 * ei));
  });
});

const ends = fc.constantFrom<BeamEnds>('simple', 'fixed and simple', 'fixed', 'cantilever');
const points = fc.array(
  fc.record({
    at: fc.double({ min: 0, max: l, noNaN: true }),
    load: fc.double({ min: -300, max: 300, noNaN: true }),
  }),
  { maxLength: 5 },
);
const uniform = fc.double({ min: 0, max: 200, noNaN: true });

describe('properties', () => {
  test('the deflection is the integral of M m / E I of a unit load on a simple span', () => {
    fc.assert(
      fc.property(points, uniform, fc.double({ min: 0.1, max: l - 0.1, noNaN: true }), (loads, w, x) => {
        const span = { ...base, points: loads, uniform: w };
        // Composite midpoint rule over 4000 strips; the unit-load moment is a triangle with its top at x.
        const n = 4000;
        const integral = Array.from({ length: n }, (_, i) => ((i + 0.5) * l) / n).reduce((sum, s) => {
          const unit = s < x ? (s * (l - x)) / l : (x * (l - s)) / l;
          return sum + valueOf(singleSpanAt(span, s)).moment * unit;
        }, 0);
        const scale = (300 * l ** 3) / (48 * ei);
        expect(Math.abs(valueOf(singleSpanAt(span, x)).deflection - (integral * l) / n / ei)).toBeLessThan(
          1e-5 * scale,
        );
      }),
      { seed: 31, numRuns: 20 },
    );
  });

  test('no place has more than the largest deflection and moment', () => {
    fc.assert(
      fc.property(ends, points, uniform, fc.double({ min: 0, max: 1, noNaN: true }), (held, loads, w, share) => {
        const span = { ...base, ends: held, points: loads, uniform: w };
        const found = valueOf(singleSpan(span));
        const here = valueOf(singleSpanAt(span, share * l));
        expect(Math.abs(here.deflection)).toBeLessThanOrEqual(Math.abs(found.deflection.value) * (1 + 1e-9) + 1e-12);
        expect(Math.abs(here.moment)).toBeLessThanOrEqual(Math.abs(found.moment.value) * (1 + 1e-9) + 1e-9);
      }),
      { seed: 32, numRuns: 300 },
    );
  });

  test('held ends do not move, and reactions carry the load', () => {
    fc.assert(
      fc.property(ends, points, uniform, (held, loads, w) => {
        const span = { ...base, ends: held, points: loads, uniform: w };
        const found = valueOf(singleSpan(span));
        const total = loads.reduce((sum, x) => sum + x.load, w * l);
        expect(found.startReaction + found.endReaction).toBeCloseTo(total, 6);
        const [start, end] = [valueOf(singleSpanAt(span, 0)), valueOf(singleSpanAt(span, l))];
        expect(start.deflection).toBe(0);
        if (held !== 'simple') expect(Math.abs(start.slope)).toBe(0);
        if (held !== 'cantilever') expect(end.deflection).toBeCloseTo(0, 9);
        if (held === 'fixed') expect(end.slope).toBeCloseTo(0, 9);
        if (held !== 'fixed') expect(end.moment).toBeCloseTo(0, 6);
      }),
      { seed: 33 },
    );
  });

  test('more load never bends less, and a stiffer bar never more', () => {
    fc.assert(
      fc.property(ends, uniform, fc.double({ min: 1, max: 3, noNaN: true }), (held, w, k) => {
        const at = (u: number, i: number) =>
          valueOf(singleSpan({ ...base, ends: held, uniform: u, secondMoment: i })).deflection.value;
        expect(at(w * k, 1e-7)).toBeGreaterThanOrEqual(at(w, 1e-7));
        expect(at(w, k * 1e-7)).toBeLessThanOrEqual(at(w, 1e-7));
      }),
      { seed: 34 },
    );
  });
});

describe('spans that cannot be', () => {
  test.each<[string, Partial<SingleSpan>]>([
    ['frame/not-positive', { span: 0 }],
    ['frame/not-positive', { elasticity: -1 }],
    ['frame/not-positive', { secondMoment: Number.NaN }],
    ['frame/not-a-number', { uniform: Number.NaN }],
    ['frame/not-a-number', { points: [{ at: 1, load: Number.POSITIVE_INFINITY }] }],
    ['frame/load-off-span', { points: [{ at: 2.5, load: 1 }] }],
    ['frame/load-off-span', { points: [{ at: -0.1, load: 1 }] }],
  ])('%s', (code, change) => {
    expect(codes(singleSpan({ ...base, ...change }))).toEqual([code]);
  });

  test('a place outside of the span is refused', () => {
    expect(codes(singleSpanAt(base, 3))).toEqual(['frame/place-off-span']);
  });
});
