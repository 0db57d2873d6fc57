import { type Outcome, ok, positive, refuse } from '../floor/problem.js';
import { fullnessOrder, negative } from './messages.js';

export interface FullnessBand {
  /** Least and largest extra width as a share of the covered track, 0.07 for 7 % [-]. */
  readonly extraLow: number;
  readonly extraHigh: number;
}

/**
 * Total flat width of the panels that cover a length of track, hanging free on runners.
 *
 *     L (1 + low) to L (1 + high)
 * @param length covered track L [m]
 * @param band extra width as a share of the track [-]
 * @returns least and largest total width [m], or `curtain/length`, `curtain/negative`, `curtain/fullness-order`
 * Source: 7 % to 10 % more flat width than covered track is common practice; the band itself comes from the caller.
 */
export function panelWidthBand(
  length: number,
  { extraLow, extraHigh }: FullnessBand,
): Outcome<{ readonly least: number; readonly most: number }> {
  const problems = positive('curtain/length', 'length', length, 'm');
  if (!(extraLow >= 0)) problems.push(negative('extraLow', extraLow, ''));
  if (extraHigh < extraLow) problems.push(fullnessOrder(extraLow, extraHigh));
  if (problems.length > 0) return refuse(problems);
  return ok({ least: length * (1 + extraLow), most: length * (1 + extraHigh) });
}

/**
 * Track length that the panels of one stretch cover: the stretch and, at each end where it laps over a neighbour, half the lap.
 * @param length stretch between the middles of two openings or ends [m]
 * @param laps ends that lap over a neighbour: 0, 1 or 2 [-]
 * @param overlap lap of two neighbouring panels [m]
 * Source: geometry.
 */
export const coveredLength = (length: number, laps: number, overlap: number): number => length + (laps * overlap) / 2;
