import type { CalculationStep } from '../floor/calculation.js';
import type { Source } from '../floor/source.js';

/**
 * Edition of the exposure limits. `IEC2014`: IEC 60825-1:2014 and ICNIRP 2013. `EU2006`: Directive 2006/25/EC, Annex II, still
 * the legal limit for workers in the European Union.
 */
export type Edition = 'IEC2014' | 'EU2006';
export const editions: readonly Edition[] = ['IEC2014', 'EU2006'];

/** What a site asks for: one edition, or the lower limit of the two. */
export type EditionChoice = Edition | 'stricter of both';

export type Organ = 'eye' | 'skin';

/** What the light does: photochemical damage, heat at the retina, or damage in front of it (cornea, lens, skin). */
export type Mechanism = 'photochemical' | 'retinal thermal' | 'cornea, lens or skin';

/** Where a diameter is measured on the profile; the divergence follows the same convention. */
export type DiameterConvention = '1/e' | '1/e2' | 'fwhm';

export type BeamProfile = 'gaussian' | 'top-hat';

/** Factors of the tables by their IEC names (C4 is C_A, C3 is C_B, C7 is C_C, C6 is C_E in ICNIRP and EU texts). */
export type FactorName = 'C1' | 'C2' | 'C3' | 'C4' | 'C6' | 'C7' | 'T2' | 'UVSTEP';

/** value = coefficient * t^timePower * factors (or the smaller of two factors), never above `cap`. T2 enters as T2^-0.25. */
export interface LimitLaw {
  readonly coefficient: number;
  readonly timePower?: number;
  readonly factors?: readonly FactorName[];
  readonly smallerOf?: readonly [FactorName, FactorName];
  readonly cap?: number;
}

/** `point`: alpha up to 1.5 mrad; `to T2` and `past T2`: larger sources before and after the time T2. */
export type SourceCondition = 'point' | 'to T2' | 'past T2';

/** One row of a table of exposure limits. Wavelengths in nm and times in s, as the tables print them. */
export interface LimitRow {
  readonly id: string;
  readonly mechanism: Mechanism;
  readonly from: number;
  readonly to: number;
  readonly timeFrom: number;
  readonly timeTo: number;
  readonly when?: SourceCondition;
  /** H: radiant exposure [J/m2]; E: irradiance [W/m2]. */
  readonly quantity: 'H' | 'E';
  readonly law: LimitLaw;
  readonly source: Source;
}

/** Anything that shows its way: the steps hold what is printed. */
export interface Worked {
  readonly steps: readonly CalculationStep[];
}

/** One row that was tested, in both forms. */
export interface TestedRow {
  readonly row: string;
  readonly mechanism: Mechanism;
  readonly irradiance: number;
  readonly radiantExposure: number;
  readonly source: Source;
}

/** An exposure limit with the rows and factors behind it. */
export interface ExposureLimit extends Worked {
  readonly edition: Edition;
  readonly organ: Organ;
  /** [m] */
  readonly wavelength: number;
  /** Exposure that the limit is for [s]; 30 000 s at most. */
  readonly duration: number;
  /** [W/m2] over the whole exposure. */
  readonly irradiance: number;
  /** [J/m2] of the whole exposure. */
  readonly radiantExposure: number;
  /** Row that set the limit: the smallest of `rows`. */
  readonly row: string;
  readonly mechanism: Mechanism;
  readonly rows: readonly TestedRow[];
  /** Factors used, by name; C's are pure numbers, T2 in s, alpha_max in mrad, UVSTEP in J/m2. */
  readonly factors: Readonly<Record<string, number>>;
}
