import type { Outcome } from '../floor/index.js';
import { aboveZero, checked } from './arguments.js';
import { notFalling } from './messages.js';

/**
 * Recovery rate from two readings on the falling part of a log.
 *
 *     n = ln(C0 / C1) / t
 * The floor is not taken off, so n comes out low near it.
 * @param first C0 [1/m3]
 * @param last  C1, later [1/m3]
 * @param interval t [s]
 * @returns     n [1/s], or `air/not-positive`, `air/not-falling`
 * Source: ISO 14644-3, recovery test: n = -2.3/t log10(C1/C0), 2.3 standing for ln 10 (published).
 */
export function recoveryRate(first: number, last: number, interval: number): Outcome<number> {
  const problems = aboveZero({ first: [first, '1/m3'], last: [last, '1/m3'], interval: [interval, 's'] });
  if (problems.length === 0 && last >= first) problems.push(notFalling());
  return checked(problems, () => Math.log(first / last) / interval);
}

/**
 * Time in which the concentration falls to a hundredth.
 *
 *     t = ln(100) / n
 * @param rate n [1/s]
 * @returns t [s], or `air/not-positive`
 * Source: ISO 14644-3, recovery test (published).
 */
export const hundredToOneTime = (rate: number): Outcome<number> =>
  checked(aboveZero({ rate: [rate, '1/s'] }), () => Math.log(100) / rate);
