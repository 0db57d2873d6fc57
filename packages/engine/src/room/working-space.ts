import { type Outcome, ok, refuse } from '../floor/problem.js';
import { voltageOutside } from './messages.js';
import { type WorkingSpaceCondition, workingSpaceTable } from './tables.js';

/** One foot [m], exact. */
const foot = 0.3048;

export interface WorkingSpace {
  readonly depthFeet: number;
  /** The feet, converted: the larger figure, so the safer one [m]. */
  readonly depth: number;
  /** As the metric column prints it, from memory [m]. */
  readonly depthPrinted: number;
}

/**
 * Clear depth before an electrical board of 600 V to ground or less. Defer to the local electrical code and a licensed
 * electrician.
 * @param voltsToGround voltage to ground, above 0 to 600 [V]; 150 V and a fraction count with the higher row
 * @param condition     what stands opposite: A nothing grounded, B grounded parts, C live parts
 * @returns             depth, or `room/voltage-range`
 * Source: 29 CFR 1910.303(g)(1)(i), Table S-1 (feet read; metric column from memory).
 */
export function workingSpace(voltsToGround: number, condition: WorkingSpaceCondition): Outcome<WorkingSpace> {
  const row = voltsToGround > 0 ? workingSpaceTable.find((r) => voltsToGround <= r.volts[1]) : undefined;
  if (!row) return refuse([voltageOutside(voltsToGround)]);
  const depthFeet = row.feet[condition];
  return ok({ depthFeet, depth: depthFeet * foot, depthPrinted: row.metres[condition] });
}
