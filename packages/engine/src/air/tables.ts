import { type Source, source } from '../floor/index.js';
import type { Clothing, EmptyCell, FilterClass } from './types.js';

export const sources = {
  classTable: source('ISO 14644-1:2015', 'published', 'Table 1'),
  classFormula: source('ISO 14644-1:2015', 'from memory', 'Annex E, Formula E.1 and Table E.1'),
  locations: source('ISO 14644-1:2015', 'from memory', 'Table A.1 and Formula A.1'),
  locations1999: source('ISO 14644-1:1999', 'published', 'Annex B (withdrawn edition)'),
  sampleVolume: source('ISO 14644-1:2015', 'published', 'A.4.4'),
  evaluation: source('ISO 14644-1:2015', 'published', 'A.6'),
  confidence1999: source('ISO 14644-1:1999', 'from memory', 'Annex C, Table C.1 (withdrawn edition)'),
  recovery: source('ISO 14644-3', 'published', 'recovery test (B.12 in 2005; B.4 in 2019, from memory)'),
  wellMixed: source('mass balance of one well-mixed zone', 'derived'),
  limitShare: source('design share of the class limit, 0.3 to 0.5', 'common practice'),
  people: source(
    'Whyte and Hejab 2007, Particle and microbial airborne dispersion from people',
    'published',
    'abstract',
  ),
  sizeSlope: source('slope of the class limits over size, ISO 14644-1:2015', 'derived', 'Formula E.1'),
  orifice: source('orifice equation, textbook of fluid mechanics', 'from memory'),
  gapVelocity: source('ISO 14644-4:2001', 'from memory', 'Annex A, low-pressure displacement'),
  continuity: source('continuity', 'derived'),
  velocityBand: source('EU GMP Annex 1 (2022)', 'from memory', 'guidance value 0.36 to 0.54 m/s'),
  nonUniformity: source('sample standard deviation over mean; 15 to 20 % accepted', 'common practice'),
  typicalChanges: source('ISO 14644-4:2001', 'from memory', 'Annex B examples'),
  coverage: source('filter face over clean area', 'common practice'),
  fanCurve: source('fan curve meets system curve', 'derived'),
  filters: source('EN 1822-1:2019', 'published', 'classes at the most penetrating size'),
  levelSum: source('energy sum of sound levels', 'derived'),
  roomEquation: source('room equation, textbook of acoustics', 'from memory'),
  heatBalance: source('steady heat balance of an air stream', 'derived'),
  expansion: source('linear thermal expansion', 'derived'),
  refractiveIndex: source('Birch and Downs 1994, Metrologia 31, 315, updated Edlen equation', 'published'),
  rayBending: source('ray equation for small angles', 'derived'),
  lumenMethod: source('lumen method', 'from memory'),
  photometry: source('inverse square and cosine laws of photometry', 'derived'),
  lightLevels: source('EN 12464-1', 'from memory', 'tables of tasks'),
  lightTightness: source('estimate of an integrating enclosure', 'derived'),
  ageOfAir: source('Roulet, Ventilation and Airflow in Buildings', 'published', 'ch. 3, eq. 3.10 to 3.12 (Sandberg)'),
  federal: source('FED-STD-209E (1992, withdrawn 2001)', 'from memory', 'class limit formula'),
  federalTable: source('Prudent Practices in the Laboratory (2011)', 'published', 'Table 9.4'),
  units: source('NIST SP 811', 'from memory', 'Appendix B'),
  poisson: source('exact Poisson limit, chi-square quantile with 2N+2 degrees of freedom', 'derived'),
  coincidence: source('Poisson dead-time model', 'derived'),
  duct: source('White, Viscous Fluid Flow', 'from memory', 'ch. 3; Shah and London 1978'),
  vortex: source('Taylor and Green 1937', 'from memory'),
  annex20: source('Nielsen 1990, specification of the IEA Annex 20 two-dimensional test case', 'from memory'),
} as const satisfies Readonly<Record<string, Source>>;

/** Density and specific heat of room air, 20 degC and 101 325 Pa. Source: handbook values, rounded (from memory). */
export const roomAir = { density: 1.2, specificHeat: 1005 } as const;
export const roomAirSource = source('air at 20 degC and 101 325 Pa', 'from memory');

/** Columns of the class table [m]. */
export const classSizes = [0.1e-6, 0.2e-6, 0.3e-6, 0.5e-6, 1e-6, 5e-6] as const;

const c: EmptyCell = 'too many to count';
const d: EmptyCell = 'too few for statistics';
const e: EmptyCell = 'too few and lost in the sampling line';

/**
 * Limits per cubic metre at and above the size, for whole classes; words where the table sets no limit (its notes c, d, e).
 * Source: ISO 14644-1:2015, Table 1 (published).
 */
