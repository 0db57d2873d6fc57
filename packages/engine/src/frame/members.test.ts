import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Outcome, valueOf } from '../floor/problem.js';
import {
  aluminium,
  baseTransmissibility,
  boltPreload,
  bucklingClasses,
  combinedStress,
  groovePanel,
  memberBuckling,
  thermalGrowth,
  toleranceStack,
} from './index.js';

const codes = (outcome: Outcome<unknown>): string[] => (outcome.ok ? [] : outcome.problems.map((p) => p.code));

const post = {
  ...bucklingClasses.A,
  elasticity: aluminium.elasticity,
  proofStrength: 150e6,
  bucklingLength: 2,
  secondMoment: 9e-8,
  area: 7.5e-4,
  partialFactor: 1.1,
  weldFactor: 1,
};

describe('member buckling, EN 1999-1-1:2007, clause 6.3.1 (from memory)', () => {
  test('the curve solves the equation it comes from', () => {
    // Ayrton-Perry: (1 - chi)(1 - chi l^2) = eta chi with eta = alpha (l - l0), of which phi is the solution.
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 6, noNaN: true }), fc.constantFrom('A', 'B'), (bucklingLength, name) => {
        const curve = bucklingClasses[name];
        const { reduction: chi, relativeSlenderness: l } = valueOf(
          memberBuckling({ ...post, ...curve, bucklingLength }),
        );
        expect((1 - chi) * (1 - chi * l * l)).toBeCloseTo(curve.imperfection * (l - curve.limitSlenderness) * chi, 9);
      }),
      { seed: 51 },
    );
  });

  test('a stocky member keeps its full strength, a slender one less than its Euler load', () => {
    const stocky = valueOf(memberBuckling({ ...post, bucklingLength: 0.02 }));
    expect(stocky.reduction).toBe(1);
    expect(stocky.resistance).toBeCloseTo((7.5e-4 * 150e6) / 1.1, 6);
    const slender = valueOf(memberBuckling({ ...post, bucklingLength: 6 }));
    expect(slender.resistance).toBeLessThan(slender.eulerLoad);
    expect(slender.eulerLoad).toBeCloseTo((Math.PI ** 2 * 70e9 * 9e-8) / 36, 6);
    expect(slender.slenderness).toBeCloseTo(6 / Math.sqrt(9e-8 / 7.5e-4), 9);
  });

  test('weld softening and the partial factor scale the resistance', () => {
    const plain = valueOf(memberBuckling(post)).resistance;
    expect(valueOf(memberBuckling({ ...post, weldFactor: 0.5, partialFactor: 2.2 })).resistance).toBeCloseTo(
      plain / 4,
      6,
    );
  });
});

describe('stress', () => {
  const cut = {
    axial: 0,
    momentY: 0,
    momentZ: 0,
    torque: 0,
    area: 1e-3,
    modulusY: 1e-5,
    modulusZ: 2e-5,
    torsionModulus: 1e-6,
    proofStrength: 200e6,
    factor: 1,
  };

  test('pure shear yields at proof strength over root three (von Mises)', () => {
    const torque = (200e6 / Math.sqrt(3)) * 1e-6;
    expect(valueOf(combinedStress({ ...cut, torque })).utilisation).toBeCloseTo(1, 12);
  });

  test('signs do not matter: the worst corner is taken', () => {
    const s = valueOf(combinedStress({ ...cut, axial: -1000, momentY: 100, momentZ: -200 }));
    expect(s.normal).toBeCloseTo(1e6 + 10e6 + 10e6, 3);
    expect(s.shear).toBe(0);
    expect(s.vonMises).toBe(s.normal);
  });
});

// Shigley, Mechanical Engineering Design, T = K F d (from memory).
test('a bolt has the preload of its torque and slips by friction', () => {
  const b = valueOf(boltPreload({ diameter: 0.006, torque: 6, nutFactor: 0.2, friction: 0.15, interfaces: 2 }));
  expect(b.preload).toBeCloseTo(5000, 9);
  expect(b.slip).toBeCloseTo(1500, 9);
});

const sheet = {
  clearOpening: 0.92,
  grooveDepth: 0.01,
  endClearance: 0.003,
  temperatureChange: -15,
  panelExpansion: 70e-6,
  frameExpansion: 23e-6,
};

