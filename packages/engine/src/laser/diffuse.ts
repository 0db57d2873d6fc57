import { fromStep, step, val } from '../floor/calculation.js';
import { type Outcome, ok, type Problem, positive, refuse, valueOf } from '../floor/problem.js';
import { source } from '../floor/source.js';
import { alphaMaxStep } from './correction-factors.js';
import { type ExposureLimitArguments, exposureLimit } from './exposure-limit.js';
import type { HazardDistance } from './hazard-distance.js';
import { angleOutside, creditOutsideRetinalBand, reflectanceOutside, tooNearForEye } from './messages.js';
import { nanometres } from './scale.js';
import { apertureBands, sourceAngles } from './tables.js';
import type { Edition, ExposureLimit, Worked } from './types.js';

const lambert = source('Lambertian reflection, spot small against the distance', 'derived');
/** No eye focuses nearer; the limits of extended sources are not evaluated there. Source: from memory. */
const nearestFocus = 0.1;

export interface Reflection {
  /** [W] */
  readonly power: number;
  /** 0 to 1; 1 is the safe assumption [-] */
  readonly reflectance: number;
  /** Viewing angle from the normal of the surface [rad] */
  readonly angle: number;
}

function reflectionProblems({ power, reflectance, angle }: Reflection): Problem[] {
  const problems = positive('laser/emission', 'power', power, 'W');
  if (!(reflectance > 0 && reflectance <= 1)) problems.push(reflectanceOutside(reflectance));
  if (!(angle >= 0 && angle < Math.PI / 2)) problems.push(angleOutside('angle', angle));
  return problems;
}

const reflectionValues = ({ power, reflectance, angle }: Reflection) => ({
  rho: val(reflectance, '1', 'reflectance'),
  P: val(power, 'W', 'power'),
  theta: val(angle, 'rad', 'angle from the normal'),
});

/**
 * Irradiance at a distance from a diffusely reflecting spot.
 *
 *     E = rho P cos(theta) / (pi r^2), or on the axis of a large spot E = rho P / (pi (r^2 + (D/2)^2))
 * @param args         power [W], reflectance [-], angle from the normal [rad], distance r [m]; spot diameter D for a large spot [m]
 * @returns            irradiance [W/m2], or `laser/emission`, `laser/reflectance`, `laser/angle-range`, `laser/distance`,
 *                     `laser/spot`
 * Source: Lambert's law (derived).
 */
export function diffuseIrradiance(
  args: Reflection & { readonly distance: number; readonly spotDiameter?: number },
): Outcome<Worked & { readonly irradiance: number }> {
  const { power, reflectance, angle, distance: r, spotDiameter } = args;
  const problems = [...reflectionProblems(args), ...positive('laser/distance', 'distance', r, 'm')];
  if (spotDiameter !== undefined) {
    problems.push(...positive('laser/spot', 'spotDiameter', spotDiameter, 'm'));
    // The formula of the disc is known on its axis only.
    if (angle !== 0) problems.push(angleOutside('angle', angle));
  }
  if (problems.length > 0) return refuse(problems);
  const half = (spotDiameter ?? 0) / 2;
  const irradiance = (reflectance * power * Math.cos(angle)) / (Math.PI * (r ** 2 + half ** 2));
  const values = { ...reflectionValues(args), r: val(r, 'm', 'distance') };
  const s =
    spotDiameter === undefined
      ? step('E', 'irradiance', 'rho * P * cos(theta) / (pi * r^2)', values, irradiance, 'W/m2', lambert)
      : step(
          'E',
          'irradiance on the axis of the spot',
          'rho * P * cos(theta) / (pi * (r^2 + (D / 2)^2))',
          { ...values, D: val(spotDiameter, 'm', 'spot diameter') },
          irradiance,
          'W/m2',
          source('uniform Lambertian disc', 'derived'),
        );
  return ok({ irradiance, steps: [s] });
}

/**
 * Distance from a diffusely reflecting spot beyond which the limit is kept; the spot taken as a point (the safe choice).
 *
 *     r = sqrt(rho P cos(theta) / (pi MPE))
 * @param args power [W], reflectance [-], angle [rad], limit [W/m2]
 * @returns    distance [m], or `laser/emission`, `laser/reflectance`, `laser/angle-range`, `laser/limit`
 * Source: Lambert's law (derived).
 */
export function diffuseHazardDistance(args: Reflection & { readonly limit: number }): Outcome<HazardDistance> {
  const { power, reflectance, angle, limit } = args;
  const problems = [...reflectionProblems(args), ...positive('laser/limit', 'limit', limit, 'W/m2')];
  if (problems.length > 0) return refuse(problems);
  const distance = Math.sqrt((reflectance * power * Math.cos(angle)) / (Math.PI * limit));
  const s = step(
    'r_haz',
    'hazard distance from the diffuse spot',
    'sqrt(rho * P * cos(theta) / (pi * MPE))',
    { ...reflectionValues(args), MPE: val(limit, 'W/m2', 'exposure limit') },
    distance,
    'm',
    lambert,
  );
  return ok({ distance, steps: [s] });
}

export interface ExtendedHazardDistance extends HazardDistance {
  /** Angular subtense of the spot at that distance [rad]. */
  readonly sourceAngle: number;
  /** Limit there, with C6 [W/m2]. */
  readonly limit: number;
  readonly withoutCredit: number;
}

