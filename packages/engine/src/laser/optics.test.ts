import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Outcome, valueOf } from '../floor/problem.js';
import { beamDiameters } from './beam-diameter.js';
import { apertureShare, emittedEnergy, emittedPower, exposureThroughAperture, peakExposure } from './beam-exposure.js';
import { diffuseHazardDistance, diffuseIrradiance, extendedDiffuseHazardDistance } from './diffuse.js';
import { exposureLimit } from './exposure-limit.js';
import {
  hazardDistance,
  lensHazardDistance,
  multimodeFibreHazardDistance,
  singleModeFibreHazardDistance,
} from './hazard-distance.js';
import { curtainSwingAngle, openRayAngle, rayOverBarrier } from './line-of-sight.js';
import { barrierTransmission, requiredOpticalDensity } from './optical-density.js';
import { beamDiameterAt } from './propagation.js';
import { specularReflection } from './specular.js';

const codes = (outcome: Outcome<unknown>) => (outcome.ok ? [] : outcome.problems.map((p) => p.code));
const length = fc.double({ min: 1e-4, max: 0.1, noNaN: true });

describe('diameters of a Gaussian beam', () => {
  test('share of the power inside each diameter follows from its definition', () => {
    const { d63, d86, fwhm } = valueOf(beamDiameters(0.002, '1/e2'));
    const inside = (aperture: number) => valueOf(apertureShare('gaussian', d63, aperture)).share;
    expect(inside(d63)).toBeCloseTo(1 - Math.exp(-1), 12);
    expect(inside(d86)).toBeCloseTo(1 - Math.exp(-2), 12);
    expect(inside(fwhm)).toBeCloseTo(0.5, 12);
  });

  test('every convention leads back to the same beam', () => {
    fc.assert(
      fc.property(length, (d) => {
        const { d86, fwhm } = valueOf(beamDiameters(d, '1/e'));
        expect(valueOf(beamDiameters(d86, '1/e2')).d63 / d).toBeCloseTo(1, 12);
        expect(valueOf(beamDiameters(fwhm, 'fwhm')).d63 / d).toBeCloseTo(1, 12);
      }),
    );
  });

  test('what is no diameter or convention is refused', () => {
    expect(codes(beamDiameters(0, '1/e'))).toEqual(['laser/diameter']);
    expect(codes(beamDiameters(1, 'knife edge' as never))).toEqual(['laser/convention']);
    expect(codes(apertureShare('gaussian', 0, 0))).toEqual(['laser/diameter', 'laser/aperture']);
  });
});

describe('exposure', () => {
  test('through an aperture it tends to the peak for wide beams and to all power for narrow ones', () => {
    const through = (diameter: number) =>
      valueOf(exposureThroughAperture(emittedPower(1), 0.007, { profile: 'gaussian', diameter })).exposure;
    const all = valueOf(exposureThroughAperture(emittedPower(1), 0.007)).exposure;
    expect(through(1) / valueOf(peakExposure(emittedPower(1), 1)).exposure).toBeCloseTo(1, 4);
    expect(through(1e-4) / all).toBeCloseTo(1, 12);
  });

  test('the 1 mW of class 2 is the limit for 0.25 s through a 7 mm pupil (IEC 60825-1, from memory)', () => {
    const limit = valueOf(exposureLimit({ edition: 'IEC2014', organ: 'eye', wavelength: 532e-9, duration: 0.25 }));
    const perWatt = valueOf(exposureThroughAperture(emittedPower(1), 0.007)).exposure;
    expect(limit.irradiance / perWatt).toBeCloseTo(0.98e-3, 5);
  });

  test('a top hat loses only what lies outside', () => {
    expect(valueOf(apertureShare('top-hat', 0.01, 0.007)).share).toBeCloseTo(0.49, 12);
    expect(valueOf(apertureShare('top-hat', 0.005, 0.007)).share).toBe(1);
  });

  test('refusals', () => {
    expect(codes(peakExposure(emittedEnergy(0), -1))).toEqual(['laser/emission', 'laser/diameter']);
    expect(codes(exposureThroughAperture(emittedPower(1), 0))).toEqual(['laser/aperture']);
    expect(codes(exposureThroughAperture(emittedPower(1), 1, { profile: 'gaussian', diameter: 0 }))).toEqual([
      'laser/diameter',
    ]);
  });
});

