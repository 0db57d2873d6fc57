import type { Outcome } from '../floor/index.js';
import { checked, zeroOrMore } from './arguments.js';
import { mean } from './location-averages.js';
import { confidenceLocations, emptyList } from './messages.js';
import { confidenceFactors } from './tables.js';

/**
 * Sample standard deviation.
 *
 *     s = sqrt(sum (x - m)^2 / (n - 1))
 * @param values two or more [-]
 * @returns in the unit of the values, or `air/too-few`
 * Source: statistics (derived).
 */
export const standardDeviation = (values: readonly number[]): Outcome<number> =>
  checked(values.length < 2 ? [emptyList('values', 2)] : [], () => {
    const m = mean(values);
    return Math.sqrt(values.reduce((sum, x) => sum + (x - m) ** 2, 0) / (values.length - 1));
  });

export interface ConfidenceLimit {
  readonly mean: number;
  readonly standardDeviation: number;
  readonly standardError: number;
  readonly factor: number;
  readonly limit: number;
  /** With the unrounded Student quantile. */
  readonly exactLimit: number;
}

/**
 * 95 % upper confidence limit of the mean of location averages, for reports to the withdrawn edition.
 *
 *     UCL = m + t s / sqrt(k)
 * @param averages of 2 to 9 locations [1/m3]
 * @returns        all in 1/m3 but the factor, or `air/ucl-locations`, `air/negative`
 * Source: ISO 14644-1:1999, Annex C, Table C.1 (from memory).
 */
export function upperConfidenceLimit(averages: readonly number[]): Outcome<ConfidenceLimit> {
  const k = averages.length;
  const factor = confidenceFactors[k];
  const problems = averages.flatMap((value) => zeroOrMore({ averages: [value, '1/m3'] }));
  if (!factor) problems.push(confidenceLocations(k));
  return checked(problems, () => {
    const m = mean(averages);
    const s = Math.sqrt(averages.reduce((sum, x) => sum + (x - m) ** 2, 0) / (k - 1));
    const standardError = s / Math.sqrt(k);
    const { printed, exact } = factor!;
    return {
      mean: m,
      standardDeviation: s,
      standardError,
      factor: printed,
      limit: m + printed * standardError,
      exactLimit: m + exact * standardError,
    };
  });
}
