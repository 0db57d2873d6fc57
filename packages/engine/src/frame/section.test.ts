import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { turn2, type Vec2 } from '../floor/geometry/vec.js';
import { type Outcome, valueOf } from '../floor/problem.js';
import {
  circularHollowSection,
  ellipseSection,
  rectangularHollowSection,
  repairedOutline,
  type SectionOutline,
  sectionProperties,
  standardCornerRadii,
} from './index.js';

const box = (b: number, h: number, x = 0, y = 0): Vec2[] => [
  [x - b / 2, y - h / 2],
  [x + b / 2, y - h / 2],
  [x + b / 2, y + h / 2],
  [x - b / 2, y + h / 2],
];
const solid = (outer: readonly Vec2[]): SectionOutline => ({ outer, holes: [] });
const codes = (outcome: Outcome<unknown>): string[] => (outcome.ok ? [] : outcome.problems.map((p) => p.code));
const near = (got: number, expected: number, relative: number) =>
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));

describe('published sections', () => {
  // Pilkey, Analysis and Design of Elastic Beams (2002), Example 1.1, p. 18: angle of unit size, printed to 4 decimals.
  test('an angle has the printed moments and principal axes', () => {
    const angle: Vec2[] = [
      [-0.05, -2],
      [0.05, -2],
      [0.05, -0.05],
      [1, -0.05],
      [1, 0.05],
      [-0.05, 0.05],
    ];
    const s = valueOf(sectionProperties(solid(angle)));
    near(s.area, 0.3, 0.005);
    near(s.centroid[0], 0.1663, 0.005);
    near(s.centroid[1], -0.6663, 0.005);
    near(s.ix, 0.1336, 0.005);
    near(s.iy, 0.0252, 0.005);
    near(s.ixy, 0.0332, 0.005);
    near(s.i1, 0.143, 0.005);
    near(s.i2, 0.0158, 0.005);
    near((s.theta * 180) / Math.PI, -15.7589, 0.005);
  });

  // EN 10210-2, hot-finished 100 x 100 x 5: A 18.7 cm2, I 279 cm4, W 55.9 cm3, It 439 cm4, Ct 81.8 cm3 (from memory).
  test('a hot-finished 100 x 100 x 5 tube has the tabulated values', () => {
    const radii = valueOf(standardCornerRadii('hot finished', 0.005));
    const s = valueOf(
      rectangularHollowSection({
        height: 0.1,
        width: 0.1,
        thickness: 0.005,
        outerRadius: radii.outer,
        innerRadius: radii.inner,
      }),
    );
    expect(s.area * 1e4).toBeCloseTo(18.7, 1);
    expect(Math.round(s.ix * 1e8)).toBe(279);
    expect(s.wx * 1e6).toBeCloseTo(55.9, 1);
    expect(Math.round(s.torsionConstant * 1e8)).toBe(439);
    expect(s.torsionModulus * 1e6).toBeCloseTo(81.8, 1);
  });

  // EN 10219-2: radii of cold-formed tubes change at 6 mm and 10 mm of wall (from memory).
  test.each([
    [0.003, 2, 1],
    [0.006, 2, 1],
    [0.008, 2.5, 1.5],
    [0.0125, 3, 2],
  ])('a cold-formed wall of %d m has corner radii %d and %d walls', (wall, outer, inner) => {
    const radii = valueOf(standardCornerRadii('cold formed', wall));
    expect(radii.outer).toBeCloseTo(outer * wall, 12);
    expect(radii.inner).toBeCloseTo(inner * wall, 12);
  });
});

