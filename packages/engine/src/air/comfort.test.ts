import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Outcome, valueOf } from '../floor/index.js';
import {
  airRefractiveIndex,
  beamBending,
  endlessStripIlluminance,
  expansionDrift,
  largestLightGap,
  lightAttenuation,
  lightThroughGap,
  maintainedIlluminance,
  meanIlluminance,
  pointIlluminance,
  roomConstant,
  roomSoundLevel,
  soundLevelAt,
  soundLevelSum,
  soundLevelWithout,
  stripIlluminance,
  stripsNeeded,
  temperatureRise,
  temperatureRiseAfter,
  warmUpTimeConstant,
} from './index.js';

const code = (outcome: Outcome<unknown>) => (outcome.ok ? 'ok' : outcome.problems[0]!.code);

describe('sound', () => {
  // Handbook of air, section 9: four of 52 dB make 58.0; Lw 63, Q 2, 1.5 m, 120 m2, 0.15: 57.1 dB.
  test('worked figures', () => {
    expect(valueOf(soundLevelSum([52, 52, 52, 52]))).toBeCloseTo(58.0, 1);
    expect(valueOf(roomSoundLevel(63, 2, 1.5, valueOf(roomConstant(120, 0.15))))).toBeCloseTo(57.1, 1);
  });
  test('in a room without echo half space is Lw - 20 lg r - 8', () => {
    expect(valueOf(roomSoundLevel(60, 2, 3, 1e12))).toBeCloseTo(60 - 20 * Math.log10(3) - 8, 1);
  });
  test('twice the distance is 6 dB less, twice the sources 3 dB more', () => {
    expect(valueOf(soundLevelAt(60, 1, 2))).toBeCloseTo(60 - 20 * Math.log10(2), 12);
    expect(valueOf(soundLevelSum([50, 50]))).toBeCloseTo(50 + 10 * Math.log10(2), 12);
  });
  test('background is taken off and put back', () => {
    fc.assert(
      fc.property(fc.double({ min: 3.01, max: 40, noNaN: true }), (above) => {
        const alone = valueOf(soundLevelWithout(50 + above, 50));
        expect(valueOf(soundLevelSum([alone, 50]))).toBeCloseTo(50 + above, 9);
      }),
      { seed: 5 },
    );
    expect(code(soundLevelWithout(52, 50))).toBe('air/background-too-loud');
  });
  test('a room that absorbs all or nothing has no room constant', () => {
    expect(code(roomConstant(120, 1))).toBe('air/absorption');
    expect(code(roomConstant(120, 0))).toBe('air/absorption');
    expect(code(soundLevelSum([]))).toBe('air/too-few');
    expect(code(soundLevelSum([Number.NaN]))).toBe('air/not-finite');
  });
});

describe('heat', () => {
  // Handbook of air, section 10: 350 W in 0.9 m3/s: 0.32 K; 200 kg steel over 10 W/K: 2.7 h; 1.2 m aluminium, 0.5 K: 13.9 um.
  test('worked figures', () => {
    expect(valueOf(temperatureRise({ heat: 350, flow: 0.9 }))).toBeCloseTo(0.32, 2);
    expect(valueOf(warmUpTimeConstant({ heat: 0, flow: 0, wallConductance: 10 }, 200 * 480)) / 3600).toBeCloseTo(
      2.7,
      1,
    );
    expect(valueOf(expansionDrift(1.2, 23.1e-6, 0.5))).toBeCloseTo(13.9e-6, 7);
  });
  test('after one time constant 63 % of the rise is there', () => {
    const balance = { heat: 200, flow: 0.05, wallConductance: 6.5 };
    const tau = valueOf(warmUpTimeConstant(balance, 180_000));
    expect(valueOf(temperatureRiseAfter(balance, 180_000, tau)) / valueOf(temperatureRise(balance))).toBeCloseTo(
      1 - Math.exp(-1),
      12,
    );
  });
  test('heat that nothing carries away has no steady rise', () => {
    expect(code(temperatureRise({ heat: 100, flow: 0 }))).toBe('air/not-positive');
  });
});

