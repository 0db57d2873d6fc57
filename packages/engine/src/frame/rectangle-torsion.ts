import { type Outcome, ok, refuse } from '../floor/problem.js';
import { needPositive } from './arguments.js';

/** Terms fall as n^-5 (constant) and as 1/(n^2 cosh) (stress): 200 odd ones leave less than 1e-11. */
const terms = Array.from({ length: 200 }, (_, k) => 2 * k + 1);

export interface RectangleTorsion {
  /** J [m4] */
  readonly constant: number;
  /** Largest shear stress = T / modulus, in the middle of the long side [m3]. */
  readonly modulus: number;
}

/**
 * Torsion constant and modulus of a solid rectangular bar, exact.
 *
 *     J = k1 a b^3,  k1 = 1/3 (1 - (192/pi^5)(b/a) sum over odd n of tanh(n pi a / 2b)/n^5)
 *     W = k2 a b^2,  k2 = k1 / (1 - (8/pi^2) sum over odd n of 1/(n^2 cosh(n pi a / 2b)))
 * a is the longer side. Warping free (Saint-Venant); a clamped end is stiffer over about one depth.
 * @param width, height sides, in any order [m]
 * @returns J and W, or `frame/not-positive`
 * Source: Timoshenko and Goodier, Theory of Elasticity, torsion of rectangular bars (from memory).
 */
export function rectangleTorsion(width: number, height: number): Outcome<RectangleTorsion> {
  const problems = needPositive({ width: [width, 'm'], height: [height, 'm'] });
  if (problems.length > 0) return refuse(problems);
  const a = Math.max(width, height);
  const b = Math.min(width, height);
  const u = (Math.PI * a) / (2 * b);
  const sum = terms.reduce((s, n) => s + Math.tanh(n * u) / n ** 5, 0);
  const k1 = (1 - (192 / Math.PI ** 5) * (b / a) * sum) / 3;
  const stress = 1 - (8 / Math.PI ** 2) * terms.reduce((s, n) => s + 1 / (n * n * Math.cosh(n * u)), 0);
  return ok({ constant: k1 * a * b ** 3, modulus: (k1 / stress) * a * b ** 2 });
}