describe('closed forms', () => {
  test('a rectangle has b h^3 / 12 and b h^2 / 6, wherever it lies', () => {
    const s = valueOf(sectionProperties(solid(box(0.03, 0.06, 5, -7))));
    near(s.ix, (0.03 * 0.06 ** 3) / 12, 1e-9);
    near(s.iy, (0.06 * 0.03 ** 3) / 12, 1e-9);
    near(s.wx, (0.03 * 0.06 ** 2) / 6, 1e-9);
    near(s.radiusX, 0.06 / Math.sqrt(12), 1e-9);
    near(s.radiusLeast, 0.03 / Math.sqrt(12), 1e-9);
    near(s.perimeter, 0.18, 1e-9);
    expect(s.ixy).toBe(0);
  });

  test('a triangle has its own modulus on each side: b h^2 / 24 at the tip, b h^2 / 12 at the base', () => {
    const s = valueOf(
      sectionProperties(
        solid([
          [0, 0],
          [0.04, 0],
          [0.01, 0.03],
        ]),
      ),
    );
    near(s.moduli.top, (0.04 * 0.03 ** 2) / 24, 1e-9);
    near(s.moduli.bottom, (0.04 * 0.03 ** 2) / 12, 1e-9);
    expect(s.wx).toBe(s.moduli.top);
    expect(s.wy).toBe(Math.min(s.moduli.left, s.moduli.right));
  });

  test('a hole takes away what it would be as a bar', () => {
    const s = valueOf(sectionProperties({ outer: box(0.05, 0.05), holes: [box(0.04, 0.03)] }));
    near(s.ix, (0.05 * 0.05 ** 3 - 0.04 * 0.03 ** 3) / 12, 1e-12);
    near(s.area, 0.05 * 0.05 - 0.04 * 0.03, 1e-12);
  });

  test('a square keeps its axes although every axis is principal', () => {
    expect(valueOf(sectionProperties(solid(box(0.04, 0.04)))).theta).toBe(0);
  });

  test('a round tube drawn with many corners comes close to the exact tube', () => {
    const circle = (d: number): Vec2[] =>
      Array.from({ length: 720 }, (_, i): Vec2 => turn2([d / 2, 0], (i * Math.PI) / 360));
    const drawn = valueOf(sectionProperties({ outer: circle(0.0483), holes: [circle(0.0423)] }));
    const exact = valueOf(circularHollowSection(0.0483, 0.003));
    near(drawn.ix, exact.ix, 1e-4);
    near(exact.ix, (Math.PI / 64) * (0.0483 ** 4 - 0.0423 ** 4), 1e-12);
    near(exact.torsionModulus, (2 * exact.torsionConstant) / 0.0483, 1e-12);
  });

  test('a round ellipse is a circle: J = pi d^4 / 32, I = pi d^4 / 64', () => {
    const s = valueOf(ellipseSection(0.02, 0.02));
    near(s.torsionConstant, (Math.PI * 0.04 ** 4) / 32, 1e-12);
    near(s.ix, (Math.PI * 0.04 ** 4) / 64, 1e-12);
    const hollow = valueOf(ellipseSection(0.02, 0.02, 0.5));
    near(hollow.torsionConstant, (Math.PI * (0.04 ** 4 - 0.02 ** 4)) / 32, 1e-12);
    near(hollow.area, (Math.PI / 4) * (0.04 ** 2 - 0.02 ** 2), 1e-12);
  });

  test('a tube with sharp corners is a rectangle less a rectangle', () => {
    const s = valueOf(
      rectangularHollowSection({ height: 0.08, width: 0.04, thickness: 0.003, outerRadius: 0, innerRadius: 0 }),
    );
    near(s.ix, (0.04 * 0.08 ** 3 - 0.034 * 0.074 ** 3) / 12, 1e-12);
    near(s.iy, (0.08 * 0.04 ** 3 - 0.074 * 0.034 ** 3) / 12, 1e-12);
    near(s.area, 0.04 * 0.08 - 0.034 * 0.074, 1e-12);
  });
});

