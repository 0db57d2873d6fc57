import { type Outcome, ok, positive, refuse } from '../floor/problem.js';
import { bendAngle, negative, noRoomForBend } from './messages.js';
import { samePlace } from './types.js';

export interface CornerQuestion {
  /** Both legs measured to the sharp corner point [m]. */
  readonly legA: number;
  readonly legB: number;
  /** Radius of the centre line of the bend [m]. */
  readonly radius: number;
  /** Angle by which the direction of the track turns [rad]. */
  readonly angle: number;
}

export interface CornerGeometry {
  readonly straightA: number;
  readonly straightB: number;
  readonly bend: number;
  readonly path: number;
  /** By how much the path is shorter than around the sharp corner. */
  readonly saving: number;
}

/** Length that a bend takes from each of its legs: R tan(angle/2) [m]. Source: tangent of a circle (geometry). */
export const bendTangent = (radius: number, angle: number): number => radius * Math.tan(angle / 2);

/**
 * Straights, bend and path of a track round a corner.
 *
 *     t = R tan(angle/2), straights a - t and b - t, bend R angle, path a + b - 2 t + R angle
 * @param question legs to the sharp corner, radius [m]; angle by which the track turns, above 0 and under pi [rad]
 * @returns lengths [m], or `curtain/leg`, `curtain/negative`, `curtain/bend-angle`, `curtain/no-room-for-bend`
 * Source: arc length and tangent of a circle (geometry).
 */
export function cornerGeometry({ legA, legB, radius, angle }: CornerQuestion): Outcome<CornerGeometry> {
  const problems = [...positive('curtain/leg', 'legA', legA, 'm'), ...positive('curtain/leg', 'legB', legB, 'm')];
  if (!(radius >= 0)) problems.push(negative('radius', radius, 'm'));
  if (!(angle > 0 && angle < Math.PI)) problems.push(bendAngle((angle * 180) / Math.PI));
  if (problems.length > 0) return refuse(problems);
  const tangent = bendTangent(radius, angle);
  const short = (
    [
      ['legA', legA],
      ['legB', legB],
    ] as const
  ).filter(([, leg]) => leg < tangent - samePlace);
  if (short.length > 0) return refuse(short.map(([name, leg]) => noRoomForBend(name, leg, tangent)));
  const bend = radius * angle;
  const path = legA + legB - 2 * tangent + bend;
  return ok({ straightA: legA - tangent, straightB: legB - tangent, bend, path, saving: legA + legB - path });
}