export const classTable: Readonly<Record<number, readonly (number | EmptyCell)[]>> = {
  1: [10, d, d, d, d, e],
  2: [100, 24, 10, d, d, e],
  3: [1_000, 237, 102, 35, d, e],
  4: [10_000, 2_370, 1_020, 352, 83, e],
  5: [100_000, 23_700, 10_200, 3_520, 832, e],
  6: [1_000_000, 237_000, 102_000, 35_200, 8_320, 293],
  7: [c, c, c, 352_000, 83_200, 2_930],
  8: [c, c, c, 3_520_000, 832_000, 29_300],
  9: [c, c, c, 35_200_000, 8_320_000, 293_000],
};

/** Area not exceeded [m2] and number of sampling locations. Source: ISO 14644-1:2015, Table A.1 (from memory). */
export const locationTable = [
  [2, 1], [4, 2], [6, 3], [8, 4], [10, 5], [24, 6], [28, 7], [32, 8], [36, 9], [52, 10], [56, 11], [64, 12], [68, 13],
  [72, 14], [76, 15], [104, 16], [108, 17], [116, 18], [148, 19], [156, 20], [192, 21], [232, 22], [276, 23], [352, 24],
  [436, 25], [636, 26], [1000, 27],
] as const; // biome-ignore format: one table

/**
 * One-sided 95 % factors for 2 to 9 locations: as printed, and the Student quantiles they are rounded from.
 * Source: ISO 14644-1:1999, Table C.1 (from memory); quantiles: any table of Student's distribution (from memory).
 */
export const confidenceFactors: Readonly<Record<number, { readonly printed: number; readonly exact: number }>> = {
  2: { printed: 6.3, exact: 6.313752 },
  3: { printed: 2.9, exact: 2.919986 },
  4: { printed: 2.4, exact: 2.353363 },
  5: { printed: 2.1, exact: 2.131847 },
  6: { printed: 2.0, exact: 2.015048 },
  7: { printed: 1.9, exact: 1.94318 },
  8: { printed: 1.9, exact: 1.894579 },
  9: { printed: 1.9, exact: 1.859548 },
};

/** Particles per person and minute, mean of 55 persons. Source: Whyte and Hejab 2007, abstract (published). */
export const emissionPerMinute: Readonly<
  Record<Clothing, readonly { readonly size: number; readonly count: number }[]>
> = {
  indoor: [
    { size: 0.5e-6, count: 2_130_000 },
    { size: 5e-6, count: 332_000 },
  ],
  cleanroom: [
    { size: 0.5e-6, count: 1_020_000 },
    { size: 5e-6, count: 37_300 },
  ],
};

/**
 * Integral and local penetration at the most penetrating size; null where the standard sets no local value.
 * Source: EN 1822-1:2019; same integral values in the groups of ISO 29463-1 (published).
 */
export const filterTable: Readonly<
  Record<FilterClass, { readonly integral: number; readonly local: number | null; readonly iso29463: string | null }>
> = {
  E10: { integral: 0.15, local: null, iso29463: null },
  E11: { integral: 0.05, local: null, iso29463: null },
  E12: { integral: 0.005, local: null, iso29463: null },
  H13: { integral: 5e-4, local: 2.5e-3, iso29463: '35 H' },
  H14: { integral: 5e-5, local: 2.5e-4, iso29463: '45 H' },
  U15: { integral: 5e-6, local: 2.5e-5, iso29463: '55 U' },
  U16: { integral: 5e-7, local: 2.5e-6, iso29463: '65 U' },
  U17: { integral: 5e-8, local: 1e-6, iso29463: '75 U' },
};

/**
 * Limits per cubic foot as printed, by size [um], with the ISO class that agrees at 0.5 um.
 * Source: Prudent Practices in the Laboratory (2011), Table 9.4 (published).
 */
export const federalTable: Readonly<
  Record<number, { readonly iso: number; readonly perCubicFoot: readonly (readonly [size: number, limit: number])[] }>
> = {
  1: { iso: 3, perCubicFoot: [[0.1, 35], [0.2, 7.5], [0.3, 3], [0.5, 1]] },
  10: { iso: 4, perCubicFoot: [[0.1, 350], [0.2, 75], [0.3, 30], [0.5, 10]] },
  100: { iso: 5, perCubicFoot: [[0.2, 750], [0.3, 300], [0.5, 100]] },
  1000: { iso: 6, perCubicFoot: [[0.5, 1000], [5, 7]] },
  10000: { iso: 7, perCubicFoot: [[0.5, 10_000], [5, 70]] },
  100000: { iso: 8, perCubicFoot: [[0.5, 100_000], [5, 700]] },
}; // biome-ignore format: one table

/** Air changes per hour of built examples, by class in operation. Source: ISO 14644-4:2001, Annex B (from memory). */
export const typicalAirChanges: Readonly<Record<number, readonly [least: number, most: number]>> = {
  6: [70, 160],
  7: [30, 70],
  8: [10, 20],
};

/** Maintained illuminance by task [lx]. Source: EN 12464-1 (from memory). */
export const lightLevels: Readonly<Record<string, number>> = {
  'laboratory, general': 500,
  'precision work': 750,
  'technical training room': 750,
  corridor: 100,
};

/** Heat of a seated person [W]. Source: from memory. */
export const personHeat = 100;
export const personHeatSource = source('heat of a seated person', 'from memory');
