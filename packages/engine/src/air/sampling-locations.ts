import type { Outcome } from '../floor/index.js';
import { aboveZero, checked } from './arguments.js';
import { locationTable } from './tables.js';

/** Areas are computed from drawn corners; a square millimetre more is rounding and asks for no further location. */
const areaRounding = 1e-6;

/**
 * Least number of sampling locations for a classification: the first row of the table whose area is not exceeded.
 *
 *     N = 27 A / 1000, rounded up, above 1000 m2
 * It is not the square root of the area: that belongs to the edition of 1999.
 * @param area floor area of the clean zone [m2]
 * @returns locations [-], or `air/not-positive`
 * Source: ISO 14644-1:2015, Table A.1 and Formula A.1 (from memory; rebuilt from the hypergeometric model in the tests).
 */
export const samplingLocations = (area: number): Outcome<number> =>
  checked(aboveZero({ area: [area, 'm2'] }), () => {
    const row = locationTable.find(([upTo]) => area <= upTo + areaRounding);
    return row ? row[1] : Math.ceil((27 * area) / 1000 - areaRounding);
  });

/**
 * Number of sampling locations in the withdrawn edition, for old reports only.
 *
 *     N = sqrt(A), rounded up
 * @param area floor area of the clean zone [m2]
 * @returns locations [-], or `air/not-positive`
 * Source: ISO 14644-1:1999, Annex B (published in secondary sources).
 */
export const samplingLocations1999 = (area: number): Outcome<number> =>
  checked(aboveZero({ area: [area, 'm2'] }), () => Math.ceil(Math.sqrt(area) - areaRounding));