describe('hazard distance', () => {
  const base = { emitted: emittedPower(0.005), limit: 25.4, diameter: 1e-3, divergence: 1e-3 };

  // OSHA Technical Manual, section III, chapter 6 (from memory): 100 W Nd:YAG, limit 16 W/m2, 2 mm, 2 mrad; printed 1410, 1.4 and 11.4 m.
  test('the three worked examples for a 100 W laser', () => {
    const yag = { emitted: emittedPower(100), limit: 16 };
    expect(valueOf(hazardDistance({ ...yag, diameter: 2e-3, divergence: 2e-3 }, 'linear')).distance).toBeCloseTo(
      1410,
      -1,
    );
    expect(valueOf(diffuseHazardDistance({ power: 100, limit: 16, reflectance: 1, angle: 0 })).distance).toBeCloseTo(
      1.4,
      1,
    );
    expect(valueOf(lensHazardDistance({ ...yag, focalLength: 0.0254, diameter: 6.3e-3 })).distance).toBeCloseTo(
      11.4,
      1,
    );
  });

  test('at the distance the exposure equals the limit', () => {
    const { distance } = valueOf(hazardDistance(base));
    const { diameter } = valueOf(beamDiameterAt({ ...base, distance }));
    expect(valueOf(peakExposure(base.emitted, diameter)).exposure).toBeCloseTo(base.limit, 9);
    const averaged = valueOf(hazardDistance(base, 'aperture', 0.007)).distance;
    const wide = valueOf(beamDiameterAt({ ...base, distance: averaged })).diameter;
    const shape = { profile: 'gaussian', diameter: wide } as const;
    expect(valueOf(exposureThroughAperture(base.emitted, 0.007, shape)).exposure).toBeCloseTo(base.limit, 9);
    const linear = valueOf(hazardDistance(base, 'linear')).distance;
    const straight = valueOf(beamDiameterAt({ ...base, distance: linear, propagation: 'linear' })).diameter;
    expect(valueOf(peakExposure(base.emitted, straight)).exposure).toBeCloseTo(base.limit, 9);
  });

  test('the linear form gives the shorter distance, averaging over the pupil a shorter one than the axis', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 100, noNaN: true }), (watts) => {
        const args = { ...base, emitted: emittedPower(watts) };
        const quadratic = valueOf(hazardDistance(args)).distance;
        expect(valueOf(hazardDistance(args, 'linear')).distance).toBeLessThanOrEqual(quadratic);
        expect(valueOf(hazardDistance(args, 'aperture', 0.007)).distance).toBeLessThanOrEqual(quadratic);
      }),
    );
  });

  test('a beam below its limit has distance 0; one that does not widen has none', () => {
    expect(valueOf(hazardDistance({ ...base, emitted: emittedPower(1e-6) })).distance).toBe(0);
    expect(valueOf(hazardDistance({ ...base, emitted: emittedPower(9e-4) }, 'aperture', 0.007)).distance).toBe(0);
    expect(codes(hazardDistance({ ...base, divergence: 0 }))).toEqual(['laser/no-divergence']);
  });

  test('a waist downstream is where the beam is smallest', () => {
    const at = (distance: number) =>
      valueOf(beamDiameterAt({ diameter: 1e-3, divergence: 1e-2, distance, waistDistance: 2 })).diameter;
    expect(at(2)).toBe(1e-3);
    expect(at(0)).toBeCloseTo(at(4), 12);
    expect(at(3)).toBeCloseTo(Math.hypot(1e-3, 1e-2), 12);
  });

  // ANSI Z136.2 (from memory) and Gaussian optics: divergence of a mode is 2 sqrt(2) lambda / (pi w) at 1/e.
  test('fibres', () => {
    const multimode = multimodeFibreHazardDistance({
      emitted: emittedPower(Math.PI),
      limit: 1,
      numericalAperture: 0.17,
    });
    expect(valueOf(multimode).distance).toBeCloseTo(10, 9);
    const args = { emitted: emittedPower(0.5), limit: 1000, modeFieldDiameter: 10.4e-6, wavelength: 1550e-9 };
    const divergence = (2 * Math.SQRT2 * 1550e-9) / (Math.PI * 10.4e-6);
    expect(valueOf(singleModeFibreHazardDistance(args)).distance).toBeCloseTo(
      Math.sqrt((4 * 0.5) / (Math.PI * 1000)) / divergence,
      9,
    );
  });

  test('refusals', () => {
    expect(codes(hazardDistance({ ...base, limit: 0, diameter: 0, divergence: -1 }))).toEqual([
      'laser/limit',
      'laser/diameter',
      'laser/negative',
    ]);
    expect(codes(hazardDistance(base, 'aperture'))).toEqual(['laser/aperture']);
    const fibre = { emitted: emittedPower(0), limit: 1, numericalAperture: 2 };
    expect(codes(multimodeFibreHazardDistance(fibre))).toEqual(['laser/emission', 'laser/numerical-aperture']);
    const mode = { emitted: emittedPower(1), limit: 1, modeFieldDiameter: 0, wavelength: 0 };
    expect(codes(singleModeFibreHazardDistance(mode))).toEqual(['laser/mode-field', 'laser/wavelength']);
    const lens = { emitted: emittedPower(1), limit: 1, focalLength: 0, diameter: 0 };
    expect(codes(lensHazardDistance(lens))).toEqual(['laser/focal-length', 'laser/diameter']);
    expect(codes(beamDiameterAt({ diameter: 0, divergence: -1, distance: -1 }))).toEqual([
      'laser/diameter',
      'laser/negative',
      'laser/negative',
    ]);
  });
});

