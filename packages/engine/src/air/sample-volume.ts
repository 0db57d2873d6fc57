import type { Outcome } from '../floor/index.js';
import { aboveZero, checked } from './arguments.js';

export interface SingleSample {
  /** 20 particles at the limit [m3]. */
  readonly formulaVolume: number;
  /** At least 2 litres [m3]. */
  readonly leastVolume: number;
  /** At least one minute [s]. */
  readonly time: number;
  /** What the counter draws in that time [m3]. */
  readonly sampledVolume: number;
}

/**
 * Volume and time of a single sample at each location.
 *
 *     V = 20 / C, at least 2 L;  t = V / q, at least 60 s
 * @param limit class limit at the largest considered size [1/m3]
 * @param flow  sampling flow of the counter [m3/s]
 * @returns     volumes and time, or `air/not-positive`
 * Source: ISO 14644-1:2015, A.4.4 (published).
 */
export const singleSample = (limit: number, flow: number): Outcome<SingleSample> =>
  checked(aboveZero({ limit: [limit, '1/m3'], flow: [flow, 'm3/s'] }), () => {
    const formulaVolume = 20 / limit;
    const leastVolume = Math.max(2e-3, formulaVolume);
    const time = Math.max(60, leastVolume / flow);
    return { formulaVolume, leastVolume, time, sampledVolume: flow * time };
  });