describe('properties', () => {
  const angle = (b: number, h: number, t: number): Vec2[] => [
    [0, 0],
    [b, 0],
    [b, t],
    [t, t],
    [t, h],
    [0, h],
  ];
  const length = fc.double({ min: 0.02, max: 0.2, noNaN: true });
  const shift = fc.double({ min: -3, max: 3, noNaN: true });

  test('moving, turning and reversing the outline leaves the principal moments', () => {
    fc.assert(
      fc.property(length, length, fc.double({ min: 0, max: 6, noNaN: true }), shift, shift, (b, h, turn, x, y) => {
        const ring = angle(b, h, 0.005);
        const moved = ring.map((p): Vec2 => {
          const [u, v] = turn2(p, turn);
          return [u + x, v + y];
        });
        const a = valueOf(sectionProperties(solid(ring)));
        const m = valueOf(sectionProperties(solid([...moved].reverse())));
        near(m.i1, a.i1, 1e-6);
        near(m.i2, a.i2, 1e-6);
        near(m.ix + m.iy, a.ix + a.iy, 1e-6);
        near(m.area, a.area, 1e-9);
      }),
      { seed: 11 },
    );
  });

  test('turned to its principal axis, a section has no product of area', () => {
    fc.assert(
      fc.property(length, length, (b, h) => {
        const ring = angle(b, h, 0.004);
        const a = valueOf(sectionProperties(solid(ring)));
        const turned = valueOf(sectionProperties(solid(ring.map((p) => turn2(p, -a.theta)))));
        expect(Math.abs(turned.ixy)).toBeLessThan(1e-9 * (a.ix + a.iy));
        near(turned.ix, a.i1, 1e-9);
      }),
      { seed: 12 },
    );
  });

  test('k times the size has k^2 the area and k^4 the moments', () => {
    fc.assert(
      fc.property(length, length, fc.double({ min: 0.5, max: 20, noNaN: true }), (b, h, k) => {
        const a = valueOf(sectionProperties(solid(angle(b, h, 0.004))));
        const big = valueOf(sectionProperties(solid(angle(b, h, 0.004).map(([x, y]): Vec2 => [k * x, k * y]))));
        near(big.area, k ** 2 * a.area, 1e-9);
        near(big.ix, k ** 4 * a.ix, 1e-9);
      }),
      { seed: 13 },
    );
  });
});

describe('outlines that are no section', () => {
  const outer = box(0.04, 0.04);
  test.each<[string, SectionOutline]>([
    [
      'frame/section-points',
      solid([
        [0, 0],
        [1, 0],
        [1, 0],
      ]),
    ],
    [
      'frame/section-points',
      solid([
        [0, 0],
        [1, 0],
        [Number.NaN, 1],
      ]),
    ],
    ['frame/section-area', solid(box(1e-7, 1e-7))],
    [
      'frame/section-self-crossing',
      solid([
        [0, 0],
        [0.04, 0.04],
        [0.04, 0],
        [0, 0.04],
      ]),
    ],
    [
      'frame/section-self-crossing',
      solid([
        [0, 0],
        [0.04, 0],
        [0.08, 0],
        [0.04, 0],
        [0.04, 0.04],
      ]),
    ],
    ['frame/section-hole-outside', { outer, holes: [box(0.01, 0.01, 0.1, 0)] }],
    ['frame/section-hole-outside', { outer, holes: [box(0.01, 0.01, 0.015, 0)] }],
    ['frame/section-hole-outside', { outer, holes: [box(0.1, 0.1)] }],
    ['frame/section-holes-touch', { outer, holes: [box(0.01, 0.01), box(0.01, 0.01, 0.01, 0)] }],
    ['frame/section-holes-touch', { outer, holes: [box(0.02, 0.02), box(0.01, 0.01)] }],
  ])('%s', (code, outline) => {
    expect(codes(sectionProperties(outline))).toEqual([code]);
  });

  test('a ring closed by its first point is the same ring', () => {
    const repaired = valueOf(repairedOutline({ outer: [...outer, outer[0]!].reverse(), holes: [box(0.01, 0.01)] }));
    expect(repaired.outer).toHaveLength(4);
    near(valueOf(sectionProperties({ outer: [...outer, outer[0]!], holes: [] })).area, 0.0016, 1e-12);
  });

  test.each<[string, Outcome<unknown>]>([
    ['frame/not-positive', ellipseSection(0, 0.01)],
    ['frame/not-positive', standardCornerRadii('cold formed', Number.NaN)],
    ['frame/hollow-ratio', ellipseSection(0.02, 0.01, 1)],
    ['frame/not-positive', circularHollowSection(-1, 0.003)],
    ['frame/wall-too-thick', circularHollowSection(0.01, 0.005)],
    [
      'frame/wall-too-thick',
      rectangularHollowSection({ height: 0.01, width: 0.1, thickness: 0.005, outerRadius: 0, innerRadius: 0 }),
    ],
    [
      'frame/negative',
      rectangularHollowSection({ height: 0.1, width: 0.1, thickness: 0.005, outerRadius: -1, innerRadius: 0 }),
    ],
    [
      'frame/corner-radius',
      rectangularHollowSection({ height: 0.1, width: 0.1, thickness: 0.005, outerRadius: 0.06, innerRadius: 0.05 }),
    ],
  ])('%s for sizes that cannot be', (code, outcome) => {
    expect(codes(outcome)).toEqual([code]);
  });
});
