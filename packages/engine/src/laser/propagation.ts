import { step, val } from '../floor/calculation.js';
import { type Outcome, ok, positive, refuse } from '../floor/problem.js';
import { gaussianOptics } from './beam-diameter.js';
import { negative } from './messages.js';
import type { Worked } from './types.js';

export interface BeamAt extends Worked {
  /** d63 at the distance [m]. */
  readonly diameter: number;
}

/**
 * Diameter of a beam at a distance.
 *
 *     quadratic: d(r) = sqrt(a^2 + phi^2 (r - z0)^2);  linear: d(r) = a + phi r
 * The linear form gives the larger beam and so the less cautious result; the quadratic form, exact for a waist at the exit, is the
 * default. With a waist at z0 downstream, `diameter` is that of the waist.
 * @param args d63 at the exit (or waist) a [m], full divergence (1/e) phi [rad], distance r [m], waist distance z0 [m]
 * @returns    d63 [m], or `laser/diameter`, `laser/negative`
 * Source: Gaussian beam optics (derived).
 */
export function beamDiameterAt(args: {
  readonly diameter: number;
  readonly divergence: number;
  readonly distance: number;
  readonly propagation?: 'quadratic' | 'linear';
  readonly waistDistance?: number;
}): Outcome<BeamAt> {
  const { diameter: a, divergence: phi, distance: r, propagation = 'quadratic', waistDistance = 0 } = args;
  const problems = positive('laser/diameter', 'diameter', a, 'm');
  if (!(phi >= 0)) problems.push(negative('divergence', phi, 'rad'));
  if (!(r >= 0)) problems.push(negative('distance', r, 'm'));
  if (problems.length > 0) return refuse(problems);
  const linear = propagation === 'linear';
  const shifted = waistDistance !== 0;
  const along = r - waistDistance;
  const diameter = linear ? a + phi * Math.abs(along) : Math.hypot(a, phi * along);
  const values = {
    a: val(a * 1000, 'mm', 'beam diameter at 1/e, where it leaves'),
    phi: val(phi * 1000, 'mrad', 'full divergence at 1/e'),
    r: val(r, 'm', 'distance'),
    ...(shifted ? { z0: val(waistDistance, 'm', 'distance of the waist') } : {}),
  };
  const way = shifted ? '(r - z0)' : 'r';
  const expression = linear ? (shifted ? 'a + phi * abs(r - z0)' : 'a + phi * r') : `sqrt(a^2 + (phi * ${way})^2)`;
  const s = step('d63', 'beam diameter at the distance', expression, values, diameter * 1000, 'mm', gaussianOptics);
  return ok({ diameter, steps: [s] });
}
