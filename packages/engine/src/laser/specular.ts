import { step, val } from '../floor/calculation.js';
import { type Outcome, ok, positive, refuse } from '../floor/problem.js';
import { source } from '../floor/source.js';
import { indexTooLow, obliqueNotComputed, surfacesNotCounted } from './messages.js';
import type { Worked } from './types.js';

const fresnel = source('Fresnel equations at normal incidence', 'derived');

export interface SpecularReflection extends Worked {
  readonly reflectance: number;
  readonly power: number;
}

/**
 * Power that uncoated glass throws back at normal incidence.
 *
 *     R = N ((n - 1) / (n + 1))^2
 * The faces are simply added: the upper bound. Oblique incidence can reflect much more and is refused, not guessed.
 * @param args power [W], refractive index [-], number of faces [-], angle of incidence [rad]
 * @returns    reflectance [-] and power [W], or `laser/emission`, `laser/refractive-index`, `laser/surfaces`, `laser/oblique`
 * Source: Fresnel equations (derived).
 */
export function specularReflection(args: {
  readonly power: number;
  readonly refractiveIndex: number;
  readonly surfaces?: number;
  readonly angle?: number;
}): Outcome<SpecularReflection> {
  const { power, refractiveIndex: n, surfaces = 1, angle = 0 } = args;
  const problems = positive('laser/emission', 'power', power, 'W');
  if (!(n >= 1)) problems.push(indexTooLow(n));
  if (!Number.isInteger(surfaces) || surfaces < 1) problems.push(surfacesNotCounted(surfaces));
  if (angle !== 0) problems.push(obliqueNotComputed(angle));
  if (problems.length > 0) return refuse(problems);
  const reflectance = Math.min(1, surfaces * ((n - 1) / (n + 1)) ** 2);
  const values = { N: val(surfaces, '1', 'faces'), n: val(n, '1', 'refractive index') };
  const r = step('R', 'reflectance', 'min(1, N * ((n - 1) / (n + 1))^2)', values, reflectance, '1', fresnel);
  const back = { R: val(reflectance, '1', r.name, 'step R'), P: val(power, 'W', 'power') };
  const p = step('P_R', 'power thrown back', 'R * P', back, reflectance * power, 'W', fresnel);
  return ok({ reflectance, power: reflectance * power, steps: [r, p] });
}
