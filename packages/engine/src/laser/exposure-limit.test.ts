import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { valueOf } from '../floor/problem.js';
import { type ExposureLimitArguments, exposureLimit } from './exposure-limit.js';
import { limitingAperture } from './limiting-aperture.js';
import { areaOnlyForSkin, sourceAngleNotUsable, wavelengthOutside } from './messages.js';
import { limitByChoice } from './stricter-limit.js';
import type { Edition, Organ } from './types.js';
import { correctionFactors, photochemicalFieldOfView } from './view-factors.js';

const limit = (edition: Edition, nm: number, duration: number, more: Partial<ExposureLimitArguments> = {}) =>
  valueOf(exposureLimit({ edition, organ: 'eye', wavelength: nm * 1e-9, duration, ...more }));
const codes = (args: ExposureLimitArguments) => {
  const outcome = exposureLimit(args);
  return outcome.ok ? [] : outcome.problems.map((p) => p.code);
};

// Directive 2006/25/EC, Annex II, Tables 2.2 and 2.4 to 2.6, read in a national transposition; each value follows by hand from one cell.
test.each([
  [310, 1, 1000],
  [305, 1e-3, 100],
  [270, 1e-6, 30],
  [532, 6e-9, 5e-3],
  [520, 2e-13, 1.5e-4],
  [905, 1e-7, 5e-3 * 10 ** 0.41],
  [1064, 1e-8, 5e-2],
  [1064, 0.25, 90 * 0.25 ** 0.75],
  [1550, 1e-6, 1e4],
  [1450, 0.1, 5600 * 0.1 ** 0.25],
  [10_600, 5e-8, 100],
])('EU2006 at %d nm for %d s', (nm, t, joules) => {
  expect(limit('EU2006', nm, t).radiantExposure / joules).toBeCloseTo(1, 9);
});

// IEC 60825-1:2014, Annex A (from memory); 25.4 W/m2 over 0.25 s and 10 W/m2 beyond 10 s are also in public class tables.
test.each([
  [532, 0.25, 25.4558],
  [633, 30_000, 10],
  [532, 6e-9, 2e-3 / 6e-9],
  [405, 100, 1],
  [473, 100, 10 ** (0.02 * 23)],
  [488, 20, 10],
  [785, 10, 10 * 10 ** 0.17],
  [1064, 10, 50],
  [1310, 100, 10_000],
  [1550, 10, 1000],
  [10_600, 1e-4, 560 / 1e-4],
])('IEC2014 at %d nm for %d s', (nm, t, irradiance) => {
  expect(limit('IEC2014', nm, t).irradiance / irradiance).toBeCloseTo(1, 5);
});

test('the two sides of the dual limit are both reported', () => {
  const blue = limit('IEC2014', 473, 100);
  expect(blue.rows.map((r) => r.row)).toEqual(['I13', 'I17']);
  expect(blue).toMatchObject({ row: 'I17', mechanism: 'photochemical', edition: 'IEC2014' });
  expect(limit('IEC2014', 515, 100)).toMatchObject({ row: 'I13', mechanism: 'retinal thermal' });
});

test('both limits meet at 500 nm and 100 s', () => {
  const [heat, blue] = limit('IEC2014', 500, 100).rows;
  expect(heat!.irradiance).toBeCloseTo(blue!.irradiance, 9);
});

