import type { Outcome } from '../floor/index.js';
import { aboveZero, checked, zeroOrMore } from './arguments.js';
import { coincidenceTooHigh, emptyList, notWhole } from './messages.js';

/**
 * Counts at and above each size from counts between sizes: the sum from the top.
 * @param counts by rising lower bound of the channel [-]
 * @returns      cumulative counts [-], or `air/too-few`, `air/negative`
 * Source: definition (derived).
 */
export const cumulativeCounts = (counts: readonly number[]): Outcome<readonly number[]> =>
  checked(
    [
      ...(counts.length === 0 ? [emptyList('counts', 1)] : []),
      ...counts.flatMap((count) => zeroOrMore({ counts: [count, '1'] })),
    ],
    () => counts.map((_, i) => counts.slice(i).reduce((a, b) => a + b, 0)),
  );

/**
 * Concentration of a sample.
 *
 *     C = N / V
 * @param counts N [-]
 * @param volume V [m3]
 * @returns      C [1/m3], or `air/negative`, `air/not-positive`
 * Source: definition (derived).
 */
export const countedConcentration = (counts: number, volume: number): Outcome<number> =>
  checked([...zeroOrMore({ counts: [counts, '1'] }), ...aboveZero({ volume: [volume, 'm3'] })], () => counts / volume);

/** P(at most n counts) when `expected` are expected; in logarithms, so that large counts do not underflow. */
function poissonCumulative(n: number, expected: number): number {
  let term = -expected;
  let sum = Math.exp(term);
  for (let k = 1; k <= n; k++) {
    term += Math.log(expected / k);
    sum += Math.exp(term);
  }
  return sum;
}

/**
 * One-sided upper limit of the expected counts.
 *
 *     sum over k = 0 to N of exp(-m) m^k / k! = 1 - confidence; the same as chi2(confidence; 2N + 2) / 2
 * @param counts     N, whole [-]
 * @param confidence 0.95 by default [-]
 * @returns          m [-], or `air/not-whole`, `air/not-positive`
 * Source: exact Poisson limit (derived).
 */
export function poissonUpperLimit(counts: number, confidence = 0.95): Outcome<number> {
  const problems = [
    ...(Number.isInteger(counts) && counts >= 0 ? [] : [notWhole('counts', counts)]),
    ...aboveZero({ confidence: [confidence, '1'], 'one minus confidence': [1 - confidence, '1'] }),
  ];
  return checked(problems, () => {
    let low = 0;
    let high = counts + 20 * Math.sqrt(counts + 1) - Math.log(1 - confidence);
    // The cumulative probability falls with m, so halving closes on it; 80 halvings exhaust a double.
    for (let i = 0; i < 80; i++) {
      const middle = (low + high) / 2;
      if (poissonCumulative(counts, middle) > 1 - confidence) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  });
}

export interface ParticleCounter {
  /** q [m3/s] */
  readonly flow: number;
  /** t, time a particle keeps the counter busy [s] */
  readonly pulseTime: number;
}

const counterProblems = (counter: ParticleCounter) =>
  aboveZero({ flow: [counter.flow, 'm3/s'], pulseTime: [counter.pulseTime, 's'] });

/**
 * What a counter shows when particles overlap in its beam.
 *
 *     Nind = N exp(-N q t)
 * @param concentration N, true [1/m3]
 * @returns             Nind [1/m3] and the share lost [-], or `air/not-positive`, `air/negative`
 * Source: Poisson dead-time model (derived).
 */
export const coincidenceReading = (
  counter: ParticleCounter,
  concentration: number,
): Outcome<{ readonly indicated: number; readonly lost: number }> =>
  checked([...counterProblems(counter), ...zeroOrMore({ concentration: [concentration, '1/m3'] })], () => {
    const kept = Math.exp(-concentration * counter.flow * counter.pulseTime);
    return { indicated: concentration * kept, lost: 1 - kept };
  });

/**
 * The true concentration behind a reading with coincidence, on the branch where readings still rise.
 *
 *     N exp(-N q t) = Nind, N q t at most 1
 * @param indicated Nind [1/m3]
 * @returns         N [1/m3], or `air/not-positive`, `air/negative`, `air/coincidence-too-high`
 * Source: Poisson dead-time model (derived).
 */
export function coincidenceCorrected(counter: ParticleCounter, indicated: number): Outcome<number> {
  const problems = [...counterProblems(counter), ...zeroOrMore({ indicated: [indicated, '1/m3'] })];
  const busy = counter.flow * counter.pulseTime;
  const reading = indicated * busy;
  if (problems.length === 0 && reading > Math.exp(-1)) problems.push(coincidenceTooHigh());
  return checked(problems, () => {
    let low = 0;
    let high = 1;
    // x exp(-x) rises on 0 to 1; halving never leaves the branch, Newton could at its top.
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (middle * Math.exp(-middle) < reading) low = middle;
      else high = middle;
    }
    return (low + high) / 2 / busy;
  });
}
