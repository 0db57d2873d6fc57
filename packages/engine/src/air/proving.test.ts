import { describe, expect, test } from 'vitest';
import { type Outcome, valueOf } from '../floor/index.js';
import {
  ageFromExponentialDecay,
  ageFromTracerLog,
  airExchangeEfficiency,
  coincidenceCorrected,
  coincidenceReading,
  countedConcentration,
  cubicFoot,
  cumulativeCounts,
  exhaustAge,
  federalLimit,
  hundredToOneTime,
  locationAverages,
  poissonUpperLimit,
  recoveryRate,
  roomAgeOf,
  samplingLocations,
  samplingLocations1999,
  singleSample,
  upperConfidenceLimit,
} from './index.js';
import { confidenceFactors, locationTable } from './tables.js';
import { standardDeviation } from './upper-confidence-limit.js';

const code = (outcome: Outcome<unknown>) => (outcome.ok ? 'ok' : outcome.problems[0]!.code);

describe('sampling locations', () => {
  // ISO 14644-1:2015, Annex A rests on: 95 % sure that 90 % of the sections meet the limit. Sections of 4 m2 rebuild the rows
  // from 24 to 636 m2, of 2 m2 those to 10 m2. Hypergeometric model (several secondary sources).
  const byModel = (sections: number) => {
    const bad = Math.floor(0.1 * sections) + 1;
    let chance = 1;
    let n = 0;
    while (chance > 0.05) {
      chance *= Math.max(0, (sections - bad - n) / (sections - n));
      n++;
    }
    return n;
  };
  test.each(locationTable.filter(([area]) => area >= 24 && area <= 636))('%d m2 by the model', (area, count) => {
    expect(byModel(area / 4)).toBe(count);
  });
  test.each(locationTable.filter(([area]) => area <= 10))('%d m2 by the model of small sections', (area, count) => {
    expect(byModel(area / 2)).toBe(count);
  });
  test('the first row that is not exceeded counts, and rounding adds none', () => {
    expect(valueOf(samplingLocations(2))).toBe(1);
    expect(valueOf(samplingLocations(2 + 1e-12))).toBe(1);
    expect(valueOf(samplingLocations(2.1))).toBe(2);
    expect(valueOf(samplingLocations(1000))).toBe(27);
    expect(valueOf(samplingLocations(1500))).toBe(41);
    expect(valueOf(samplingLocations1999(30))).toBe(6);
    expect(valueOf(samplingLocations1999(36))).toBe(6);
  });
});

// ISO 14644-1:2015, A.4.4, worked in the handbook of air: class 4 at 0.5 um (352 per m3) needs 56.8 L, 2.0 min at 28.3 L/min.
test('a sample holds twenty particles at the limit', () => {
  const sample = valueOf(singleSample(352, 28.3e-3 / 60));
  expect(sample.leastVolume).toBeCloseTo(0.0568, 4);
  expect(sample.time / 60).toBeCloseTo(2.0, 1);
  expect(valueOf(singleSample(3_520_000, 28.3e-3 / 60))).toMatchObject({ leastVolume: 2e-3, time: 60 });
});

test('one sample above the limit passes when the average does (A.6)', () => {
  expect(valueOf(locationAverages([[3600, 3400], [3520]], 3520))).toEqual({ averages: [3500, 3520], passes: true });
  expect(valueOf(locationAverages([[3521], [1]], 3520)).passes).toBe(false);
});

describe('upper confidence limit of 1999', () => {
  /** Density of Student's distribution integrated by Simpson's rule; the tables give its 95 % point. */
  const cumulative = (t: number, df: number) => {
    const gamma = (x: number): number => (x === 0.5 ? Math.sqrt(Math.PI) : x === 1 ? 1 : (x - 1) * gamma(x - 1));
    const norm = gamma((df + 1) / 2) / (Math.sqrt(df * Math.PI) * gamma(df / 2));
    const density = (x: number) => norm * (1 + (x * x) / df) ** (-(df + 1) / 2);
    const steps = 4000;
    const h = t / steps;
    let sum = density(0) + density(t);
    for (let i = 1; i < steps; i++) sum += (i % 2 === 1 ? 4 : 2) * density(i * h);
    return 0.5 + (sum * h) / 3;
  };
  test.each(Object.entries(confidenceFactors))('factor for %s locations', (locations, { printed, exact }) => {
    expect(cumulative(exact, Number(locations) - 1)).toBeCloseTo(0.95, 6);
    expect(Math.abs(printed - exact)).toBeLessThan(0.0551);
  });
  test('two passing averages can still fail the limit (worked: 18 000 and 24 000 give 39 900)', () => {
    expect(valueOf(upperConfidenceLimit([18_000, 24_000])).limit).toBeCloseTo(39_900, 6);
  });
  test('it is for 2 to 9 locations', () => {
    expect(code(upperConfidenceLimit([1]))).toBe('air/ucl-locations');
    expect(code(upperConfidenceLimit(Array.from({ length: 10 }, () => 1)))).toBe('air/ucl-locations');
    expect(code(standardDeviation([1]))).toBe('air/too-few');
  });
});

