import { type Outcome, ok, positive, refuse } from '../floor/problem.js';
import { negative } from './messages.js';
import { tributaryFactor } from './tables.js';

/**
 * Bound of the load on one support of a track, as used on site.
 *
 *     R = 1.25 w l + P
 * @param uniform w, weight of track and drawn curtain [N/m]
 * @param spacing l, distance of the supports [m]
 * @param pull P, pull of a person [N]
 * @returns R [N], or `curtain/spacing`, `curtain/negative`
 * Source: tributary length times 1.25 (common practice; exact for the middle of two equal spans).
 */
export function supportLoadBound(uniform: number, spacing: number, pull: number): Outcome<number> {
  const problems = positive('curtain/spacing', 'spacing', spacing, 'm');
  if (!(uniform >= 0)) problems.push(negative('uniform', uniform, 'N/m'));
  if (!(pull >= 0)) problems.push(negative('pull', pull, 'N'));
  if (problems.length > 0) return refuse(problems);
  return ok(tributaryFactor.value * uniform * spacing + pull);
}
