import { type Outcome, ok, positive, refuse } from '../floor/problem.js';
import { negative, noDropLeft } from './messages.js';

export interface DropQuestion {
  /** Underside of the track above the highest point of the floor under the run [m]. */
  readonly underside: number;
  /** From the underside of the track to the upper edge of the curtain [m]. */
  readonly runnerDrop: number;
  /** Open height under the curtain at the high point of the floor [m]. */
  readonly hemGap: number;
  /** By how much the floor falls along the run [m]. */
  readonly floorFall: number;
}

/**
 * Finished height of a curtain, and its open height at the low point of the floor.
 *
 *     drop = underside - runner drop - hem gap;  gap at the low point = hem gap + fall of the floor
 * @param question heights [m]
 * @returns drop and largest gap [m], or `curtain/underside`, `curtain/negative`, `curtain/no-drop`
 * Source: height balance (geometry).
 */
export function curtainDrop({ underside, runnerDrop, hemGap, floorFall }: DropQuestion): Outcome<{
  readonly drop: number;
  readonly lowGap: number;
}> {
  const problems = [
    ...positive('curtain/underside', 'underside', underside, 'm'),
    ...Object.entries({ runnerDrop, hemGap, floorFall })
      .filter(([, value]) => !(value >= 0))
      .map(([name, value]) => negative(name, value, 'm')),
  ];
  const drop = underside - runnerDrop - hemGap;
  if (problems.length === 0 && drop <= 0) problems.push(noDropLeft(drop));
  if (problems.length > 0) return refuse(problems);
  return ok({ drop, lowGap: hemGap + floorFall });
}