describe('extended sources', () => {
  // Directive, Table 2.5: C_E = alpha^2 / (alpha_min alpha_max) beyond 100 mrad.
  test('EU2006 keeps 100 mrad, IEC2014 shrinks it with time (from memory)', () => {
    expect(limit('EU2006', 532, 1e-3, { sourceAngle: 0.05 }).factors.C6).toBeCloseTo(50 / 1.5, 9);
    expect(limit('EU2006', 532, 1e-3, { sourceAngle: 0.2 }).factors.C6).toBeCloseTo(200 ** 2 / 150, 9);
    expect(limit('IEC2014', 532, 1e-3, { sourceAngle: 0.05 }).factors.C6).toBeCloseTo((200 * Math.sqrt(1e-3)) / 1.5, 9);
    expect(limit('IEC2014', 532, 1e-4, { sourceAngle: 0.05 }).factors.C6).toBeCloseTo(5 / 1.5, 9);
  });

  test('the limit is continuous at T2', () => {
    const alpha = 0.02;
    const t2 = 10 * 10 ** (18.5 / 98.5);
    const before = limit('IEC2014', 633, t2 * 0.999_99, { sourceAngle: alpha });
    const after = limit('IEC2014', 633, t2 * 1.000_01, { sourceAngle: alpha });
    expect([before.row, after.row]).toEqual(['I14', 'I15']);
    expect(after.irradiance / before.irradiance).toBeCloseTo(1, 4);
  });

  test('a source angle outside the retinal band changes nothing', () => {
    expect(limit('IEC2014', 1550, 10, { sourceAngle: 0.05 }).irradiance).toBe(limit('IEC2014', 1550, 10).irradiance);
  });
});

describe('edges', () => {
  test('IEC2014 reads a band as a <= x < b', () => {
    expect(limit('IEC2014', 1400, 10).row).toBe('I42');
    expect(limit('IEC2014', 700, 1).row).toBe('I20');
    expect(limit('IEC2014', 532, 5e-6).row).toBe('I12');
  });

  test('EU2006 takes the stricter of two rows that meet (Table 2.2, note a)', () => {
    expect(limit('EU2006', 1400, 100).irradiance).toBeCloseTo(400, 6);
    expect(limit('EU2006', 1064, 5e-5).radiantExposure).toBeCloseTo(5e-2, 9);
    expect(limit('EU2006', 633, 10, { organ: 'skin' }).radiantExposure).toBeCloseTo(1.1e4 * 10 ** 0.25, 6);
    // Two tables, "shorter than 10 s" and "10 s and longer", share no edge.
    expect(limit('EU2006', 633, 10).radiantExposure).toBeCloseTo(100, 9);
    expect(limit('EU2006', 10_600, 10).radiantExposure).toBe(1e4);
  });

  test('the list of 1 nm steps begins at 303 nm and ends at 315 nm', () => {
    expect(limit('EU2006', 303, 1).radiantExposure).toBe(40);
    expect(limit('EU2006', 304.9, 1).radiantExposure).toBe(60);
    expect(limit('EU2006', 315, 100).radiantExposure).toBe(1e4);
  });

  // Genuine jumps of the published limits: nothing smooths them.
  test('the limit doubles at 10 ps in IEC2014 and at 1050 nm for nanoseconds in EU2006', () => {
    expect(limit('IEC2014', 532, 1e-11).radiantExposure / limit('IEC2014', 532, 0.99e-11).radiantExposure).toBeCloseTo(
      2,
    );
    const across = limit('EU2006', 1050.1, 1e-8).radiantExposure / limit('EU2006', 1049.9, 1e-8).radiantExposure;
    expect(across).toBeGreaterThan(1.9);
  });

  test('a wavelength read from text meets the edge', () => {
    expect(limit('IEC2014', 1400 * (1 + 2e-16), 10).row).toBe('I42');
  });

  test('below 0.1 ps the irradiance of 0.1 ps holds, beyond 30 000 s the limit of 30 000 s', () => {
    const short = limit('IEC2014', 800, 3.5e-14);
    expect(short.irradiance).toBeCloseTo(limit('IEC2014', 800, 1e-13).irradiance, -2);
    expect(short.steps.at(-2)!.note).toMatch(/shorter than 1e-13 s/);
    const long = limit('IEC2014', 266, 1e5);
    expect(long).toMatchObject({ duration: 30_000, radiantExposure: 30 });
    expect(long.steps.at(-2)!.note).toMatch(/longer than 30 000 s/);
  });
});

