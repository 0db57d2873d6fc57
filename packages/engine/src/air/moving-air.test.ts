import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Outcome, valueOf } from '../floor/index.js';
import {
  airChangeRate,
  behindFilters,
  benchmarkRoomBoundary,
  buoyancyPressure,
  cleanAirFlow,
  cleanUpTime,
  concentrationAfter,
  ductMean,
  ductVelocity,
  fanOperatingPoint,
  filterData,
  gapFlow,
  gapJetVelocity,
  humanEmission,
  insideVelocityBand,
  largestGapArea,
  meanGapVelocity,
  onceThroughZone,
  overPressure,
  plateFlow,
  recirculatingZone,
  scaledToSize,
  tabledOperatingPoint,
  unidirectionalFlow,
  velocityNonUniformity,
  vortexDecay,
} from './index.js';

const code = (outcome: Outcome<unknown>) => (outcome.ok ? 'ok' : outcome.problems[0]!.code);

describe('well-mixed zone', () => {
  const zone = {
    volume: 12,
    supplyFlow: 0.5,
    penetration: 5e-5,
    upstream: 2e7,
    leakFlow: 0.01,
    room: 2e7,
    source: 0,
    deposition: 0,
  };
  // Handbook of air, section 5: a leak of 2 % decides, about 393 000 per m3; without it 1000 at most.
  test('the leak decides, not the filter', () => {
    expect(valueOf(onceThroughZone(zone)).steady).toBeCloseTo(393_000, -3);
    expect(valueOf(onceThroughZone({ ...zone, leakFlow: 0 })).steady).toBeCloseTo(1000, 6);
  });
  test('the balance integrated in small steps ends where the closed form says', () => {
    const z = { ...zone, source: 5000, deposition: 1e-4 };
    const found = valueOf(onceThroughZone(z));
    const slope = (c: number) =>
      (z.supplyFlow * z.penetration * z.upstream +
        z.leakFlow * z.room +
        z.source -
        (z.supplyFlow + z.leakFlow + z.deposition * z.volume) * c) /
      z.volume;
    let c = 2e7;
    const h = 0.5;
    for (let t = 0; t < 120; t += h) {
      const a = slope(c);
      const b = slope(c + (h / 2) * a);
      const d = slope(c + (h / 2) * b);
      c += (h / 6) * (a + 2 * b + 2 * d + slope(c + h * d));
    }
    expect(valueOf(concentrationAfter(found, 2e7, 120)) / c).toBeCloseTo(1, 6);
  });
  test('without leak and source a recirculating zone becomes clean, at rate Q(1-P)/V', () => {
    const found = valueOf(
      recirculatingZone({ volume: 20, recirculatedFlow: 0.4, penetration: 5e-4, leakFlow: 0, room: 1e7, source: 0 }),
    );
    expect(found.steady).toBe(0);
    expect(found.decayRate).toBeCloseTo((0.4 * (1 - 5e-4)) / 20, 12);
  });
  test('the clean-up time leads to the target', () => {
    fc.assert(
      fc.property(fc.double({ min: 1.01, max: 1000, noNaN: true }), (ratio) => {
        const found = valueOf(onceThroughZone(zone));
        const target = found.steady * ratio;
        const t = valueOf(cleanUpTime(found, 2e7 + target, target));
        expect(valueOf(concentrationAfter(found, 2e7 + target, t)) / target).toBeCloseTo(1, 6);
      }),
      { seed: 2 },
    );
  });
  test('what cannot be reached is refused, what is reached takes no time', () => {
    const found = valueOf(onceThroughZone(zone));
    expect(code(cleanUpTime(found, 2e7, 1e5))).toBe('air/never-reached');
    expect(valueOf(cleanUpTime(found, 4e5, 5e5))).toBe(0);
    expect(code(onceThroughZone({ ...zone, supplyFlow: 0, leakFlow: 0 }))).toBe('air/no-exchange');
    expect(code(onceThroughZone({ ...zone, penetration: 1.5 }))).toBe('air/not-a-share');
  });
  // Handbook of air, section 5: two gowned people, ISO 7, half the limit: 0.193 m3/s.
  test('clean air for two gowned people', () => {
    const source = 2 * valueOf(humanEmission('cleanroom', 0.5e-6));
    expect(valueOf(cleanAirFlow(source, 352_000, 0.5, 0))).toBeCloseTo(0.193, 3);
    expect(code(cleanAirFlow(source, 352_000, 0.5, 2e5))).toBe('air/supply-too-dirty');
  });
});

