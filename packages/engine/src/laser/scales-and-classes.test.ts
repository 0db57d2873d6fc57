import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Outcome, valueOf } from '../floor/problem.js';
import { sumOfExposures } from './additivity.js';
import { continuousLaserClass, singlePulseLaserClass } from './laser-class.js';
import { requiredScaleNumber, scaleModeOf, scaleNumberLimit, spotFactor } from './scale-number.js';

const codes = (outcome: Outcome<unknown>) => (outcome.ok ? [] : outcome.problems.map((p) => p.code));

describe('scale numbers', () => {
  // DGUV Information 203-042, section 3, Table 1 (read): rows that agree with the rule.
  test.each([
    [10.6e-6, 19, 0.05, 3],
    [10.6e-6, 50, 0.026, 4],
    [10.6e-6, 500, 0.026, 5],
    [10.6e-6, 500, 0.08, 4],
    [1064e-9, 600, 0.04, 7],
  ])('filter for %d m, %d W, %d m wide: LB%d', (wavelength, power, diameter, n) => {
    const found = requiredScaleNumber({ standard: 'EN207', mode: 'D', wavelength, power, diameter });
    expect(valueOf(found).scaleNumber).toBe(n);
  });

  test('600 W mean, 150 J, 20 ms, 4 Hz also needs I LB8 (same table)', () => {
    const pulsed = { energy: 150, pulse: 0.02, rate: 4, diameter: 0.04, countTime: 5 };
    const found = valueOf(requiredScaleNumber({ standard: 'EN207', mode: 'I', wavelength: 1064e-9, ...pulsed }));
    expect(found).toMatchObject({ scaleNumber: 8, repeatFactor: expect.closeTo(20 ** 0.25, 12) });
  });

  // Public course on laser safety, exercise 4 (read): 842 J/m2 in ultrashort pulses at 800 nm asks for M LB7.
  test('ultrashort pulses', () => {
    const args = { standard: 'EN207', mode: 'M', wavelength: 800e-9, radiantExposure: 842, pulseCount: 1 } as const;
    expect(valueOf(requiredScaleNumber(args)).scaleNumber).toBe(7);
  });

  // EN 12254:1998, table in DGUV Vorschrift 11, annex 6 (read).
  test.each([
    [6, 'D', 800, 1e6],
    [4, 'M', 1030, 1.5],
    [5, 'D', 1064, 2.5e6],
    [5, 'R', 532, 500],
    [3, 'D', 10_600, 1e6],
    [2, 'I', 10_600, 1e4],
    [3, 'D', 266, 1],
  ] as const)('AB%d, mode %s, %d nm withstands %d', (scaleNumber, mode, nm, limit) => {
    const found = valueOf(scaleNumberLimit({ standard: 'EN12254', scaleNumber, mode, wavelength: nm * 1e-9 }));
    expect(found.limit / limit).toBeCloseTo(1, 9);
    expect(found.transmittance).toBeCloseTo(10 ** -scaleNumber, 15);
  });

  test('the number found withstands the exposure and the next lower one does not', () => {
    const exposures = fc.double({ min: -2, max: 8, noNaN: true });
    fc.assert(
      fc.property(exposures, fc.constantFrom(266e-9, 532e-9, 1064e-9, 10.6e-6), (decade, wavelength) => {
        const args = { standard: 'EN12254', mode: 'D', wavelength, irradiance: 10 ** decade, diameter: 5e-4 } as const;
        const outcome = requiredScaleNumber(args);
        if (!outcome.ok) return;
        const { scaleNumber, corrected } = outcome.value;
        const withstands = (n: number) => valueOf(scaleNumberLimit({ ...args, scaleNumber: n })).limit;
        expect(withstands(scaleNumber) * (1 + 1e-9)).toBeGreaterThanOrEqual(corrected);
        if (scaleNumber > 1) expect(withstands(scaleNumber - 1)).toBeLessThan(corrected);
      }),
    );
  });

  // DGUV Information 203-042, annex 12 (read): F = (d63/mm)^1.7, 100 above 15 mm.
  test('spot factor', () => {
    const factor = (diameter: number, irradiance = 1e6) =>
      valueOf(spotFactor({ irradiance, nm: 1064, diameter })).result;
    expect([factor(1e-3), factor(0.01), factor(0.02), factor(5e-4)]).toEqual([1, expect.closeTo(10 ** 1.7, 9), 100, 1]);
    expect(factor(0.01, 1e4)).toBe(1);
    expect(valueOf(spotFactor({ irradiance: 1e6, nm: 266 })).result).toBe(1);
    expect(codes(spotFactor({ irradiance: 1e6, nm: 1064 }))).toEqual(['laser/diameter']);
  });

  test('pulses closer than T_i are summed first', () => {
    const oscillator = { energy: 1e-8, pulse: 1e-13, rate: 80e6, diameter: 1e-3, countTime: 5 };
    const found = valueOf(requiredScaleNumber({ standard: 'EN207', mode: 'M', wavelength: 800e-9, ...oscillator }));
    const one = (4 * 1e-8) / (Math.PI * 1e-6);
    expect(found.corrected / (one * 400 * 1e6 ** 0.25)).toBeCloseTo(1, 9);
  });

  test('outside 315 to 1400 nm ultrashort pulses are judged by peak power', () => {
    const args = { standard: 'EN207', mode: 'M', wavelength: 10.6e-6, radiantExposure: 1, pulse: 1e-12 } as const;
    expect(valueOf(requiredScaleNumber(args))).toMatchObject({ corrected: 1e12, unit: 'W/m2', scaleNumber: 1 });
    const { pulse: _, ...without } = args;
    expect(codes(requiredScaleNumber(without))).toEqual(['laser/pulse-needed']);
  });

  test('modes by pulse duration', () => {
    expect([1e-13, 1e-9, 5e-7, 1e-6, 0.25, 1].map(scaleModeOf)).toEqual(['M', 'R', 'R', 'I', 'I', 'D']);
  });

  test('refusals', () => {
    const args = { standard: 'EN207', mode: 'D', wavelength: 532e-9 } as const;
    expect(codes(requiredScaleNumber({ ...args, irradiance: 1e12, diameter: 1e-3 }))).toEqual(['laser/beyond-scale']);
    expect(codes(requiredScaleNumber({ ...args, irradiance: -1 }))).toEqual(['laser/exposure']);
    expect(codes(requiredScaleNumber({ ...args, power: 1 }))).toEqual(['laser/diameter']);
    expect(codes(requiredScaleNumber({ ...args, wavelength: 1 }))).toEqual(['laser/wavelength-range']);
    const train = { ...args, mode: 'R', radiantExposure: 1, rate: 100, pulse: 1e-8 } as const;
    expect(codes(requiredScaleNumber(train))).toEqual(['laser/count-needed']);
    expect(codes(scaleNumberLimit({ ...args, scaleNumber: 11 }))).toEqual(['laser/scale-number']);
    expect(codes(scaleNumberLimit({ ...args, scaleNumber: 1.5, wavelength: 0 }))).toEqual([
      'laser/wavelength-range',
      'laser/scale-number',
    ]);
  });
});

