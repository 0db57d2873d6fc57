import { type CalculationStep, fromStep, step, val } from '../floor/calculation.js';
import { type Outcome, ok, positive, refuse } from '../floor/problem.js';
import { geometrySource } from '../floor/source.js';
import { gaussianOptics } from './beam-diameter.js';
import type { BeamProfile, Worked } from './types.js';

export interface ApertureShare extends Worked {
  /** Part of the power that passes, 0 to 1. */
  readonly share: number;
}

/**
 * Part of a beam's power that passes a centred circular aperture.
 *
 *     Gaussian: 1 - exp(-(D/d63)^2);  top hat: min(1, (D/d)^2)
 * @param profile  [-]
 * @param diameter d63 of a Gaussian beam, edge diameter of a top hat [m]
 * @param aperture D [m]
 * @returns        share [-], or `laser/diameter`, `laser/aperture`
 * Source: Gaussian beam optics (derived).
 */
export function apertureShare(profile: BeamProfile, diameter: number, aperture: number): Outcome<ApertureShare> {
  const problems = [
    ...positive('laser/diameter', 'diameter', diameter, 'm'),
    ...positive('laser/aperture', 'aperture', aperture, 'm'),
  ];
  if (problems.length > 0) return refuse(problems);
  const ratio = aperture / diameter;
  const gaussian = profile === 'gaussian';
  const share = gaussian ? -Math.expm1(-(ratio ** 2)) : Math.min(1, ratio ** 2);
  const s = step(
    'eta',
    'share of the power through the aperture',
    gaussian ? '1 - exp(-(D / d63)^2)' : 'min(1, (D / d63)^2)',
    { D: val(aperture * 1000, 'mm', 'aperture'), d63: val(diameter * 1000, 'mm', 'beam diameter') },
    share,
    '1',
    gaussianOptics,
  );
  return ok({ share, steps: [s] });
}

/** Radiation as power or as energy of one pulse: the formulas are the same, the units differ. */
export type Emitted =
  | { readonly kind: 'power'; readonly amount: number }
  | { readonly kind: 'energy'; readonly amount: number };

export const emittedPower = (watts: number): Emitted => ({ kind: 'power', amount: watts });
export const emittedEnergy = (joules: number): Emitted => ({ kind: 'energy', amount: joules });

/** Symbols and units of power (P, E) or energy (Q, H). */
export const notation = (emitted: Emitted) =>
  emitted.kind === 'power'
    ? ({ amount: 'P', amountUnit: 'W', amountName: 'power', density: 'E', unit: 'W/m2', name: 'irradiance' } as const)
    : ({
        amount: 'Q',
        amountUnit: 'J',
        amountName: 'pulse energy',
        density: 'H',
        unit: 'J/m2',
        name: 'radiant exposure',
      } as const);

export interface AreaExposure extends Worked {
  /** [W/m2] for a power, [J/m2] for an energy. */
  readonly exposure: number;
}

/**
 * Exposure averaged over an aperture: what is compared with the limit.
 *
 *     E = eta P / (pi D^2 / 4)
 * @param emitted  power [W] or energy of one pulse [J]
 * @param aperture limiting aperture D [m]
 * @param beam     profile and diameter (d63, or edge of a top hat) [m]; left out when all power falls inside the aperture
 * @returns        irradiance [W/m2] or radiant exposure [J/m2], or `laser/emission`, `laser/aperture`, `laser/diameter`
 * Source: Gaussian beam optics (derived).
 */
export function exposureThroughAperture(
  emitted: Emitted,
  aperture: number,
  beam?: { readonly profile: BeamProfile; readonly diameter: number },
): Outcome<AreaExposure> {
  const problems = [
    ...positive('laser/emission', emitted.kind, emitted.amount, notation(emitted).amountUnit),
    ...positive('laser/aperture', 'aperture', aperture, 'm'),
  ];
  if (problems.length > 0) return refuse(problems);
  const steps: CalculationStep[] = [];
  let share = 1;
  if (beam) {
    const passed = apertureShare(beam.profile, beam.diameter, aperture);
    if (!passed.ok) return passed;
    share = passed.value.share;
    steps.push(...passed.value.steps);
  }
  const n = notation(emitted);
  const exposure = (share * emitted.amount) / ((Math.PI * aperture ** 2) / 4);
  const own = {
    [n.amount]: val(emitted.amount, n.amountUnit, n.amountName),
    D: val(aperture * 1000, 'mm', 'aperture'),
  };
  const last = step(
    `${n.density}_D`,
    `${n.name} averaged over the aperture`,
    `${beam ? 'eta * ' : ''}${n.amount} / (pi * (D / 1000)^2 / 4)`,
    beam ? { eta: fromStep(steps[0]!), ...own } : own,
    exposure,
    n.unit,
    geometrySource,
    beam ? undefined : 'all power inside the aperture',
  );
  return ok({ exposure, steps: [...steps, last] });
}

/**
 * Highest exposure on the axis of a beam of given size.
 *
 *     E0 = 4 P / (pi d63^2)
 * The same formula gives the mean of a top hat from its edge diameter.
 * @param emitted  power [W] or energy of one pulse [J]
 * @param diameter d63, or edge of a top hat [m]
 * @returns        irradiance [W/m2] or radiant exposure [J/m2], or `laser/emission`, `laser/diameter`
 * Source: Gaussian beam optics (derived).
 */
export function peakExposure(emitted: Emitted, diameter: number): Outcome<AreaExposure> {
  const n = notation(emitted);
  const problems = [
    ...positive('laser/emission', emitted.kind, emitted.amount, n.amountUnit),
    ...positive('laser/diameter', 'diameter', diameter, 'm'),
  ];
  if (problems.length > 0) return refuse(problems);
  const exposure = (4 * emitted.amount) / (Math.PI * diameter ** 2);
  const s = step(
    n.density,
    `${n.name} on the axis`,
    `4 * ${n.amount} / (pi * (d63 / 1000)^2)`,
    {
      [n.amount]: val(emitted.amount, n.amountUnit, n.amountName),
      d63: val(diameter * 1000, 'mm', 'beam diameter at 1/e'),
    },
    exposure,
    n.unit,
    gaussianOptics,
  );
  return ok({ exposure, steps: [s] });
}
