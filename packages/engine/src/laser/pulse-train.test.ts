import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { valueOf } from '../floor/problem.js';
import { type PulseTrainArguments, pulseTrainLimit, pulseTrainLimitByChoice } from './pulse-train.js';

const green: PulseTrainArguments = {
  edition: 'EU2006',
  organ: 'eye',
  wavelength: 532e-9,
  pulse: 1e-8,
  rate: 20,
  duration: 0.25,
};
const train = (change: Partial<PulseTrainArguments>) => valueOf(pulseTrainLimit({ ...green, ...change }));

// Directive 2006/25/EC, Table 2.6 (read): N^-0.25 on the single pulse.
test('EU2006 multiplies the single pulse by N^-0.25', () => {
  expect(train({})).toMatchObject({ governing: 'train', train: expect.closeTo(5e-3 * 5 ** -0.25, 9) });
  const infrared = train({ wavelength: 1064e-9, pulse: 5e-9, rate: 10, duration: 10 });
  expect(infrared.perPulse).toBeCloseTo(0.05 * 100 ** -0.25, 9);
  const far = train({ wavelength: 10.6e-6, pulse: 1e-4, rate: 10, duration: 10 });
  expect(far).toMatchObject({ governing: 'average', perPulse: expect.closeTo(100, 6) });
  expect(far.train).toBeCloseTo(560 * 100 ** -0.25, 6);
});

// IEC 60825-1:2014, clause 4.3 f (from memory): C5 by pulse, count and source.
describe('C5 of IEC2014', () => {
  const iec = (change: Partial<PulseTrainArguments>) => train({ edition: 'IEC2014', ...change });
  test('is 1 up to 0.25 s of exposure and up to 600 pulses', () => {
    expect(iec({}).train).toBeCloseTo(2e-3, 12);
    expect(iec({ wavelength: 1064e-9, pulse: 5e-9, rate: 10, duration: 10 }).train).toBeCloseTo(0.02, 12);
  });
  test('falls to 5 N^-0.25 and never below 0.4', () => {
    expect(iec({ wavelength: 800e-9, pulse: 1e-13, rate: 100, duration: 10 }).train! / 1.584_893e-3).toBeCloseTo(
      5 * 1000 ** -0.25,
      5,
    );
    expect(iec({ wavelength: 1064e-9, pulse: 1e-7, rate: 5e4, duration: 10 }).train).toBeCloseTo(0.4 * 0.02, 12);
  });
  test('groups pulses that are closer than T_i', () => {
    const oscillator = iec({ wavelength: 800e-9, pulse: 1e-13, rate: 80e6, duration: 10 });
    expect(oscillator.train).toBeCloseTo((0.4 * 18 * 5e-6 ** 0.75 * 10 ** 0.2) / 400, 12);
    expect(oscillator.governing).toBe('average');
    expect(oscillator.irradiance).toBeCloseTo(10 * 10 ** 0.2, 6);
  });
  test('depends on the source for pulses longer than T_i', () => {
    const long = { wavelength: 633e-9, pulse: 0.01, rate: 5, duration: 10 };
    const single = 18 * 0.01 ** 0.75;
    expect(iec({ ...long }).train! / single).toBeCloseTo(1, 9);
    expect(iec({ ...long, sourceAngle: 0.008 }).train! / (single * (8 / 1.5))).toBeCloseTo(0.4, 9);
    expect(iec({ ...long, rate: 3, sourceAngle: 0.008 }).train! / (single * (8 / 1.5))).toBeCloseTo(30 ** -0.25, 9);
    expect(iec({ ...long, sourceAngle: 0.05 }).train! / (single * (20 / 1.5))).toBeCloseTo(50 ** -0.25, 9);
    expect(iec({ ...long, rate: 90, sourceAngle: 0.05 }).train! / (single * (20 / 1.5))).toBeCloseTo(0.2, 9);
    expect(iec({ ...long, sourceAngle: 0.15 }).train! / (single * (20 / 1.5))).toBeCloseTo(1, 9);
  });
  test('does not exist outside 400 to 1400 nm, for skin, or for long pulses', () => {
    expect(iec({ wavelength: 355e-9, rate: 50, duration: 100 })).toMatchObject({
      train: null,
      average: expect.closeTo(2, 9),
    });
    expect(iec({ wavelength: 1550e-9, rate: 1e5, duration: 10 }).train).toBeNull();
    expect(iec({ organ: 'skin' }).train).toBeNull();
    expect(iec({ pulse: 0.3, rate: 1, duration: 10 }).train).toBeNull();
  });
});

test('EU2006 sums all pulses within T_min where that covers the exposure', () => {
  const erbium = train({ wavelength: 1550e-9, pulse: 1e-8, rate: 1e5, duration: 10 });
  expect(erbium.train).toBeCloseTo(erbium.average, 9);
});

test('no rule permits more than the single pulse, and more pulses never permit more', () => {
  const exposure = { min: 1, max: 30, noNaN: true };
  fc.assert(
    fc.property(
      fc.constantFrom('IEC2014', 'EU2006'),
      fc.constantFrom(355e-9, 532e-9, 800e-9, 1064e-9, 1550e-9, 10.6e-6),
      fc.double({ min: 0, max: 6, noNaN: true }),
      fc.double(exposure),
      (edition, wavelength, decade, duration) => {
        const rate = 10 ** decade;
        const slow = train({ edition: edition as 'EU2006', wavelength, rate, duration });
        const fast = train({ edition: edition as 'EU2006', wavelength, rate: rate * 3, duration });
        expect(slow.perPulse).toBeLessThanOrEqual(slow.singlePulse);
        // Whole pulses are counted for the average: a part of one pulse may be rounded off.
        expect(fast.perPulse).toBeLessThanOrEqual(slow.perPulse * 1.2);
      },
    ),
  );
});

test('both editions: the lower limit holds', () => {
  const { edition: _, ...args } = green;
  const both = valueOf(pulseTrainLimitByChoice(['IEC2014', 'EU2006'], args));
  expect(both.governing.edition).toBe('IEC2014');
  expect(both.steps.at(-1)).toMatchObject({ symbol: 'H_stricter', result: expect.closeTo(2e-3, 12) });
  expect(valueOf(pulseTrainLimitByChoice(['EU2006'], args)).governing.edition).toBe('EU2006');
});

test.each([
  [{ pulse: 0 }, 'laser/pulse'],
  [{ rate: -1 }, 'laser/rate'],
  [{ pulse: 0.1, rate: 20 }, 'laser/pulse-longer-than-period'],
  [{ pulse: 1e-3, duration: 1e-4 }, 'laser/pulse-longer-than-exposure'],
  [{ wavelength: 1 }, 'laser/wavelength-range'],
] as const)('%o is refused', (wrong, code) => {
  const outcome = pulseTrainLimit({ ...green, ...wrong });
  expect(outcome.ok ? [] : outcome.problems.map((p) => p.code)).toContain(code);
  const { edition: _, ...args } = { ...green, ...wrong };
  expect(pulseTrainLimitByChoice(['EU2006'], args).ok).toBe(false);
});
