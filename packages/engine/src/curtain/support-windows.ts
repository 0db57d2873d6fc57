import type { Outcome, Problem } from '../floor/problem.js';
import { ok, refuse } from '../floor/problem.js';
import { negative, notInside } from './messages.js';
import { type SupportWindow, samePlace } from './types.js';

export interface WindowDemand {
  readonly length: number;
  /** Largest distance of the first support to the start of the track, and of the last to its end. */
  readonly endDistance: number;
  readonly joints: readonly number[];
  /** Largest distance of a support to each joint. */
  readonly jointDistance: number;
  /** Places that must hold a support themselves. */
  readonly required: readonly number[];
}

/**
 * The stretches of a track that must each hold a support: both ends, the surroundings of each joint, required places.
 *
 *     [0, e], [L - e, L], [j - d, j + d], [r, r], all clipped to the track
 * @param demand lengths along the track [m]
 * @returns windows [m], or `curtain/outside-track`, `curtain/negative`
 * Source: end and joint distances: common practice (the values come from the caller).
 */
export function supportWindows(demand: WindowDemand): Outcome<readonly SupportWindow[]> {
  const { length, endDistance, joints, jointDistance, required } = demand;
  const outside = (name: string, places: readonly number[]) =>
    places.filter((p) => !(p >= -samePlace && p <= length + samePlace)).map((p) => notInside(name, p, length));
  const problems: Problem[] = [...outside('joints', joints), ...outside('required', required)];
  if (!(endDistance >= 0)) problems.push(negative('endDistance', endDistance, 'm'));
  if (!(jointDistance >= 0)) problems.push(negative('jointDistance', jointDistance, 'm'));
  if (problems.length > 0) return refuse(problems);
  const around = (middle: number, reach: number): SupportWindow => ({
    from: Math.max(0, middle - reach),
    to: Math.min(length, middle + reach),
  });
  return ok([
    around(0, endDistance),
    around(length, endDistance),
    ...joints.map((j) => around(j, jointDistance)),
    ...required.map((r) => around(r, 0)),
  ]);
}
