import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { turn2, type Vec2 } from '../floor/geometry/vec.js';
import { type Outcome, valueOf } from '../floor/problem.js';
import {
  boxThinWallTorsion,
  openWallTorsion,
  outlineTorsionConstant,
  rectangleTorsion,
  tubeThinWallTorsion,
} from './index.js';

const codes = (outcome: Outcome<unknown>): string[] => (outcome.ok ? [] : outcome.problems.map((p) => p.code));
const near = (got: number, expected: number, relative: number) =>
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));

// Timoshenko and Goodier, Theory of Elasticity, torsion of rectangular bars: k1 and k2, four decimals (from memory).
test.each([
  [1, 0.1406, 0.2082],
  [1.2, 0.1661, 0.2189],
  [1.5, 0.1958, 0.231],
  [2, 0.2287, 0.2459],
  [2.5, 0.2494, 0.2576],
  [3, 0.2633, 0.2672],
  [4, 0.2808, 0.2817],
  [5, 0.2913, 0.2915],
  [6, 0.2983, 0.2984],
  [8, 0.3071, 0.3071],
  [10, 0.3123, 0.3123],
])('a rectangle %d times longer than wide has the tabulated factors', (ratio, k1, k2) => {
  const t = valueOf(rectangleTorsion(1, ratio));
  expect(Math.abs(t.constant / ratio - k1)).toBeLessThanOrEqual(0.6e-4);
  expect(Math.abs(t.modulus / ratio - k2)).toBeLessThanOrEqual(0.6e-4);
});

// Roark, torsion table, approximation for rectangles of half sides a and b, good to half a percent (from memory).
test('the series lies near the closed approximation', () => {
  fc.assert(
    fc.property(fc.double({ min: 1, max: 20, noNaN: true }), (ratio) => {
      const [a, b] = [ratio / 2, 0.5];
      const roark = a * b ** 3 * (16 / 3 - 3.36 * (b / a) * (1 - b ** 4 / (12 * a ** 4)));
      near(valueOf(rectangleTorsion(1, ratio)).constant, roark, 0.005);
    }),
    { seed: 21 },
  );
});

describe('torsion of drawn outlines', () => {
  const rectangle: Vec2[] = [
    [0, 0],
    [0.03, 0],
    [0.03, 0.03],
    [0.03, 0.06],
    [0, 0.06],
  ];

  test('a rectangle is known in any position, with points on its sides', () => {
    const turned = rectangle.map((p) => turn2(p, 0.7));
    near(valueOf(outlineTorsionConstant({ outer: turned, holes: [] })), 0.2287 * 0.06 * 0.03 ** 3, 3e-4);
  });

  // Pilkey, Analysis and Design of Elastic Beams (2002), Example 5.6: J = h^4 / (15 sqrt 3).
  test('an equilateral triangle has h^4 / (15 sqrt 3)', () => {
    const h = 0.02 * Math.sqrt(3);
    const triangle: Vec2[] = [
      [-0.02, 0],
      [0.02, 0],
      [0, h],
    ];
    near(valueOf(outlineTorsionConstant({ outer: triangle, holes: [] })), h ** 4 / (15 * Math.sqrt(3)), 1e-9);
  });

  test.each<[string, Vec2[], Vec2[][]]>([
    [
      'a tube',
      rectangle,
      [
        [
          [0.01, 0.01],
          [0.02, 0.01],
          [0.02, 0.02],
          [0.01, 0.02],
        ],
      ],
    ],
    [
      'a flat triangle',
      [
        [0, 0],
        [0.04, 0],
        [0.02, 0.01],
      ],
      [],
    ],
    [
      'a trapezium',
      [
        [0, 0],
        [0.04, 0],
        [0.03, 0.02],
        [0.01, 0.02],
      ],
      [],
    ],
    [
      'an angle',
      [
        [0, 0],
        [0.04, 0],
        [0.04, 0.005],
        [0.005, 0.005],
        [0.005, 0.06],
        [0, 0.06],
      ],
      [],
    ],
  ])('%s is refused rather than guessed', (_, outer, holes) => {
    expect(codes(outlineTorsionConstant({ outer, holes }))).toEqual(['frame/torsion-no-closed-form']);
  });
});

describe('thin walls', () => {
  // Pilkey (2002), Example 5.7, p. 189: 8 in tube with 0.25 in wall; thin-wall theory 91.40 in4, exact annulus 91.49 in4.
  test('a tube has the published constant', () => {
    const inch = 0.0254;
    near(valueOf(tubeThinWallTorsion(8 * inch, 0.25 * inch)).constant / inch ** 4, 91.4, 1e-4);
  });

  test('a square box has (side of the middle line)^3 times the wall', () => {
    const t = valueOf(boxThinWallTorsion({ width: 0.052, height: 0.052, flange: 0.002, web: 0.002 }));
    near(t.constant, 0.05 ** 3 * 0.002, 1e-12);
    near(t.webStress, 1 / (2 * 0.05 ** 2 * 0.002), 1e-12);
    expect(t.flangeStress).toBe(t.webStress);
  });

  test('walls of an open section add a third of b t^3, and the thickest is stressed most', () => {
    const t = valueOf(
      openWallTorsion([
        { length: 0.06, thickness: 0.005 },
        { length: 0.035, thickness: 0.004 },
      ]),
    );
    near(t.constant, (0.06 * 0.005 ** 3 + 0.035 * 0.004 ** 3) / 3, 1e-12);
    near(t.modulus, t.constant / 0.005, 1e-12);
  });

  test('a slit tube is far softer than the closed one', () => {
    const closed = valueOf(tubeThinWallTorsion(0.05, 0.002)).constant;
    const slit = valueOf(openWallTorsion([{ length: Math.PI * 0.048, thickness: 0.002 }])).constant;
    // Closed over slit is 3 (r/t)^2 for thin walls.
    near(closed / slit, 3 * (0.024 / 0.002) ** 2, 1e-9);
  });

  test.each<[string, Outcome<unknown>]>([
    ['frame/not-positive', rectangleTorsion(0, 1)],
    ['frame/not-positive', openWallTorsion([])],
    ['frame/not-positive', openWallTorsion([{ length: 1, thickness: -1 }])],
    ['frame/not-positive', tubeThinWallTorsion(0.1, 0)],
    ['frame/wall-too-thick', tubeThinWallTorsion(0.1, 0.05)],
    ['frame/not-positive', boxThinWallTorsion({ width: 0, height: 0.1, flange: 0.01, web: 0.01 })],
    ['frame/wall-too-thick', boxThinWallTorsion({ width: 0.1, height: 0.1, flange: 0.01, web: 0.05 })],
    ['frame/wall-too-thick', boxThinWallTorsion({ width: 0.1, height: 0.1, flange: 0.05, web: 0.01 })],
  ])('%s', (code, outcome) => {
    expect(codes(outcome)).toEqual([code]);
  });
});