export interface ExtendedReflection
  extends Reflection,
    Omit<ExposureLimitArguments, 'organ' | 'sourceAngle' | 'exposedArea'> {
  /** Diameter that holds 63 % of the power [m]. */
  readonly spotDiameter: number;
}

/**
 * Hazard distance from a diffuse spot with credit for its size: the limit of the retina grows with the angle under which the spot is seen.
 *
 * Solves E(r) = MPE(alpha(r)) from far to near by halving; E falls as r^-2 and the limit at most as r^-1, so there is one crossing.
 * alpha is the mean of both axes, each between 1.5 mrad and alpha_max. The photochemical limit gets no credit. Only 400 to 1400 nm.
 * @param args reflection, edition, wavelength [m], duration [s], spot diameter [m]
 * @returns    distance with and without credit [m], angle [rad] and limit [W/m2], or the problems of `exposureLimit`,
 *             `laser/no-extended-credit`, `laser/spot`, `laser/nearer-than-eye-focuses`
 * Source: Directive 2006/25/EC, Table 2.5 (read) and IEC 60825-1:2014 (from memory) for the limit; Lambert's law.
 */
export function extendedDiffuseHazardDistance(args: ExtendedReflection): Outcome<ExtendedHazardDistance> {
  const { edition, wavelength, duration, spotDiameter } = args;
  const nm = nanometres(wavelength);
  const problems = [...reflectionProblems(args), ...positive('laser/spot', 'spotDiameter', spotDiameter, 'm')];
  if (nm < apertureBands.pupilFrom || nm >= apertureBands.pupilTo) problems.push(creditOutsideRetinalBand(nm));
  if (problems.length > 0) return refuse(problems);
  const point = exposureLimit({ edition, organ: 'eye', wavelength, duration });
  if (!point.ok) return point;
  const without = diffuseHazardDistance({ ...args, limit: point.value.irradiance });
  if (!without.ok) return without;
  const at = (r: number) => seenFrom(r, args);
  if (without.value.distance <= nearestFocus || !at(nearestFocus).above) return refuse([tooNearForEye(nearestFocus)]);
  const far = without.value.distance;
  // Seen from there the spot is a point: no credit, and the small step of the limit at 1.5 mrad cannot mislead the halving.
  const earnsNone = at(far).alpha <= sourceAngles.smallest / 1000;
  const distance = earnsNone ? far : crossing(nearestFocus, far, (r) => at(r).above);
  const { alpha, limit } = at(distance);
  return ok({
    distance,
    sourceAngle: alpha,
    limit: limit.irradiance,
    withoutCredit: without.value.distance,
    steps: extendedSteps(args, limit, alpha, distance),
  });
}

/** Outermost distance at which `above` still holds; holds at `near`, not beyond `far`. */
function crossing(near: number, far: number, above: (r: number) => boolean): number {
  let inside = near;
  let outside = far;
  for (let halvings = 0; halvings < 60; halvings++) {
    const middle = (inside + outside) / 2;
    if (above(middle)) inside = middle;
    else outside = middle;
  }
  return outside;
}

function seenFrom(r: number, args: ExtendedReflection) {
  const { edition, wavelength, duration } = args;
  const alpha = spotAngle(args, r, edition, duration);
  const limit = valueOf(exposureLimit({ edition, organ: 'eye', wavelength, duration, sourceAngle: alpha }));
  const irradiance = (args.reflectance * args.power * Math.cos(args.angle)) / (Math.PI * r ** 2);
  return { alpha, limit, above: irradiance > limit.irradiance };
}

/** Mean of the angles of both axes, each held between 1.5 mrad and alpha_max [rad]. */
function spotAngle({ spotDiameter, angle }: ExtendedReflection, r: number, edition: Edition, time: number): number {
  const most = alphaMaxStep(edition, time).result / 1000;
  const held = (a: number) => Math.max(sourceAngles.smallest / 1000, Math.min(a, most));
  return (held((spotDiameter * Math.cos(angle)) / r) + held(spotDiameter / r)) / 2;
}

function extendedSteps(args: ExtendedReflection, limit: ExposureLimit, alpha: number, distance: number) {
  const most = alphaMaxStep(args.edition, args.duration).result;
  const held = (text: string) => `max(1.5, min(${text}, alpha_most))`;
  const angleStep = step(
    'alpha',
    'angular subtense of the spot at the hazard distance',
    `(${held('1000 * D * cos(theta) / r')} + ${held('1000 * D / r')}) / 2`,
    {
      D: val(args.spotDiameter, 'm', 'spot diameter, 63 % of the power'),
      theta: val(args.angle, 'rad', 'angle from the normal'),
      r: val(distance, 'm', 'hazard distance, found by halving until both sides agree'),
      alpha_most: val(most, 'mrad', 'largest angular subtense that counts'),
    },
    alpha * 1000,
    'mrad',
    source('geometry of the apparent source', 'derived'),
  );
  const end = limit.steps.at(-1)!;
  const check = step(
    'r_haz',
    'hazard distance with credit for the size of the spot',
    'sqrt(rho * P * cos(theta) / (pi * E_limit))',
    { ...reflectionValues(args), E_limit: fromStep(end) },
    distance,
    'm',
    lambert,
  );
  return [angleStep, ...limit.steps, check];
}
