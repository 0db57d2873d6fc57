import { step, val } from '../floor/calculation.js';
import { type Outcome, ok, type Problem, positive, refuse } from '../floor/problem.js';
import { source } from '../floor/source.js';
import { gaussianOptics } from './beam-diameter.js';
import { type Emitted, notation } from './beam-exposure.js';
import { doesNotWiden, negative, numericalApertureOutside } from './messages.js';
import type { Worked } from './types.js';

export interface HazardDistance extends Worked {
  /** Beyond it the exposure is below the limit [m]; 0 when it is below the limit everywhere. */
  readonly distance: number;
}

/** `linear` and `quadratic` take the irradiance on the axis; `aperture` averages it over the limiting aperture. */
export type HazardModel = 'linear' | 'quadratic' | 'aperture';

export interface HazardDistanceArguments {
  readonly emitted: Emitted;
  /** Exposure limit [W/m2] for a power, [J/m2] for an energy. */
  readonly limit: number;
  /** d63 at the exit [m]. */
  readonly diameter: number;
  /** Full divergence at 1/e [rad]. */
  readonly divergence: number;
}

const amountProblems = (emitted: Emitted, limit: number): Problem[] => {
  const n = notation(emitted);
  return [
    ...positive('laser/emission', emitted.kind, emitted.amount, n.amountUnit),
    ...positive('laser/limit', 'limit', limit, n.unit),
  ];
};
const amountValues = (emitted: Emitted, limit: number) => {
  const n = notation(emitted);
  return {
    [n.amount]: val(emitted.amount, n.amountUnit, n.amountName),
    MPE: val(limit, n.unit, 'exposure limit'),
  };
};

/**
 * Distance beyond which a free beam is under the exposure limit (nominal ocular hazard distance when the limit is that of the eye).
 *
 *     linear:    (sqrt(4 P / (pi MPE)) - a) / phi
 *     quadratic: sqrt(4 P / (pi MPE) - a^2) / phi
 *     aperture:  sqrt(D^2 / -ln(1 - MPE pi D^2 / (4 P)) - a^2) / phi, 0 when MPE pi D^2 / 4 >= P
 * Quadratic and aperture take the waist at the exit; loss in air is left out. Binoculars and telescopes lengthen it.
 * The appointed laser safety officer decides on the hazard area.
 * @param args     power or energy, limit, d63 [m], divergence [rad]
 * @param model    [-]
 * @param aperture limiting aperture D, only for the aperture model [m]
 * @returns        distance [m], or `laser/emission`, `laser/limit`, `laser/diameter`, `laser/negative`, `laser/aperture`,
 *                 `laser/no-divergence` when the beam starts above the limit and does not widen
 * Source: Gaussian beam optics (derived).
 */
export function hazardDistance(
  args: HazardDistanceArguments,
  model: HazardModel = 'quadratic',
  aperture?: number,
): Outcome<HazardDistance> {
  const { emitted, limit, diameter: a, divergence: phi } = args;
  const problems = [...amountProblems(emitted, limit), ...positive('laser/diameter', 'diameter', a, 'm')];
  if (!(phi >= 0)) problems.push(negative('divergence', phi, 'rad'));
  if (model === 'aperture') problems.push(...positive('laser/aperture', 'aperture', aperture ?? Number.NaN, 'm'));
  if (problems.length > 0) return refuse(problems);
  const wide = widthAtLimit(args, model, aperture);
  if (phi === 0 && wide > a) return refuse([doesNotWiden()]);
  const within = wide <= a;
  const reach = model === 'linear' ? wide - a : Math.sqrt(Math.max(0, wide ** 2 - a ** 2));
  const distance = within ? 0 : reach / phi;
  return ok({ distance, steps: [distanceStep(args, model, aperture, within, distance)] });
}

/** d63 at which the exposure has fallen to the limit; 0 when even the smallest beam is below it. */
function widthAtLimit({ emitted, limit }: HazardDistanceArguments, model: HazardModel, aperture = 0): number {
  if (model !== 'aperture') return Math.sqrt((4 * emitted.amount) / (Math.PI * limit));
  const share = (limit * Math.PI * aperture ** 2) / (4 * emitted.amount);
  return share >= 1 ? 0 : aperture / Math.sqrt(-Math.log1p(-share));
}

function distanceStep(
  { emitted, limit, diameter, divergence }: HazardDistanceArguments,
  model: HazardModel,
  aperture: number | undefined,
  within: boolean,
  distance: number,
) {
  const { amount } = notation(emitted);
  const name = 'hazard distance';
  // Where the formula has no value (no widening, or all power through the aperture is below the limit) the result needs no arithmetic.
  const plain =
    divergence === 0 ||
    (model === 'aperture' && widthAtLimit({ emitted, limit, diameter, divergence }, model, aperture) === 0);
  const note = within ? 'below the limit already where the beam leaves' : undefined;
  if (within && plain) return step('r_haz', name, '0', {}, 0, 'm', gaussianOptics, note);
  const fallen =
    model === 'aperture'
      ? `(D / 1000)^2 / (-log(1 - MPE * pi * (D / 1000)^2 / (4 * ${amount})))`
      : `4 * ${amount} / (pi * MPE)`;
  const across = model === 'linear' ? `max(0, sqrt(${fallen}) - a / 1000)` : `sqrt(max(0, ${fallen} - (a / 1000)^2))`;
  return step(
    'r_haz',
    name,
    `${across} / (phi / 1000)`,
    {
      ...amountValues(emitted, limit),
      a: val(diameter * 1000, 'mm', 'beam diameter at 1/e'),
      phi: val(divergence * 1000, 'mrad', 'full divergence at 1/e'),
      ...(model === 'aperture' ? { D: val(aperture! * 1000, 'mm', 'limiting aperture') } : {}),
    },
    distance,
    'm',
    gaussianOptics,
    note,
  );
}