describe('skin', () => {
  // Directive, Table 2.4 (read).
  test.each([
    [532, 1e-8, 200],
    [1064, 1e-8, 1000],
    [633, 20, 40_000],
    [1064, 0.25, 1.1e4 * 5 * 0.25 ** 0.25],
  ])('%d nm for %d s', (nm, t, joules) => {
    for (const edition of ['IEC2014', 'EU2006'] as const)
      expect(limit(edition, nm, t, { organ: 'skin' }).radiantExposure / joules).toBeCloseTo(1, 9);
  });

  test('outside 400 to 1400 nm the skin has the limit of the eye', () => {
    for (const [nm, t] of [
      [266, 100],
      [355, 1e-8],
      [1550, 1],
      [10_600, 100],
    ] as const)
      for (const edition of ['IEC2014', 'EU2006'] as const)
        expect(limit(edition, nm, t, { organ: 'skin' }).radiantExposure).toBe(limit(edition, nm, t).radiantExposure);
  });

  // ICNIRP 2013 (from memory): 10/A between 0.01 and 0.1 m2.
  test.each([
    [0.005, 1000],
    [0.05, 200],
    [1, 100],
  ])('an exposed area of %d m2 lowers the far-infrared limit', (exposedArea, irradiance) => {
    expect(limit('IEC2014', 10_600, 100, { organ: 'skin', exposedArea }).irradiance).toBeCloseTo(irradiance, 9);
  });
});

const anyEdition = fc.constantFrom<Edition>('IEC2014', 'EU2006');
const anyOrgan = fc.constantFrom<Organ>('eye', 'skin');
const anyNm = fc.double({ min: Math.log10(180), max: 5.99, noNaN: true }).map((x) => 10 ** x);
const anyTime = fc.double({ min: -13, max: 4.4, noNaN: true }).map((x) => 10 ** x);

test('longer exposure never permits a higher irradiance, nor less energy beyond the known small joins', () => {
  fc.assert(
    fc.property(anyEdition, anyOrgan, anyNm, anyTime, anyTime, (edition, organ, nm, a, b) => {
      const [short, long] = [
        limit(edition, nm, Math.min(a, b), { organ }),
        limit(edition, nm, Math.max(a, b), { organ }),
      ];
      expect(long.irradiance).toBeLessThanOrEqual(short.irradiance * 1.07);
      expect(long.radiantExposure).toBeGreaterThanOrEqual(short.radiantExposure * 0.93);
    }),
  );
});

test('every wavelength and time in range has a limit, and the reported row is the smallest of those tested', () => {
  fc.assert(
    fc.property(anyEdition, anyOrgan, anyNm, anyTime, (edition, organ, nm, t) => {
      const found = limit(edition, nm, t, { organ });
      const least = Math.min(...found.rows.map((r) => r.radiantExposure));
      expect(found.radiantExposure).toBe(least);
      expect(found.rows.find((r) => r.row === found.row)!.radiantExposure).toBe(least);
      expect(found.irradiance * found.duration).toBeCloseTo(found.radiantExposure, 6);
    }),
  );
});

test('the stricter of both editions is the lower one and names it', () => {
  const args = { organ: 'eye', wavelength: 532e-9, duration: 6e-9 } as const;
  const found = valueOf(limitByChoice('stricter of both', args));
  expect(found.governing.edition).toBe('IEC2014');
  expect(found.tested).toHaveLength(2);
  expect(valueOf(limitByChoice('stricter of both', { ...args, duration: 2e-13 })).governing.edition).toBe('EU2006');
  expect(valueOf(limitByChoice('EU2006', args)).governing.edition).toBe('EU2006');
  expect(limitByChoice('stricter of both', { ...args, duration: -1 }).ok).toBe(false);
});

