import { type Outcome, ok, positive, refuse } from '../floor/problem.js';
import { negative } from './messages.js';

/**
 * Least angle to the normal of the curtain at which a straight ray can pass between two flat, parallel, opaque layers.
 *
 *     angle = atan(v / a)
 * The layers hold back straight rays in plan only; scatter and reflection between them are not covered, so this is no proof of
 * light-tightness or of laser safety.
 * @param overlap v, lap of the two layers [m]
 * @param spacing a, distance of the layers [m]
 * @returns angle from the normal and angle from the curtain plane [rad], or `curtain/layer-spacing`, `curtain/negative`
 * Source: geometry (handbook of layout, 3.8).
 */
export function overlapRay(
  overlap: number,
  spacing: number,
): Outcome<{ readonly fromNormal: number; readonly fromPlane: number }> {
  const problems = positive('curtain/layer-spacing', 'spacing', spacing, 'm');
  if (!(overlap >= 0)) problems.push(negative('overlap', overlap, 'm'));
  if (problems.length > 0) return refuse(problems);
  const fromNormal = Math.atan(overlap / spacing);
  return ok({ fromNormal, fromPlane: Math.PI / 2 - fromNormal });
}