describe('diffuse reflection', () => {
  const spot = { power: 500, reflectance: 1, angle: 0 };

  test("Lambert's law keeps the energy: the hemisphere collects rho P", () => {
    const rings = 2000;
    const step = Math.PI / 2 / rings;
    let collected = 0;
    for (let i = 0; i < rings; i++) {
      const angle = (i + 0.5) * step;
      const { irradiance } = valueOf(diffuseIrradiance({ power: 2, reflectance: 0.9, angle, distance: 1 }));
      collected += irradiance * 2 * Math.PI * Math.sin(angle) * step;
    }
    expect(collected).toBeCloseTo(1.8, 5);
  });

  test('a large spot tends to the point far away and stays finite near it', () => {
    const disc = (distance: number) => valueOf(diffuseIrradiance({ ...spot, distance, spotDiameter: 0.1 })).irradiance;
    const point = valueOf(diffuseIrradiance({ ...spot, distance: 10 })).irradiance;
    expect(disc(10) / point).toBeCloseTo(1, 4);
    expect(disc(1e-6)).toBeLessThanOrEqual(500 / (Math.PI * 0.05 ** 2));
  });

  test('credit for the size of the spot: exposure and limit agree at the distance found', () => {
    const args = { ...spot, edition: 'IEC2014', wavelength: 532e-9, duration: 0.25, spotDiameter: 0.01 } as const;
    const found = valueOf(extendedDiffuseHazardDistance(args));
    // Closed form for alpha below alpha_max: r = P alpha_min / (pi MPE D), in mrad.
    const mpe = 18 * 0.25 ** -0.25;
    expect(found.distance).toBeCloseTo((500 * 1.5) / (Math.PI * mpe * 1000 * 0.01), 9);
    expect(found.sourceAngle).toBeCloseTo(0.01 / found.distance, 9);
    expect(found.distance).toBeLessThan(found.withoutCredit);
  });

  test('a spot that looks like a point earns no credit', () => {
    const args = { ...spot, edition: 'EU2006', wavelength: 1064e-9, duration: 100, spotDiameter: 1e-3 } as const;
    const found = valueOf(extendedDiffuseHazardDistance(args));
    expect(found.distance).toBe(found.withoutCredit);
  });

  test('a spot seen aslant uses the mean of both axes', () => {
    const args = {
      ...spot,
      angle: 1,
      edition: 'IEC2014',
      wavelength: 532e-9,
      duration: 0.25,
      spotDiameter: 0.02,
    } as const;
    const found = valueOf(extendedDiffuseHazardDistance(args));
    expect(found.sourceAngle).toBeCloseTo((0.02 * (1 + Math.cos(1))) / 2 / found.distance, 9);
  });

  test('refusals', () => {
    expect(codes(diffuseIrradiance({ power: 0, reflectance: 2, angle: 2, distance: 0 }))).toEqual([
      'laser/emission',
      'laser/reflectance',
      'laser/angle-range',
      'laser/distance',
    ]);
    expect(codes(diffuseIrradiance({ ...spot, angle: 0.5, distance: 1, spotDiameter: 0 }))).toEqual([
      'laser/spot',
      'laser/angle-range',
    ]);
    expect(codes(diffuseHazardDistance({ ...spot, limit: 0 }))).toEqual(['laser/limit']);
    const extended = { ...spot, edition: 'IEC2014', wavelength: 532e-9, duration: 0.25, spotDiameter: 0.01 } as const;
    expect(codes(extendedDiffuseHazardDistance({ ...extended, wavelength: 10.6e-6 }))).toEqual([
      'laser/no-extended-credit',
    ]);
    expect(codes(extendedDiffuseHazardDistance({ ...extended, power: 1e-3 }))).toEqual([
      'laser/nearer-than-eye-focuses',
    ]);
    expect(codes(extendedDiffuseHazardDistance({ ...extended, duration: 0 }))).toEqual(['laser/duration']);
    expect(codes(extendedDiffuseHazardDistance({ ...extended, spotDiameter: 0 }))).toEqual(['laser/spot']);
  });
});

