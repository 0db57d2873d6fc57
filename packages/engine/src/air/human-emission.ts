import { type Outcome, ok, refuse } from '../floor/index.js';
import { emissionSize } from './messages.js';
import { emissionPerMinute } from './tables.js';
import type { Clothing } from './types.js';

/**
 * Particles that one person gives off.
 * @param clothing what is worn
 * @param size     at and above this, 0.5 um or 5 um [m]
 * @returns        particles [1/s], or `air/emission-size`
 * Source: Whyte and Hejab 2007, abstract: mean of 55 persons (published).
 */
export function humanEmission(clothing: Clothing, size: number): Outcome<number> {
  const row = emissionPerMinute[clothing].find((r) => Math.abs(r.size - size) < r.size * 1e-9);
  return row ? ok(row.count / 60) : refuse([emissionSize(size)]);
}

/**
 * A concentration (or emission) at one size from that at another, by the slope of the class limits. An estimate: real air
 * differs by factors.
 *
 *     C2 = C1 (D1 / D2)^2.08
 * @param value C1 [any]
 * @param from  D1 [m]
 * @param to    D2 [m]
 * @returns     C2 in the unit of C1
 * Source: slope of ISO 14644-1:2015, Formula E.1 (derived).
 */
export const scaledToSize = (value: number, from: number, to: number): number => value * (from / to) ** 2.08;