/**
 * Hazard distance from the end of a multimode fibre whose numerical aperture is defined at 5 % of the peak.
 *
 *     r = (1.7 / NA) sqrt(P / (pi MPE))
 * @param args power or energy, its limit, numerical aperture 0 to 1 [-]
 * @returns    distance [m], or `laser/emission`, `laser/limit`, `laser/numerical-aperture`
 * Source: ANSI Z136.2 (from memory); exp(-x^2) = 0.05 at x = 1.73.
 */
export function multimodeFibreHazardDistance(args: {
  readonly emitted: Emitted;
  readonly limit: number;
  readonly numericalAperture: number;
}): Outcome<HazardDistance> {
  const { emitted, limit, numericalAperture: na } = args;
  const problems = amountProblems(emitted, limit);
  if (!(na > 0 && na <= 1)) problems.push(numericalApertureOutside(na));
  if (problems.length > 0) return refuse(problems);
  const distance = (1.7 / na) * Math.sqrt(emitted.amount / (Math.PI * limit));
  const s = step(
    'r_haz',
    'hazard distance from the fibre end',
    `1.7 / NA * sqrt(${notation(emitted).amount} / (pi * MPE))`,
    { ...amountValues(emitted, limit), NA: val(na, '1', 'numerical aperture') },
    distance,
    'm',
    source('ANSI Z136.2', 'from memory'),
  );
  return ok({ distance, steps: [s] });
}

/**
 * Hazard distance from the end of a single-mode fibre.
 *
 *     r = (w / lambda) sqrt(pi P / (2 MPE))
 * @param args power or energy, its limit, mode field diameter w at 1/e2 [m], wavelength [m]
 * @returns    distance [m], or `laser/emission`, `laser/limit`, `laser/mode-field`, `laser/wavelength`
 * Source: Gaussian beam optics (derived).
 */
export function singleModeFibreHazardDistance(args: {
  readonly emitted: Emitted;
  readonly limit: number;
  readonly modeFieldDiameter: number;
  readonly wavelength: number;
}): Outcome<HazardDistance> {
  const { emitted, limit, modeFieldDiameter: w, wavelength } = args;
  const problems = [
    ...amountProblems(emitted, limit),
    ...positive('laser/mode-field', 'modeFieldDiameter', w, 'm'),
    ...positive('laser/wavelength', 'wavelength', wavelength, 'm'),
  ];
  if (problems.length > 0) return refuse(problems);
  const distance = (w / wavelength) * Math.sqrt((Math.PI * emitted.amount) / (2 * limit));
  const s = step(
    'r_haz',
    'hazard distance from the fibre end',
    `(w / lam) * sqrt(pi * ${notation(emitted).amount} / (2 * MPE))`,
    {
      ...amountValues(emitted, limit),
      w: val(w * 1e6, 'um', 'mode field diameter at 1/e2'),
      lam: val(wavelength * 1e6, 'um', 'wavelength'),
    },
    distance,
    'm',
    gaussianOptics,
  );
  return ok({ distance, steps: [s] });
}

/**
 * Hazard distance beyond the focus of a lens.
 *
 *     r = (f / b) sqrt(4 P / (pi MPE)), measured from the focus
 * @param args power or energy, its limit, focal length f [m], beam diameter at the lens b at 1/e [m]
 * @returns    distance from the focus [m], or `laser/emission`, `laser/limit`, `laser/focal-length`, `laser/diameter`
 * Source: OSHA Technical Manual, section III, chapter 6 (from memory); divergence b/f (derived).
 */
export function lensHazardDistance(args: {
  readonly emitted: Emitted;
  readonly limit: number;
  readonly focalLength: number;
  readonly diameter: number;
}): Outcome<HazardDistance> {
  const { emitted, limit, focalLength: f, diameter: b } = args;
  const problems = [
    ...amountProblems(emitted, limit),
    ...positive('laser/focal-length', 'focalLength', f, 'm'),
    ...positive('laser/diameter', 'diameter', b, 'm'),
  ];
  if (problems.length > 0) return refuse(problems);
  const distance = (f / b) * Math.sqrt((4 * emitted.amount) / (Math.PI * limit));
  const s = step(
    'r_haz',
    'hazard distance from the focus of the lens',
    `(f / b) * sqrt(4 * ${notation(emitted).amount} / (pi * MPE))`,
    {
      ...amountValues(emitted, limit),
      f: val(f * 1000, 'mm', 'focal length'),
      b: val(b * 1000, 'mm', 'beam diameter at the lens, 1/e'),
    },
    distance,
    'm',
    source('OSHA Technical Manual, section III, chapter 6', 'from memory'),
  );
  return ok({ distance, steps: [s] });
}
