import { type Outcome, ok, refuse } from '../floor/index.js';
import { federalClass as federalClassProblem, sizeRange } from './messages.js';
import { federalTable } from './tables.js';

/** Exact by the inch. Source: NIST SP 811, Appendix B (from memory). */
export const cubicFoot = 0.3048 ** 3;

export interface FederalLimit {
  /** As printed, per cubic foot; null where the table has no entry. */
  readonly printedPerCubicFoot: number | null;
  readonly perCubicFoot: number;
  /** [1/m3] */
  readonly perCubicMetre: number;
  /** Agrees at 0.5 um only. */
  readonly isoClass: number;
}

/**
 * Limit of a class of the withdrawn federal standard, to read old documents; never state a class to it.
 *
 *     C = Nc (0.5 um / d)^2.2 per cubic foot
 * @param federalClass Nc: 1, 10, 100, 1000, 10 000 or 100 000 [-]
 * @param size         d, 0.1 um to 5 um [m]
 * @returns            limits, or `air/fs209-class`, `air/size-range`
 * Source: FED-STD-209E (1992, withdrawn 2001), formula from memory; Prudent Practices in the Laboratory (2011), Table 9.4.
 */
export function federalLimit(federalClass: number, size: number): Outcome<FederalLimit> {
  const row = federalTable[federalClass];
  const inRange = size >= 0.1e-6 * (1 - 1e-9) && size <= 5e-6 * (1 + 1e-9);
  const problems = [...(row ? [] : [federalClassProblem(federalClass)]), ...(inRange ? [] : [sizeRange(size)])];
  if (!row || problems.length > 0) return refuse(problems);
  const printed = row.perCubicFoot.find(([um]) => Math.abs(um * 1e-6 - size) < size * 1e-9);
  const perCubicFoot = federalClass * (0.5e-6 / size) ** 2.2;
  return ok({
    printedPerCubicFoot: printed ? printed[1] : null,
    perCubicFoot,
    perCubicMetre: perCubicFoot / cubicFoot,
    isoClass: row.iso,
  });
}