describe('refractive index', () => {
  // Handbook of air, section 10: 633 nm, 20 degC, 101 325 Pa: n - 1 = 2.71799e-4, slopes -9.3e-7 per K and 2.68e-9 per Pa.
  const at = (t: number, p: number) => valueOf(airRefractiveIndex(633e-9, t, p));
  test('worked figures', () => {
    const found = at(293.15, 101_325);
    expect(found.refractivity).toBeCloseTo(2.71799e-4, 9);
    expect(found.perKelvin).toBeCloseTo(-9.3e-7, 9);
    expect(found.perPascal).toBeCloseTo(2.68e-9, 11);
  });
  test('the slopes are those of the index', () => {
    const h = 0.01;
    const slope = (at(293.15 + h, 101_325).refractivity - at(293.15 - h, 101_325).refractivity) / (2 * h);
    expect(at(293.15, 101_325).perKelvin / slope).toBeCloseTo(1, 6);
    const dp = (at(293.15, 101_335).refractivity - at(293.15, 101_315).refractivity) / 20;
    expect(at(293.15, 101_325).perPascal / dp).toBeCloseTo(1, 6);
  });
  test('outside its range it is refused', () => {
    expect(code(airRefractiveIndex(10.6e-6, 293.15, 101_325))).toBe('air/index-range');
    expect(code(airRefractiveIndex(633e-9, 600, 101_325))).toBe('air/index-range');
    expect(code(airRefractiveIndex(633e-9, 293.15, 1))).toBe('air/index-range');
  });
  // Handbook of air: 2 m, 1.5 K/m: 2.8 urad and 2.8 um.
  test('a gradient bends a beam', () => {
    const { angle, shift } = valueOf(beamBending(2, 1.5, -9.3e-7));
    expect(angle).toBeCloseTo(2.8e-6, 7);
    expect(shift).toBeCloseTo(2.8e-6, 7);
  });
});

describe('light', () => {
  const method = { flux: 2400, utilisationFactor: 0.55, maintenanceFactor: 0.8, area: 3.6 };
  // Handbook of air, section 11: 4 x 2400 lm: 1173 lx; strip of 1500 lm/m, 1.2 m, 0.9 m under it: 557 lx, endless 833 lx.
  test('worked figures', () => {
    expect(valueOf(meanIlluminance(method, 4))).toBeCloseTo(1173, 0);
    const strip = { fluxPerLength: 1500, height: 0.9, lateral: 0 };
    expect(valueOf(stripIlluminance(strip, 1.2, 0))).toBeCloseTo(557, 0);
    expect(valueOf(endlessStripIlluminance(strip))).toBeCloseTo(833, 0);
  });
  test('a strip is the sum of its points', () => {
    const strip = { fluxPerLength: 1500, height: 0.9, lateral: 0.4 };
    const n = 20_000;
    const dx = 1.2 / n;
    let sum = 0;
    for (let i = 0; i < n; i++) {
      const x = -0.6 + (i + 0.5) * dx - 0.25;
      const r2 = x * x + 0.9 ** 2 + 0.4 ** 2;
      sum += ((1500 / Math.PI) * dx * 0.9 ** 2) / r2 ** 2;
    }
    expect(valueOf(stripIlluminance(strip, 1.2, 0.25)) / sum).toBeCloseTo(1, 8);
  });
  test('all light of an endless strip falls on the plane', () => {
    let flux = 0;
    for (let y = -500; y < 500; y += 0.02) {
      flux += valueOf(endlessStripIlluminance({ fluxPerLength: 1500, height: 0.9, lateral: y + 0.01 })) * 0.02;
    }
    expect(flux / 1500).toBeCloseTo(1, 4);
  });
  test('straight under a point source the square law holds', () => {
    expect(valueOf(pointIlluminance(300, 2, 0))).toBeCloseTo(75, 12);
  });
  test('the strips needed reach the level, one less does not', () => {
    fc.assert(
      fc.property(fc.double({ min: 50, max: 5000, noNaN: true }), (target) => {
        const n = valueOf(stripsNeeded(method, target));
        expect(valueOf(meanIlluminance(method, n))).toBeGreaterThanOrEqual(target * (1 - 1e-8));
        expect(valueOf(meanIlluminance(method, n - 1))).toBeLessThan(target);
      }),
      { seed: 6 },
    );
  });
  // EN 12464-1 (from memory): laboratories 500 lx.
  test('levels by task', () => {
    expect(valueOf(maintainedIlluminance('laboratory, general'))).toBe(500);
    expect(code(maintainedIlluminance('ballroom'))).toBe('air/light-task');
    expect(code(maintainedIlluminance('toString'))).toBe('air/light-task');
  });
  // Handbook of air, section 11: 500 lx to 0.01 lx: 5e4, OD 4.7; 400 lx, 30 cm2, 60 m2, 0.5: 0.04 lx.
  test('light-tightness', () => {
    const { ratio, opticalDensity } = valueOf(lightAttenuation(500, 0.01));
    expect(ratio).toBeCloseTo(5e4, 6);
    expect(opticalDensity).toBeCloseTo(4.7, 1);
    const space = { outside: 400, surface: 60, reflectance: 0.5 };
    expect(valueOf(lightThroughGap(space, 0.003))).toBeCloseTo(0.04, 12);
    expect(valueOf(largestLightGap(space, 0.04))).toBeCloseTo(0.003, 12);
    expect(code(lightThroughGap({ ...space, reflectance: 1 }, 0.003))).toBe('air/reflectance');
  });
});
