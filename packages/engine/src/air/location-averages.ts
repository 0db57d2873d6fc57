import type { Outcome } from '../floor/index.js';
import { aboveZero, checked, zeroOrMore } from './arguments.js';
import { emptyList } from './messages.js';

export const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;

/**
 * Evaluation of a classification: the average of the samples of each location, none above the limit.
 *
 * One sample above the limit does not fail when the average passes. Only samples of full volume by a calibrated counter
 * under the standard support a class statement.
 * @param samples concentrations by location [1/m3]
 * @param limit   class limit [1/m3]
 * @returns       averages [1/m3] and whether all are at or below the limit, or `air/too-few`, `air/negative`,
 *                `air/not-positive`
 * Source: ISO 14644-1:2015, A.6 (published).
 */
export function locationAverages(
  samples: readonly (readonly number[])[],
  limit: number,
): Outcome<{ readonly averages: readonly number[]; readonly passes: boolean }> {
  const problems = [
    ...aboveZero({ limit: [limit, '1/m3'] }),
    ...(samples.length === 0 || samples.some((s) => s.length === 0) ? [emptyList('samples', 1)] : []),
    ...samples.flat().flatMap((value) => zeroOrMore({ samples: [value, '1/m3'] })),
  ];
  return checked(problems, () => {
    const averages = samples.map(mean);
    return { averages, passes: averages.every((a) => a <= limit) };
  });
}