describe('classes of a continuous laser (IEC 60825-1:2014, from memory; powers also in public class tables)', () => {
  const args = { edition: 'IEC2014', wavelength: 635e-9, diameter: 1e-3, divergence: 5e-4 } as const;
  const classOf = (nm: number, watts: number, diameter = 1e-3, divergence = 5e-4) =>
    valueOf(continuousLaserClass({ ...args, wavelength: nm * 1e-9, diameter, divergence }, watts));

  test.each([
    [633, 3e-4, '1'],
    [635, 9e-4, '2'],
    [532, 4.5e-3, '3R'],
    [532, 0.05, '3B'],
    [532, 0.6, '4'],
    [808, 1, '4'],
    [1064, 1e-3, '1'],
    [1550, 8e-3, '1'],
    [1550, 0.03, '3R'],
    [266, 1e-3, '3B'],
    [266, 2e-3, '4'],
  ])('%d nm, %d W: class %s', (nm, watts, expected) => {
    expect(classOf(nm, watts).class).toBe(expected);
  });

  test('39 uW in the blue and 0.39 mW in the red are the limits of class 1', () => {
    expect(classOf(420, 1e-5).limits.one).toBeCloseTo(3.9e-5, 12);
    expect(classOf(633, 1e-5).limits.one).toBeCloseTo(3.9e-4, 12);
    expect(classOf(1064, 1e-5).limits.one).toBeCloseTo(1.95e-3, 12);
    expect(classOf(1310, 1e-5).limits.one).toBe(0.5);
  });

  test('a wide collimated beam is harmless until a telescope collects it', () => {
    expect(classOf(850, 0.005, 0.04, 0)).toMatchObject({
      class: '1M',
      naked: expect.closeTo(0.005 * (1 - Math.exp(-((7 / 40) ** 2))), 12),
      telescope: expect.closeTo(0.005 * (1 - Math.exp(-((50 / 40) ** 2))), 12),
    });
    expect(classOf(635, 0.01, 0.03, 0).class).toBe('2M');
  });

  test('more power never gives a lower class', () => {
    const order = ['1', '1M', '2', '2M', '3R', '3B', '4'];
    const logPower = fc.double({ min: -6, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom(266, 355, 450, 532, 808, 1064, 1550, 10_600), logPower, (nm, p) => {
        const at = (watts: number) => order.indexOf(classOf(nm, watts).class);
        expect(at(10 ** p * 1.5)).toBeGreaterThanOrEqual(at(10 ** p));
      }),
    );
  });

  test('refusals', () => {
    expect(codes(continuousLaserClass({ ...args, edition: 'EU2006' }, 1))).toEqual(['laser/class-edition']);
    expect(codes(continuousLaserClass({ ...args, wavelength: 0, diameter: 0, divergence: -1 }, 0))).toEqual([
      'laser/emission',
      'laser/diameter',
      'laser/wavelength-range',
      'laser/negative',
    ]);
    expect(codes(singlePulseLaserClass(args, 1, 1))).toEqual(['laser/pulse']);
    expect(codes(singlePulseLaserClass(args, 1, 0))).toEqual(['laser/pulse']);
  });
});

