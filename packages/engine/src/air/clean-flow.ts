import type { Outcome } from '../floor/index.js';
import { aboveZero, checked, zeroOrMore } from './arguments.js';
import { mean } from './location-averages.js';
import { emptyList } from './messages.js';
import { standardDeviation } from './upper-confidence-limit.js';

/** A quotient this close above a whole number is rounding. */
const countRounding = 1e-9;

/**
 * Flow over a clean plane and the fan filter units that give it.
 *
 *     Q = v A;  count = Q / q, rounded up
 * @param area     A of the clean plane [m2]
 * @param velocity v [m/s]
 * @param unitFlow q of one unit at its working pressure, not at free delivery [m3/s]
 * @returns        Q [m3/s] and the count [-], or `air/not-positive`
 * Source: continuity (derived).
 */
export const unidirectionalFlow = (
  area: number,
  velocity: number,
  unitFlow: number,
): Outcome<{ readonly flow: number; readonly units: number }> =>
  checked(aboveZero({ area: [area, 'm2'], velocity: [velocity, 'm/s'], unitFlow: [unitFlow, 'm3/s'] }), () => ({
    flow: velocity * area,
    units: Math.ceil(((velocity * area) / unitFlow) * (1 - countRounding)),
  }));

/** Tolerance of the guidance value. Source: EU GMP Annex 1 (2022): 0.45 m/s within 20 % (from memory). */
export const velocityTolerance = 0.2;

/**
 * Whether a velocity lies within 20 % of its target, ends included.
 * @param velocity [m/s]
 * @param target   0.45 m/s by the guidance [m/s]
 * @returns        yes or no, or `air/negative`, `air/not-positive`
 * Source: EU GMP Annex 1 (2022), 0.36 to 0.54 m/s (from memory).
 */
export const insideVelocityBand = (velocity: number, target = 0.45): Outcome<boolean> =>
  checked(
    [...zeroOrMore({ velocity: [velocity, 'm/s'] }), ...aboveZero({ target: [target, 'm/s'] })],
    () => Math.abs(velocity - target) <= velocityTolerance * target * (1 + countRounding),
  );

/**
 * Mean of measured velocities and their non-uniformity.
 *
 *     s = sqrt(sum (v - m)^2 / (n - 1));  non-uniformity = s / m
 * @param velocities two or more [m/s]
 * @returns mean and standard deviation [m/s], non-uniformity [-], or `air/too-few`, `air/negative`
 * Source: statistics (derived); 15 to 20 % is a usual acceptance (common practice).
 */
export function velocityNonUniformity(velocities: readonly number[]): Outcome<{
  readonly mean: number;
  readonly standardDeviation: number;
  readonly nonUniformity: number;
}> {
  const spread = standardDeviation(velocities);
  const problems = [
    ...velocities.flatMap((v) => zeroOrMore({ velocities: [v, 'm/s'] })),
    ...(velocities.length < 2 ? [emptyList('velocities', 2)] : []),
    ...(velocities.length > 0 ? aboveZero({ mean: [mean(velocities), 'm/s'] }) : []),
  ];
  return checked(problems, () => {
    const m = mean(velocities);
    const s = spread.ok ? spread.value : Number.NaN;
    return { mean: m, standardDeviation: s, nonUniformity: s / m };
  });
}

/**
 * Air changes.
 *
 *     n = Q / V
 * The class standard prescribes none; typical values are examples.
 * @param flow   Q [m3/s]
 * @param volume V [m3]
 * @returns      n [1/s], or `air/negative`, `air/not-positive`
 * Source: definition (derived).
 */
export const airChangeRate = (flow: number, volume: number): Outcome<number> =>
  checked([...zeroOrMore({ flow: [flow, 'm3/s'] }), ...aboveZero({ volume: [volume, 'm3'] })], () => flow / volume);
