import { type Outcome, ok, refuse } from '../floor/problem.js';
import { needNotNegative } from './arguments.js';
import { frameMessages } from './messages.js';

export interface ToleranceStack {
  /** All at their limit on the same side. */
  readonly worstCase: number;
  /** Root of the sum of squares: for more than four independent parts. */
  readonly statistical: number;
}

/**
 * Tolerance of a row of parts from their own tolerances.
 *
 *     worst case = sum t;  statistical = sqrt(sum t^2)
 * @param tolerances half widths, +- [m]
 * @returns both [m], or `frame/no-tolerances`, `frame/negative`, `frame/not-a-number`
 * Source: stack of tolerances (derived); statistical for more than four parts (common practice).
 */
export function toleranceStack(tolerances: readonly number[]): Outcome<ToleranceStack> {
  if (tolerances.length === 0) return refuse([frameMessages.noTolerances()]);
  const problems = tolerances.flatMap((t, i) => needNotNegative({ [`tolerance ${i + 1}`]: [t, 'm'] }));
  if (problems.length > 0) return refuse(problems);
  return ok({ worstCase: tolerances.reduce((s, t) => s + t, 0), statistical: Math.hypot(...tolerances) });
}
