import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Vec2 } from '../floor/geometry/vec.js';
import { type Outcome, valueOf } from '../floor/problem.js';
import { footLoads, footLoadsWithoutOne, standardGravity, tipOver, tippingEdges } from './index.js';

const codes = (outcome: Outcome<unknown>): string[] => (outcome.ok ? [] : outcome.problems.map((p) => p.code));
const body = { mass: 100, lever: 0.5, height: 1, push: 200, pushHeight: 2, tilt: Math.PI / 18 };

describe('tipping, by the statics of a rigid body', () => {
  test('it tips when force times height exceeds weight times lever', () => {
    const t = valueOf(tipOver(body));
    expect(t.forceToTip).toBeCloseTo((100 * 9.80665 * 0.5) / 2, 9);
    expect(t.pushFactor).toBeCloseTo(t.forceToTip / 200, 12);
  });

  test('the tilt at which it tips leaves no lever', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 2, noNaN: true }),
        fc.double({ min: 0.1, max: 3, noNaN: true }),
        (b, z) => {
          const { tippingAngle } = valueOf(tipOver({ ...body, lever: b, height: z, tilt: 0 }));
          expect(valueOf(tipOver({ ...body, lever: b, height: z, tilt: tippingAngle })).leverTilted).toBeCloseTo(0, 12);
        },
      ),
      { seed: 41 },
    );
  });

  // IEC 61010-1, clause 7.4: 10 degrees (from memory). tan 10 deg = 0.176327.
  test('a centre of mass below 0.176327 times its height from the edge falls at 10 degrees', () => {
    const at = (lever: number) => valueOf(tipOver({ ...body, lever })).stableTilted;
    expect(at(0.17632)).toBe(false);
    expect(at(0.17633)).toBe(true);
  });

  test('outside of its base it falls by itself', () => {
    const t = valueOf(tipOver({ ...body, lever: -0.1 }));
    expect(t.tippingAngle).toBeLessThan(0);
    expect(t.forceToTip).toBeLessThan(0);
  });

  test.each([
    ['frame/not-positive', { mass: 0 }],
    ['frame/not-positive', { push: Number.NaN }],
    ['frame/not-a-number', { lever: Number.NaN }],
    ['frame/tilt-range', { tilt: 2 }],
  ])('%s', (code, change) => {
    expect(codes(tipOver({ ...body, ...change }))).toEqual([code]);
  });
});

describe('edges to tip about', () => {
  const feet: Vec2[] = [
    [0, 0],
    [2, 1.2],
    [2, 0],
    [1, 0],
    [0, 1.2],
    [1, 0.6],
  ];

  test('run round the outer feet, the weakest first', () => {
    const edges = valueOf(tippingEdges(feet, [1.4, 0.5]));
    expect(edges.map((e) => Number(e.lever.toFixed(9)))).toEqual([0.5, 0.6, 0.7, 1.4]);
    expect(edges[0].from[1]).toBe(0);
  });

  test('swivels turned inward take their offset from every lever', () => {
    expect(valueOf(tippingEdges(feet, [1.4, 0.5], 0.03))[0].lever).toBeCloseTo(0.47, 12);
  });

  test('a centre of mass outside of the feet has a negative lever', () => {
    expect(valueOf(tippingEdges(feet, [2.1, 0.6]))[0].lever).toBeCloseTo(-0.1, 12);
  });

  test('needs three feet that span an area', () => {
    expect(codes(tippingEdges(feet.slice(0, 2), [0, 0]))).toEqual(['frame/too-few-feet']);
    const inLine: Vec2[] = [
      [0, 0],
      [0.1, 0.3],
      [0.2, 0.6],
    ];
    expect(codes(tippingEdges(inLine, [0, 0]))).toEqual(['frame/feet-in-line']);
  });
});

const rectangle: Vec2[] = [
  [0, 0],
  [2, 0],
  [2, 1.2],
  [0, 1.2],
];

describe('loads on feet', () => {
  test('forces and moments balance, for any feet', () => {
    const coordinate = fc.double({ min: -3, max: 3, noNaN: true });
    const point = fc.tuple(coordinate, coordinate);
    fc.assert(
      fc.property(fc.array(point, { minLength: 3, maxLength: 8 }), point, (feet, centre) => {
        const found = footLoads(feet, 210, centre);
        fc.pre(found.ok);
        const { reactions } = valueOf(found);
        const weight = 210 * standardGravity;
        const size = Math.max(weight, ...reactions.map(Math.abs));
        const sum = (f: (i: number) => number) => reactions.reduce((s, r, i) => s + r * f(i), 0);
        expect(Math.abs(sum(() => 1) - weight)).toBeLessThan(1e-6 * size);
        expect(Math.abs(sum((i) => feet[i]![0]) - weight * centre[0])).toBeLessThan(1e-5 * size);
        expect(Math.abs(sum((i) => feet[i]![1]) - weight * centre[1])).toBeLessThan(1e-5 * size);
      }),
      { seed: 42 },
    );
  });

  test('in the middle of equal feet each carries the same, and lift-off is said', () => {
    const middle = valueOf(footLoads(rectangle, 120, [1, 0.6]));
    for (const r of middle.reactions) expect(r).toBeCloseTo(30 * standardGravity, 9);
    expect(middle.massWithoutOne).toBe(40);
    expect(middle.stable).toBe(true);
    expect(valueOf(footLoads(rectangle, 120, [2.2, 0.6])).stable).toBe(false);
  });

  test('three of four feet with the load in the middle: two opposite feet carry half each', () => {
    const without = valueOf(footLoadsWithoutOne(rectangle, 120, [1, 0.6]));
    expect(without.map((w) => w.missing)).toEqual([0, 1, 2, 3]);
    const [first] = without;
    // The feet left are 1, 2 and 3 of the rectangle; 1 and 3 are opposite.
    expect(first!.loads.reactions[0]).toBeCloseTo(60 * standardGravity, 9);
    expect(first!.loads.reactions[1]).toBeCloseTo(0, 9);
    expect(first!.loads.reactions[2]).toBeCloseTo(60 * standardGravity, 9);
    expect(first!.loads.stable).toBe(true);
  });

  test('a missing foot that leaves the others in a line is left out', () => {
    const tee: Vec2[] = [
      [0, 0],
      [1, 0],
      [2, 0],
      [1, 1],
    ];
    expect(valueOf(footLoadsWithoutOne(tee, 100, [1, 0.3])).map((w) => w.missing)).toEqual([0, 1, 2]);
  });

  test.each<[string, Outcome<unknown>]>([
    ['frame/too-few-feet', footLoads(rectangle.slice(0, 2), 100, [1, 0])],
    ['frame/too-few-feet', footLoadsWithoutOne(rectangle.slice(0, 3), 100, [1, 0])],
    [
      'frame/feet-in-line',
      footLoads(
        [
          [0, 0],
          [1, 1],
          [2, 2],
        ],
        100,
        [1, 1],
      ),
    ],
    ['frame/not-positive', footLoads(rectangle, 0, [1, 1])],
    ['frame/not-a-number', footLoads(rectangle, 100, [Number.NaN, 1])],
  ])('%s', (code, outcome) => {
    expect(codes(outcome)).toEqual([code]);
  });
});
