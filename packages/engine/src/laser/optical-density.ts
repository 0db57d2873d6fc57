import { step, val } from '../floor/calculation.js';
import { type Outcome, ok, positive, refuse } from '../floor/problem.js';
import { source } from '../floor/source.js';
import { negative } from './messages.js';
import type { Worked } from './types.js';

const definition = source('definition of optical density', 'derived');

/**
 * Optical density that brings an exposure down to the limit.
 *
 *     OD = log10(H0 / MPE), 0 when the exposure is below the limit already
 * Round up to the next filter that is sold. An optical density says nothing about how long the filter lives.
 * @param exposure exposure averaged over the limiting aperture [W/m2 or J/m2]
 * @param limit    exposure limit in the same unit [W/m2 or J/m2]
 * @param unit     that unit, as printed [-]
 * @returns        optical density [-], or `laser/exposure`, `laser/limit`
 * Source: definition.
 */
export function requiredOpticalDensity(
  exposure: number,
  limit: number,
  unit: 'W/m2' | 'J/m2',
): Outcome<Worked & { readonly opticalDensity: number }> {
  const problems = [
    ...positive('laser/exposure', 'exposure', exposure, unit),
    ...positive('laser/limit', 'limit', limit, unit),
  ];
  if (problems.length > 0) return refuse(problems);
  const opticalDensity = Math.max(0, Math.log10(exposure / limit));
  const s = step(
    'OD',
    'optical density needed',
    'max(0, log10(H0 / MPE))',
    { H0: val(exposure, unit, 'exposure at the aperture'), MPE: val(limit, unit, 'exposure limit') },
    opticalDensity,
    '1',
    definition,
  );
  return ok({ opticalDensity, steps: [s] });
}

export interface Transmission extends Worked {
  /** Behind the barrier [W/m2]. */
  readonly transmitted: number;
  readonly adequate: boolean;
}

/**
 * Irradiance behind a barrier of known optical density, against the limit for the time someone may stand there.
 *
 *     E_t = E 10^-OD
 * Attenuation alone: whether the barrier survives is another question.
 * @param args irradiance before it [W/m2], optical density of zero or more [-], limit behind it [W/m2]
 * @returns    irradiance [W/m2] and whether it keeps the limit, or `laser/exposure`, `laser/negative`, `laser/limit`
 * Source: definition of optical density.
 */
export function barrierTransmission(args: {
  readonly irradiance: number;
  readonly opticalDensity: number;
  readonly limit: number;
}): Outcome<Transmission> {
  const problems = [
    ...positive('laser/exposure', 'irradiance', args.irradiance, 'W/m2'),
    ...positive('laser/limit', 'limit', args.limit, 'W/m2'),
  ];
  if (!(args.opticalDensity >= 0)) problems.push(negative('opticalDensity', args.opticalDensity, '1'));
  if (problems.length > 0) return refuse(problems);
  const transmitted = args.irradiance * 10 ** -args.opticalDensity;
  const s = step(
    'E_t',
    'irradiance behind the barrier',
    'E * 10^(-OD)',
    {
      E: val(args.irradiance, 'W/m2', 'irradiance on the barrier'),
      OD: val(args.opticalDensity, '1', 'optical density'),
    },
    transmitted,
    'W/m2',
    definition,
  );
  return ok({ transmitted, adequate: transmitted <= args.limit, steps: [s] });
}