describe('factors', () => {
  // Directive, Table 2.5 (read).
  test('C4 and C7 of the Directive', () => {
    expect(valueOf(correctionFactors({ edition: 'EU2006', wavelength: 980e-9 })).factors.C4).toBeCloseTo(10 ** 0.56, 9);
    expect(valueOf(correctionFactors({ edition: 'EU2006', wavelength: 1190e-9 })).factors).toMatchObject({ C4: 5 });
    expect(valueOf(correctionFactors({ edition: 'EU2006', wavelength: 1300e-9 })).factors.C7).toBe(8);
  });

  test('factors exist only in their band', () => {
    const names = (wavelength: number) =>
      Object.keys(valueOf(correctionFactors({ edition: 'IEC2014', wavelength, duration: 1 })).factors).sort();
    expect(names(1550e-9)).toEqual([]);
    expect(names(310e-9)).toEqual(['C1', 'C2']);
    expect(names(532e-9)).toEqual(['C3', 'C4', 'C6', 'T2', 'alpha_max']);
  });

  test('the field of view grows between 100 s and 10 000 s', () => {
    const at = (t: number) => valueOf(photochemicalFieldOfView(t)).angle * 1000;
    expect([at(50), at(1000), at(20_000)]).toEqual([11, 1.1 * Math.sqrt(1000), 110].map((x) => expect.closeTo(x, 6)));
    expect(photochemicalFieldOfView(0).ok).toBe(false);
  });

  test('factors are refused outside the range', () => {
    const bad = correctionFactors({ edition: 'EU2006', wavelength: 100e-9, duration: 0, sourceAngle: -1 });
    expect(bad.ok ? [] : bad.problems.map((p) => p.code)).toEqual([
      'laser/duration',
      'laser/wavelength-range',
      'laser/source-angle',
    ]);
  });
});

describe('limiting aperture', () => {
  // Directive, Tables 2.2 and 2.4 (read); IEC corner of 0.35 s from memory.
  test.each([
    ['EU2006', 'eye', 1064, 10, 7],
    ['EU2006', 'eye', 10_600, 0.1, 1],
    ['EU2006', 'eye', 10_600, 1, 1.5],
    ['EU2006', 'eye', 10_600, 100, 3.5],
    ['IEC2014', 'eye', 355, 0.34, 1],
    ['IEC2014', 'eye', 2e5, 1, 11],
    ['IEC2014', 'skin', 532, 1, 3.5],
  ] as const)('%s, %s, %d nm, %d s', (edition, organ, nm, duration, mm) => {
    const found = valueOf(limitingAperture({ edition, organ, wavelength: nm * 1e-9, duration }));
    expect(found.diameter * 1000).toBeCloseTo(mm, 9);
  });
});

describe('refusals', () => {
  const good = { edition: 'IEC2014', organ: 'eye', wavelength: 532e-9, duration: 1 } as const;
  test.each([
    [{ wavelength: 179e-9 }, 'laser/wavelength-range'],
    [{ wavelength: 1e-3 }, 'laser/wavelength-range'],
    [{ wavelength: Number.NaN }, 'laser/wavelength-range'],
    [{ duration: 0 }, 'laser/duration'],
    [{ sourceAngle: 0 }, 'laser/source-angle'],
    [{ exposedArea: 0.1 }, 'laser/area-for-skin-only'],
    [{ organ: 'skin', exposedArea: -1 }, 'laser/exposed-area'],
  ] as const)('%o', (wrong, code) => {
    expect(codes({ ...good, ...wrong })).toEqual([code]);
  });

  test('messages carry value and path', () => {
    const outcome = exposureLimit({ ...good, wavelength: 179e-9 });
    expect(outcome.ok ? null : outcome.problems[0]).toEqual(wavelengthOutside(179));
    expect(wavelengthOutside(179).path).toEqual(['wavelength']);
    expect(sourceAngleNotUsable(0).path).toEqual(['sourceAngle']);
    expect(areaOnlyForSkin().path).toEqual(['exposedArea']);
    expect(limitingAperture({ ...good, duration: 0 }).ok).toBe(false);
  });
});