describe('recovery', () => {
  // ISO 14644-3, worked in the handbook of air: 1.2e6 to 3.0e4 in 240 s is 55.3 per hour; 0.0150 1/s gives 307 s.
  test('rate and 100:1 time', () => {
    expect(valueOf(recoveryRate(1.2e6, 3e4, 240)) * 3600).toBeCloseTo(55.3, 1);
    expect(valueOf(hundredToOneTime(0.015))).toBeCloseTo(307, 0);
  });
  test('a rising log has no rate', () => {
    expect(code(recoveryRate(1e4, 2e4, 60))).toBe('air/not-falling');
  });
});

describe('age of air', () => {
  test('piston flow has efficiency 1, mixing 0.5 (Roulet, eq. 3.12)', () => {
    const nominal = valueOf(exhaustAge(24, 0.4));
    expect(nominal).toBeCloseTo(60, 12);
    expect(valueOf(airExchangeEfficiency(nominal, roomAgeOf.piston(nominal)))).toBe(1);
    expect(valueOf(airExchangeEfficiency(nominal, roomAgeOf.mixing(nominal)))).toBe(0.5);
  });
  test('the log of an exponential decay gives its time constant', () => {
    const log = Array.from({ length: 3001 }, (_, i) => ({ time: i, value: 1e6 * Math.exp(-i / 150) }));
    const found = valueOf(ageFromTracerLog(log));
    const exact = valueOf(ageFromExponentialDecay(150));
    expect(found.exhaust / exact.exhaust).toBeCloseTo(1, 4);
    expect(found.room / exact.room).toBeCloseTo(1, 3);
  });
  test('a log whose times do not rise is refused', () => {
    const log = [0, 10, 10].map((time) => ({ time, value: 1 }));
    expect(code(ageFromTracerLog(log))).toBe('air/not-positive');
    expect(code(ageFromTracerLog([]))).toBe('air/too-few');
  });
});

describe('counters', () => {
  // Tables of chi-square, 95 %: 5.991 (2 degrees of freedom), 9.488 (4), 26.296 (16), 124.342 (100).
  test.each([
    [0, 5.991],
    [1, 9.488],
    [7, 26.296],
    [49, 124.342],
  ])('upper limit of %d counts', (n, chi) => {
    expect(valueOf(poissonUpperLimit(n)) * 2).toBeCloseTo(chi, 3);
  });
  test('many counts do not underflow and come near the normal limit', () => {
    const n = 5000;
    expect(valueOf(poissonUpperLimit(n))).toBeCloseTo(n + 1.645 * Math.sqrt(n) + 1.6, -1);
  });
  test('counts between sizes add up from the top', () => {
    expect(valueOf(cumulativeCounts([5200, 840, 156, 4]))).toEqual([6200, 1000, 160, 4]);
  });
  test('coincidence is undone on the rising branch', () => {
    const counter = { flow: 4.7e-4, pulseTime: 1e-5 };
    for (const share of [1e-3, 0.1, 0.5, 0.95]) {
      const n = share / (counter.flow * counter.pulseTime);
      const { indicated, lost } = valueOf(coincidenceReading(counter, n));
      expect(lost).toBeCloseTo(1 - Math.exp(-share), 12);
      expect(valueOf(coincidenceCorrected(counter, indicated)) / n).toBeCloseTo(1, 6);
    }
    expect(code(coincidenceCorrected(counter, 1e8))).toBe('air/coincidence-too-high');
  });
  test('counts are whole, and volumes above zero', () => {
    expect(code(poissonUpperLimit(1.5))).toBe('air/not-whole');
    expect(code(countedConcentration(1, 0))).toBe('air/not-positive');
    expect(code(countedConcentration(-1, 1))).toBe('air/negative');
  });
});

// Prudent Practices in the Laboratory (2011), Table 9.4; the printed figures are rounded by up to 3 %.
test.each([
  [100, 0.3, 300, 5],
  [10, 0.2, 75, 4],
  [1, 0.1, 35, 3],
  [1000, 5, 7, 6],
  [100_000, 5, 700, 8],
])('federal class %d at %d um', (federalClass, size, printed, iso) => {
  const limit = valueOf(federalLimit(federalClass, size * 1e-6));
  expect(limit.printedPerCubicFoot).toBe(printed);
  expect(Math.abs(limit.perCubicFoot / printed - 1)).toBeLessThan(0.11);
  expect(limit.isoClass).toBe(iso);
  expect(limit.perCubicMetre).toBeCloseTo(limit.perCubicFoot / 0.0283168466, 0);
});
test('a federal class beside the table is refused', () => {
  expect(code(federalLimit(500, 0.5e-6))).toBe('air/fs209-class');
  expect(cubicFoot).toBeCloseTo(0.0283168466, 10);
});