describe('class of one pulse (IEC 60825-1:2014, from memory)', () => {
  const args = { edition: 'IEC2014', wavelength: 1064e-9, diameter: 3e-3, divergence: 5e-4 } as const;
  test.each([
    [1064, 5e-7, 1e-8, '1'],
    [1064, 2e-6, 1e-8, '3R'],
    [1064, 1e-3, 1e-8, '3B'],
    [532, 0.05, 8e-9, '4'],
    [10_600, 0.2, 1e-6, '4'],
  ])('%d nm, %d J in %d s: class %s', (nm, joules, pulse, expected) => {
    const found = singlePulseLaserClass({ ...args, wavelength: nm * 1e-9 }, joules, pulse, 'all energy in aperture');
    expect(valueOf(found).class).toBe(expected);
  });
  test('energies of class 1, 3R and 3B', () => {
    expect(valueOf(singlePulseLaserClass(args, 1e-6, 1e-8)).limits).toMatchObject({
      one: expect.closeTo(7.7e-7, 15),
      two: null,
      threeR: expect.closeTo(3.85e-6, 15),
      threeB: 0.15,
    });
    expect(valueOf(singlePulseLaserClass({ ...args, wavelength: 532e-9 }, 1e-6, 0.25)).limits.two).toBeCloseTo(
      2.5e-4,
      12,
    );
    // Below 1 ns the limit of class 3B is a power: 1.5e8 W times the pulse.
    expect(valueOf(singlePulseLaserClass(args, 1e-6, 1e-12)).limits.threeB).toBeCloseTo(1.5e-4, 12);
  });
});

describe('several wavelengths', () => {
  const iec = { edition: 'IEC2014', organ: 'eye', duration: 0.25 } as const;
  const sum = (...beams: readonly (readonly [number, number])[]) =>
    valueOf(
      sumOfExposures({ ...iec, beams: beams.map(([nm, irradiance]) => ({ wavelength: nm * 1e-9, irradiance })) }),
    );

  // IEC 60825-1:2014, Table 1 (from memory): 400 to 1400 nm add for the retina.
  test('retinal exposures add', () => {
    const expected = 10 / (18 * 0.25 ** -0.25) + 20 / (90 * 0.25 ** -0.25);
    expect(sum([532, 10], [1064, 20])).toMatchObject({ ratio: expect.closeTo(expected, 9), exceeds: false });
    expect(sum([532, 20], [1064, 40]).exceeds).toBe(true);
  });

  test('the retina and the cornea are judged apart', () => {
    const found = sum([532, 10], [10_600, 1000]);
    expect(found.groups).toHaveLength(2);
    expect(found.ratio).toBe(Math.max(...found.groups.map((g) => g.ratio)));
  });

  test('heat and photochemistry of the retina are summed apart', () => {
    const long = valueOf(
      sumOfExposures({
        ...iec,
        duration: 100,
        beams: [
          { wavelength: 450e-9, irradiance: 0.5 },
          { wavelength: 633e-9, irradiance: 5 },
        ],
      }),
    );
    expect(long.groups.map((g) => [g.group, g.ratio])).toEqual([
      ['retina, heat', expect.closeTo(0.55, 9)],
      ['retina, photochemistry', expect.closeTo(0.5, 9)],
    ]);
  });

  test('refusals', () => {
    expect(codes(sumOfExposures({ ...iec, beams: [] }))).toEqual(['laser/no-beams']);
    expect(codes(sumOfExposures({ ...iec, beams: [{ wavelength: 532e-9, irradiance: 0 }] }))).toEqual([
      'laser/exposure',
    ]);
    expect(codes(sumOfExposures({ ...iec, duration: 0, beams: [{ wavelength: 532e-9, irradiance: 1 }] }))).toEqual([
      'laser/duration',
    ]);
  });
});