describe('panel in grooves', () => {
  test('the cut panel leaves its clearance at both ends, and pushed over it holds by what is left', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 2, noNaN: true }),
        fc.double({ min: 0.004, max: 0.02, noNaN: true }),
        fc.double({ min: 0, max: 0.0039, noNaN: true }),
        (clearOpening, grooveDepth, endClearance) => {
          const p = valueOf(groovePanel({ ...sheet, clearOpening, grooveDepth, endClearance }));
          expect(p.cutSize + 2 * endClearance).toBeCloseTo(clearOpening + 2 * grooveDepth, 12);
          // Pushed to the bottom of one groove, the other end reaches this far over its edge.
          expect(p.cutSize - grooveDepth - clearOpening).toBeCloseTo(p.leastEngagement, 12);
        },
      ),
      { seed: 52 },
    );
  });

  test('a cold panel shrinks against its frame', () => {
    expect(valueOf(groovePanel(sheet)).relativeGrowth).toBeCloseTo(-15 * 47e-6 * 0.92, 12);
  });
});

// EN 1999-1-1:2007, clause 3.2.5 (from memory): 23e-6 1/K and 70 000 N/mm2, so 1.61 N/mm2 for each kelvin.
test('four metres of aluminium grow 0.92 mm in 10 K, or press with 16.1 N/mm2', () => {
  const t = valueOf(
    thermalGrowth({
      length: 4,
      temperatureChange: 10,
      expansion: aluminium.expansion,
      elasticity: aluminium.elasticity,
    }),
  );
  expect(t.growth * 1000).toBeCloseTo(0.92, 9);
  expect(t.restrainedStress / 1e6).toBeCloseTo(16.1, 9);
});

describe('transmissibility', () => {
  const at = (frequency: number, damping: number) =>
    valueOf(baseTransmissibility({ frequency, naturalFrequency: 4, damping })).ratio;

  test('is 1 at root two times the natural frequency for every damping', () => {
    for (const damping of [0, 0.03, 0.2, 1]) expect(at(4 * Math.SQRT2, damping)).toBeCloseTo(1, 12);
  });

  test('at resonance it is sqrt(1 + 1/(4 z^2)), and 1 when slow', () => {
    expect(at(4, 0.05)).toBeCloseTo(Math.sqrt(1 + 1 / (4 * 0.05 ** 2)), 9);
    expect(at(1e-6, 0.05)).toBeCloseTo(1, 9);
  });

  // f = 0.5/sqrt(sag in metres), about: sqrt(g)/2 pi = 0.4984 (derived).
  test('a spring that sags 10 mm rings at 4.984 Hz', () => {
    const { staticSag } = valueOf(baseTransmissibility({ frequency: 1, naturalFrequency: 4.984, damping: 0 }));
    expect(staticSag).toBeCloseTo(0.01, 5);
  });
});

test('tolerances add up, or as root of squares', () => {
  const stack = valueOf(toleranceStack([3e-4, 4e-4]));
  expect(stack.worstCase).toBeCloseTo(7e-4, 15);
  expect(stack.statistical).toBeCloseTo(5e-4, 15);
});

test.each<[string, Outcome<unknown>]>([
  ['frame/not-positive', memberBuckling({ ...post, area: 0 })],
  ['frame/negative', memberBuckling({ ...post, imperfection: -1 })],
  [
    'frame/not-positive',
    combinedStress({
      axial: 0,
      momentY: 0,
      momentZ: 0,
      torque: 0,
      area: 0,
      modulusY: 1,
      modulusZ: 1,
      torsionModulus: 1,
      proofStrength: 1,
      factor: 1,
    }),
  ],
  ['frame/not-positive', boltPreload({ diameter: 0.006, torque: 0, nutFactor: 0.2, friction: 0.1, interfaces: 1 })],
  ['frame/groove-clearance', groovePanel({ ...sheet, endClearance: 0.01 })],
  ['frame/negative', groovePanel({ ...sheet, endClearance: -0.001 })],
  ['frame/not-a-number', groovePanel({ ...sheet, temperatureChange: Number.NaN })],
  ['frame/not-positive', thermalGrowth({ length: 0, temperatureChange: 1, expansion: 1e-5, elasticity: 1 })],
  ['frame/not-a-number', thermalGrowth({ length: 1, temperatureChange: Number.NaN, expansion: 1e-5, elasticity: 1 })],
  ['frame/negative', baseTransmissibility({ frequency: 1, naturalFrequency: 1, damping: -1 })],
  ['frame/no-tolerances', toleranceStack([])],
  ['frame/negative', toleranceStack([1e-4, -1e-4])],
])('%s', (code, outcome) => {
  expect(codes(outcome)).toEqual([code]);
});