// Whyte and Hejab 2007, abstract: particles per person and minute.
test('people give off what was measured, and no other size is made up', () => {
  expect(valueOf(humanEmission('indoor', 0.5e-6)) * 60).toBeCloseTo(2_130_000, 6);
  expect(valueOf(humanEmission('cleanroom', 5e-6)) * 60).toBeCloseTo(37_300, 6);
  expect(code(humanEmission('indoor', 1e-6))).toBe('air/emission-size');
  // Slope of the classes: ISO 14644-1:2015, Table 1, class 6: 35 200 at 0.5 um and 8 320 at 1 um.
  expect(scaledToSize(35_200, 0.5e-6, 1e-6)).toBeCloseTo(8320, -2);
});

describe('gaps', () => {
  const gap = { area: 0.36, dischargeCoefficient: 0.6, density: 1.2 };
  // Handbook of air, section 6: 0.8 m3/s through 0.36 m2 holds 8.2 Pa at 2.2 m/s; 5 Pa drive 2.89 m/s; 2 m, 2 K: 0.16 Pa.
  test('worked figures', () => {
    expect(valueOf(overPressure(gap, 0.8))).toBeCloseTo(8.2, 1);
    expect(valueOf(meanGapVelocity(0.8, 0.36))).toBeCloseTo(2.2, 1);
    expect(valueOf(gapJetVelocity(5, 1.2))).toBeCloseTo(2.89, 2);
    expect(valueOf(buoyancyPressure(2, 2, 293.15, 1.2))).toBeCloseTo(0.16, 2);
  });
  test('flow and pressure undo each other', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 50, noNaN: true }), (pressure) => {
        expect(valueOf(overPressure(gap, valueOf(gapFlow(gap, pressure)))) / pressure).toBeCloseTo(1, 9);
      }),
      { seed: 3 },
    );
    expect(valueOf(meanGapVelocity(0.65, valueOf(largestGapArea(0.65, 0.2))))).toBeCloseTo(0.2, 12);
  });
});

describe('clean flow', () => {
  // Handbook of air, section 7: 2.4 m x 1.2 m at 0.45 m/s is 1.296 m3/s, 5 units of 0.30 m3/s.
  test('units for a table', () => {
    expect(valueOf(unidirectionalFlow(2.4 * 1.2, 0.45, 0.3))).toEqual({ flow: expect.closeTo(1.296, 9), units: 5 });
    expect(valueOf(unidirectionalFlow(3, 0.3, 0.3)).units).toBe(3);
  });
  test('the band holds its ends (EU GMP Annex 1: 0.36 to 0.54 m/s)', () => {
    expect([0.359, 0.36, 0.54, 0.541].map((v) => valueOf(insideVelocityBand(v)))).toEqual([false, true, true, false]);
  });
  test('even velocities have no non-uniformity; two values differ by root two of their half distance', () => {
    expect(valueOf(velocityNonUniformity([0.4, 0.4, 0.4])).nonUniformity).toBeCloseTo(0, 12);
    expect(valueOf(velocityNonUniformity([0.4, 0.5])).standardDeviation).toBeCloseTo(0.1 / Math.SQRT2, 12);
    expect(code(velocityNonUniformity([0.4]))).toBe('air/too-few');
    expect(valueOf(airChangeRate(0.9, 6.5)) * 3600).toBeCloseTo(498.46, 2);
  });
});

describe('operating point', () => {
  const against = { linear: 320, quadratic: 150 };
  // Handbook of air, section 7: p0 240, a 900, k 320, b 150 meet at 0.349 m3/s; twice the filter 0.262.
  test('a parabola meets filter and openings', () => {
    expect(valueOf(fanOperatingPoint(240, 900, against)).flow).toBeCloseTo(0.349, 3);
    expect(valueOf(fanOperatingPoint(240, 900, { ...against, linear: 640 })).flow).toBeCloseTo(0.262, 3);
  });
  const sampled = (points: number) =>
    Array.from({ length: points }, (_, i) => {
      const flow = (i / (points - 1)) * Math.sqrt(240 / 900);
      return { flow, pressure: i === points - 1 ? 0 : 240 - 900 * flow * flow };
    });
  test('a curve given as points comes to the parabola as the square of their distance', () => {
    const exact = valueOf(fanOperatingPoint(240, 900, against)).flow;
    const error = (n: number) => Math.abs(valueOf(tabledOperatingPoint(sampled(n), against)).flow - exact);
    expect(error(801)).toBeLessThan(1e-6);
    expect(error(801)).toBeLessThan(error(21) / 100);
  });
  test('fan and resistance agree at the point found', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 2000, noNaN: true }),
        fc.double({ min: 0, max: 5000, noNaN: true }),
        (linear, quadratic) => {
          const { flow, pressure } = valueOf(tabledOperatingPoint(sampled(7), { linear, quadratic }));
          expect(linear * flow + quadratic * flow * flow).toBeCloseTo(pressure, 6);
        },
      ),
      { seed: 4 },
    );
  });
  test('a curve is not extended at either end, and must fall', () => {
    const short = sampled(21).slice(0, 5);
    expect(code(tabledOperatingPoint(short, { linear: 0, quadratic: 1 }))).toBe('air/operating-point-outside');
    expect(code(tabledOperatingPoint(sampled(21).slice(10), { linear: 5000, quadratic: 0 }))).toBe(
      'air/operating-point-outside',
    );
    expect(code(tabledOperatingPoint(sampled(21).reverse(), against))).toBe('air/fan-curve');
    expect(code(tabledOperatingPoint(sampled(2).slice(1), against))).toBe('air/fan-curve');
  });
});