describe('glass, filters, geometry', () => {
  // Fresnel: ((1.5 - 1) / (1.5 + 1))^2 = 4 % a face.
  test('glass', () => {
    expect(valueOf(specularReflection({ power: 2, refractiveIndex: 1.5 }))).toMatchObject({
      reflectance: expect.closeTo(0.04, 12),
      power: expect.closeTo(0.08, 12),
    });
    expect(valueOf(specularReflection({ power: 1, refractiveIndex: 1.5, surfaces: 2 })).reflectance).toBeCloseTo(
      0.08,
      12,
    );
    expect(codes(specularReflection({ power: 0, refractiveIndex: 0.5, surfaces: 0.5, angle: 1 }))).toEqual([
      'laser/emission',
      'laser/refractive-index',
      'laser/surfaces',
      'laser/oblique',
    ]);
  });

  // Public course on laser safety (read): 12.5 J/cm2 against 5e-6 J/cm2 asks for OD 6.4.
  test('optical density, and what it lets through is the limit', () => {
    const { opticalDensity } = valueOf(requiredOpticalDensity(125_000, 0.05, 'J/m2'));
    expect(opticalDensity).toBeCloseTo(6.4, 2);
    const through = valueOf(barrierTransmission({ irradiance: 125_000, opticalDensity, limit: 0.05 }));
    expect(through.transmitted).toBeCloseTo(0.05, 12);
    expect(valueOf(requiredOpticalDensity(1, 10, 'W/m2')).opticalDensity).toBe(0);
    expect(valueOf(barrierTransmission({ irradiance: 2e5, opticalDensity: 5, limit: 10 })).adequate).toBe(true);
    expect(codes(requiredOpticalDensity(0, 0, 'W/m2'))).toEqual(['laser/exposure', 'laser/limit']);
    expect(codes(barrierTransmission({ irradiance: 0, opticalDensity: -1, limit: 0 }))).toEqual([
      'laser/exposure',
      'laser/limit',
      'laser/negative',
    ]);
  });

  test('a ray over a barrier', () => {
    const sight = { sourceHeight: 1, eyeHeight: 1.7, barrierDistance: 1.5, eyeDistance: 3, barrierTop: 2 };
    expect(valueOf(rayOverBarrier(sight))).toMatchObject({ rayHeight: expect.closeTo(1.35, 12), visible: false });
    expect(valueOf(rayOverBarrier({ ...sight, barrierTop: 1.3 })).visible).toBe(true);
    expect(codes(rayOverBarrier({ ...sight, eyeDistance: 1 }))).toEqual(['laser/eye-before-barrier']);
    expect(codes(rayOverBarrier({ ...sight, eyeHeight: 0, barrierDistance: 0 }))).toEqual([
      'laser/height',
      'laser/distance',
    ]);
  });

  // Statics: a cloth of mass m_a in a wind of pressure q hangs where tan(delta) = q / (m_a g).
  test('open rays and swinging curtains', () => {
    expect(valueOf(openRayAngle(0.1, 0.1)).angle).toBeCloseTo(Math.PI / 4, 12);
    const swing = (massPerArea: number) =>
      (valueOf(curtainSwingAngle({ airSpeed: 1, massPerArea })).angle * 180) / Math.PI;
    expect([swing(0.3), swing(1)]).toEqual([expect.closeTo(12, 0), expect.closeTo(3.5, 1)]);
    expect(codes(openRayAngle(-1, 0))).toEqual(['laser/plane-spacing', 'laser/negative']);
    expect(codes(curtainSwingAngle({ airSpeed: -1, massPerArea: 0, gravity: 0 }))).toEqual([
      'laser/mass-per-area',
      'laser/gravity',
      'laser/negative',
    ]);
  });
});