// EN 1822-1:2019 (public reproductions): H14 99.995 % and 99.975 %, U17 local 99.9999 %; ISO 29463-1 group 45 H is H14.
test('filters', () => {
  expect(valueOf(filterData('H14'))).toEqual({
    filterClass: 'H14',
    integralPenetration: 5e-5,
    localPenetration: 2.5e-4,
  });
  expect(valueOf(filterData('ISO 45 H')).filterClass).toBe('H14');
  expect(valueOf(filterData('E11')).localPenetration).toBeNull();
  expect(code(filterData('H15'))).toBe('air/filter-class');
  expect(valueOf(behindFilters(1e7, [0.15, 5e-4]))).toBeCloseTo(750, 9);
  expect(code(behindFilters(1e7, []))).toBe('air/too-few');
});

describe('exact flows', () => {
  // White, Viscous Fluid Flow; Shah and London 1978: square 0.0351443, 0.0736714, 56.91; two to one 1.992, 62.19.
  test('rectangular duct', () => {
    const square = { width: 1, height: 1, drive: 1 };
    expect(valueOf(ductMean(square)).mean).toBeCloseTo(0.0351443, 7);
    expect(valueOf(ductVelocity(square, 0, 0))).toBeCloseTo(0.0736714, 6);
    expect(valueOf(ductMean(square)).frictionReynolds).toBeCloseTo(56.91, 2);
    const flat = { width: 2, height: 1, drive: 1 };
    expect(valueOf(ductVelocity(flat, 0, 0)) / valueOf(ductMean(flat)).mean).toBeCloseTo(1.992, 3);
    expect(valueOf(ductMean(flat)).frictionReynolds).toBeCloseTo(62.19, 2);
  });
  test('it does not matter which side is called the width', () => {
    const one = valueOf(ductVelocity({ width: 0.3, height: 0.1, drive: 5 }, 0.1, 0.02));
    expect(valueOf(ductVelocity({ width: 0.1, height: 0.3, drive: 5 }, 0.02, 0.1))).toBeCloseTo(one, 9);
  });
  test('walls stand still and the outside is refused', () => {
    const duct = { width: 1, height: 2, drive: 1 };
    expect(valueOf(ductVelocity(duct, 0.5, 0.3))).toBeCloseTo(0, 9);
    expect(code(ductVelocity(duct, 0.6, 0))).toBe('air/outside-duct');
  });
  test('a wide duct is two plates', () => {
    const { maximum, mean } = valueOf(plateFlow(0.1, 3));
    expect(valueOf(ductVelocity({ width: 0.1, height: 5, drive: 3 }, 0, 0))).toBeCloseTo(maximum, 8);
    expect(mean / maximum).toBeCloseTo(2 / 3, 12);
  });
  // Taylor and Green 1937: nu 0.01, k 1, t 10: 0.81873 and 0.67032.
  test('vortex decay', () => {
    const { velocity, energy } = valueOf(vortexDecay(1, 0.01, 10));
    expect(velocity).toBeCloseTo(0.81873, 5);
    expect(energy).toBeCloseTo(0.67032, 5);
  });
  // Nielsen 1990: U0 0.455 m/s, k0 4.98e-4, epsilon0 6.6e-4.
  test('benchmark room', () => {
    const b = valueOf(
      benchmarkRoomBoundary({
        height: 3,
        inlet: 0.056,
        outlet: 0.16,
        length: 3,
        reynolds: 5000,
        viscosity: 15.3e-6,
        turbulenceIntensity: 0.04,
      }),
    );
    expect(b.inletVelocity).toBeCloseTo(0.455, 3);
    expect(b.turbulentEnergy).toBeCloseTo(4.98e-4, 6);
    expect(b.dissipation).toBeCloseTo(6.6e-4, 5);
  });
});
