import { type Source, source } from '../floor/source.js';
import type { Edition, LimitLaw, LimitRow, Mechanism, Organ, SourceCondition } from './types.js';

/**
 * Figures of the exposure-limit tables. Nothing here is computed. Wavelengths in nm, times in s, angles in mrad, limits in J/m2 (H)
 * and W/m2 (E). Row names (I01, E01, S01) are ours. Values marked `from memory` must be compared with the standard before anyone
 * relies on them.
 */

const directive = 'Directive 2006/25/EC, Annex II (as transposed in national law)';
const iec = 'IEC 60825-1:2014, Annex A';
export const directive22: Source = source(directive, 'read', 'Table 2.2');
export const directive23: Source = source(directive, 'from memory', 'Table 2.3');
export const directive24: Source = source(directive, 'read', 'Table 2.4');
export const directive25: Source = source(directive, 'read', 'Table 2.5');
export const directive26: Source = source(directive, 'read', 'Table 2.6');
export const iecLimits: Source = source(iec, 'from memory');
const iecAsDirective: Source = source(
  iec,
  'from memory',
  'same value as Directive 2006/25/EC, Table 2.2, which was read',
);
const iecNearDirective: Source = source(
  iec,
  'from memory',
  'within 6 % of the 1 nm steps of Directive 2006/25/EC, Table 2.2',
);
export const iecPulses: Source = source('IEC 60825-1:2014, clause 4.3 f and Annex A', 'from memory');
export const rangeSource: Source = source('IEC 60825-1:2014, notes to the tables of limits', 'from memory');

/** Wavelengths for which laser limits exist: from 180 nm to below 1 mm. */
export const wavelengthRangeNm = { from: 180, to: 1e6 } as const;
/** Shorter exposures keep the irradiance of this time; longer ones are taken as the longer time. */
export const timeRange = { shortest: 1e-13, longest: 3e4 } as const;

type Short = 'phc' | 'thr' | 'ant';
const mechanisms: Readonly<Record<Short, Mechanism>> = {
  phc: 'photochemical',
  thr: 'retinal thermal',
  ant: 'cornea, lens or skin',
};

const row = (
  id: string,
  mechanism: Short,
  [from, to]: readonly [number, number],
  [timeFrom, timeTo]: readonly [number, number],
  quantity: 'H' | 'E',
  law: LimitLaw,
  origin: Source,
  when?: SourceCondition,
): LimitRow => {
  const base = { id, mechanism: mechanisms[mechanism], from, to, timeFrom, timeTo, quantity, law, source: origin };
  return when === undefined ? base : { ...base, when };
};
const c = (coefficient: number, ...factors: NonNullable<LimitLaw['factors']>): LimitLaw => ({ coefficient, factors });
const ct = (coefficient: number, timePower: number, ...factors: NonNullable<LimitLaw['factors']>): LimitLaw => ({
  coefficient,
  timePower,
  factors,
});

// biome-ignore-start format: tables read best one row a line
const iecEye: readonly LimitRow[] = [
  row('I01', 'ant', [180, 302.5], [1e-13, 1e-9], 'E', c(3e10), iecAsDirective),
  row('I02', 'phc', [180, 302.5], [1e-9, 3e4], 'H', c(30), iecAsDirective),
  row('I03', 'ant', [302.5, 315], [1e-13, 1e-9], 'E', c(3e10), iecAsDirective),
  row('I04', 'phc', [302.5, 315], [1e-9, 10], 'H', { coefficient: 1, smallerOf: ['C1', 'C2'] }, iecNearDirective),
  row('I05', 'phc', [302.5, 315], [10, 3e4], 'H', c(1, 'C2'), iecNearDirective),
  row('I06', 'ant', [315, 400], [1e-13, 1e-9], 'E', c(3e10), iecAsDirective),
  row('I07', 'ant', [315, 400], [1e-9, 10], 'H', c(1, 'C1'), iecAsDirective),
  row('I08', 'phc', [315, 400], [10, 1e3], 'H', c(1e4), iecLimits),
  row('I09', 'phc', [315, 400], [1e3, 3e4], 'E', c(10), iecLimits),
  row('I10', 'thr', [400, 700], [1e-13, 1e-11], 'H', c(1e-3, 'C6'), iecLimits),
  row('I11', 'thr', [400, 700], [1e-11, 5e-6], 'H', c(2e-3, 'C6'), iecLimits),
  row('I12', 'thr', [400, 700], [5e-6, 10], 'H', ct(18, 0.75, 'C6'), iecAsDirective),
  row('I13', 'thr', [400, 700], [10, 3e4], 'E', c(10), iecLimits, 'point'),
  row('I14', 'thr', [400, 700], [10, 3e4], 'H', ct(18, 0.75, 'C6'), iecLimits, 'to T2'),
  row('I15', 'thr', [400, 700], [10, 3e4], 'E', c(18, 'C6', 'T2'), iecLimits, 'past T2'),
  row('I16', 'phc', [400, 600], [10, 100], 'H', c(100, 'C3'), iecLimits),
  row('I17', 'phc', [400, 600], [100, 3e4], 'E', c(1, 'C3'), iecLimits),
  row('I18', 'thr', [700, 1050], [1e-13, 1e-11], 'H', c(1e-3, 'C4', 'C6'), iecLimits),
  row('I19', 'thr', [700, 1050], [1e-11, 5e-6], 'H', c(2e-3, 'C4', 'C6'), iecLimits),
  row('I20', 'thr', [700, 1050], [5e-6, 10], 'H', ct(18, 0.75, 'C4', 'C6'), iecAsDirective),
  row('I21', 'thr', [1050, 1400], [1e-13, 1e-11], 'H', c(1e-2, 'C6', 'C7'), iecLimits),
  row('I22', 'thr', [1050, 1400], [1e-11, 13e-6], 'H', c(2e-2, 'C6', 'C7'), iecLimits),
  row('I23', 'thr', [1050, 1400], [13e-6, 10], 'H', ct(90, 0.75, 'C6', 'C7'), iecAsDirective),
  row('I24', 'thr', [700, 1400], [10, 3e4], 'E', c(10, 'C4', 'C7'), iecLimits, 'point'),
  row('I25', 'thr', [700, 1400], [10, 3e4], 'H', ct(18, 0.75, 'C4', 'C6', 'C7'), iecLimits, 'to T2'),
  row('I26', 'thr', [700, 1400], [10, 3e4], 'E', c(18, 'C4', 'C6', 'C7', 'T2'), iecLimits, 'past T2'),
  // Caps at the skin limit: C7 grows without bound towards 1400 nm.
  row('I27', 'ant', [1250, 1400], [1e-13, 1e-9], 'E', c(2e11, 'C4'), iecLimits),
  row('I28', 'ant', [1250, 1400], [1e-9, 1e-7], 'H', c(200, 'C4'), iecLimits),
  row('I29', 'ant', [1250, 1400], [1e-7, 10], 'H', ct(1.1e4, 0.25, 'C4'), iecLimits),
  row('I30', 'ant', [1250, 1400], [10, 3e4], 'E', c(2e3, 'C4'), iecLimits),
  row('I31', 'ant', [1400, 1500], [1e-13, 1e-9], 'E', c(1e12), iecAsDirective),
  row('I32', 'ant', [1400, 1500], [1e-9, 1e-3], 'H', c(1e3), iecAsDirective),
  row('I33', 'ant', [1400, 1500], [1e-3, 10], 'H', ct(5600, 0.25), iecAsDirective),
  row('I34', 'ant', [1500, 1800], [1e-13, 1e-9], 'E', c(1e13), iecAsDirective),
  row('I35', 'ant', [1500, 1800], [1e-9, 10], 'H', c(1e4), iecAsDirective),
  row('I36', 'ant', [1800, 2600], [1e-13, 1e-9], 'E', c(1e12), iecAsDirective),
  row('I37', 'ant', [1800, 2600], [1e-9, 1e-3], 'H', c(1e3), iecAsDirective),
  row('I38', 'ant', [1800, 2600], [1e-3, 10], 'H', ct(5600, 0.25), iecAsDirective),
  row('I39', 'ant', [2600, 1e6], [1e-13, 1e-9], 'E', c(1e11), iecAsDirective),
  row('I40', 'ant', [2600, 1e6], [1e-9, 1e-7], 'H', c(100), iecAsDirective),
  row('I41', 'ant', [2600, 1e6], [1e-7, 10], 'H', ct(5600, 0.25), iecAsDirective),
  row('I42', 'ant', [1400, 1e6], [10, 3e4], 'E', c(1000), iecLimits),
];

const euEye: readonly LimitRow[] = [
  row('E01', 'ant', [180, 400], [1e-13, 1e-9], 'E', c(3e10), directive22),
  row('E02', 'phc', [180, 303], [1e-9, 3e4], 'H', c(30), directive22),
  row('E03', 'phc', [303, 315], [1e-9, 10], 'H', { coefficient: 1, smallerOf: ['C1', 'UVSTEP'] }, directive22),
  row('E04', 'phc', [303, 315], [10, 3e4], 'H', c(1, 'UVSTEP'), directive23),
  row('E05', 'ant', [315, 400], [1e-9, 10], 'H', c(1, 'C1'), directive22),
  row('E06', 'phc', [315, 400], [10, 3e4], 'H', c(1e4), directive23),
  row('E07', 'thr', [400, 700], [1e-13, 1e-11], 'H', c(1.5e-4, 'C6'), directive22),
  row('E08', 'thr', [400, 700], [1e-11, 1e-9], 'H', ct(2.7e4, 0.75, 'C6'), directive22),
  row('E09', 'thr', [400, 700], [1e-9, 1.8e-5], 'H', c(5e-3, 'C6'), directive22),
  row('E10', 'thr', [400, 700], [1.8e-5, 10], 'H', ct(18, 0.75, 'C6'), directive22),
  row('E11', 'thr', [400, 700], [10, 3e4], 'E', c(10), directive23, 'point'),
  row('E12', 'thr', [400, 700], [10, 3e4], 'H', ct(18, 0.75, 'C6'), directive23, 'to T2'),
  row('E13', 'thr', [400, 700], [10, 3e4], 'E', c(18, 'C6', 'T2'), directive23, 'past T2'),
  row('E14', 'phc', [400, 600], [10, 100], 'H', c(100, 'C3'), directive23),
  row('E15', 'phc', [400, 600], [100, 3e4], 'E', c(1, 'C3'), directive23),
  row('E16', 'thr', [700, 1050], [1e-13, 1e-11], 'H', c(1.5e-4, 'C4', 'C6'), directive22),
  row('E17', 'thr', [700, 1050], [1e-11, 1e-9], 'H', ct(2.7e4, 0.75, 'C4', 'C6'), directive22),
  row('E18', 'thr', [700, 1050], [1e-9, 1.8e-5], 'H', c(5e-3, 'C4', 'C6'), directive22),
  row('E19', 'thr', [700, 1050], [1.8e-5, 10], 'H', ct(18, 0.75, 'C4', 'C6'), directive22),
  row('E20', 'thr', [1050, 1400], [1e-13, 1e-11], 'H', c(1.5e-3, 'C6', 'C7'), directive22),
  row('E21', 'thr', [1050, 1400], [1e-11, 1e-9], 'H', ct(2.7e5, 0.75, 'C6', 'C7'), directive22),
  row('E22', 'thr', [1050, 1400], [1e-9, 5e-5], 'H', c(5e-2, 'C6', 'C7'), directive22),
  row('E23', 'thr', [1050, 1400], [5e-5, 10], 'H', ct(90, 0.75, 'C6', 'C7'), directive22),
  row('E24', 'thr', [700, 1400], [10, 3e4], 'E', c(10, 'C4', 'C7'), directive23, 'point'),
  row('E25', 'thr', [700, 1400], [10, 3e4], 'H', ct(18, 0.75, 'C4', 'C6', 'C7'), directive23, 'to T2'),
  row(
    'E26',
    'thr',
    [700, 1400],
    [10, 3e4],
    'E',
    { ...c(18, 'C4', 'C6', 'C7', 'T2'), cap: 1000 },
    directive23,
    'past T2',
  ),
  row('E27', 'ant', [1400, 1500], [1e-13, 1e-9], 'E', c(1e12), directive22),
  row('E28', 'ant', [1400, 1500], [1e-9, 1e-3], 'H', c(1e3), directive22),
  row('E29', 'ant', [1400, 1500], [1e-3, 10], 'H', ct(5600, 0.25), directive22),
  row('E30', 'ant', [1500, 1800], [1e-13, 1e-9], 'E', c(1e13), directive22),
  row('E31', 'ant', [1500, 1800], [1e-9, 10], 'H', c(1e4), directive22),
  row('E32', 'ant', [1800, 2600], [1e-13, 1e-9], 'E', c(1e12), directive22),
  row('E33', 'ant', [1800, 2600], [1e-9, 1e-3], 'H', c(1e3), directive22),
  row('E34', 'ant', [1800, 2600], [1e-3, 10], 'H', ct(5600, 0.25), directive22),
  row('E35', 'ant', [2600, 1e6], [1e-13, 1e-9], 'E', c(1e11), directive22),
  row('E36', 'ant', [2600, 1e6], [1e-9, 1e-7], 'H', c(100), directive22),
  row('E37', 'ant', [2600, 1e6], [1e-7, 10], 'H', ct(5600, 0.25), directive22),
  row('E38', 'ant', [1400, 1e6], [10, 3e4], 'E', c(1000), directive23),
];

/** Skin, both editions. Below 400 nm and from 1400 nm on the skin has the limits of the eye (and S01 for the shortest times). */
const skin: readonly LimitRow[] = [
  row('S01', 'ant', [180, 400], [1e-13, 1e-9], 'E', c(3e10), directive24),
  row('S03', 'ant', [400, 700], [1e-13, 1e-9], 'E', c(2e11), directive24),
  row('S04', 'ant', [700, 1400], [1e-13, 1e-9], 'E', c(2e11, 'C4'), directive24),
  row('S05', 'ant', [400, 1400], [1e-9, 1e-7], 'H', c(200, 'C4'), directive24),
  row('S06', 'ant', [400, 1400], [1e-7, 10], 'H', ct(1.1e4, 0.25, 'C4'), directive24),
  row('S07', 'ant', [400, 1400], [10, 3e4], 'E', c(2e3, 'C4'), directive24),
];
// biome-ignore-end format: end of the tables

/** Band in which the skin has its own rows; outside it the rows of the eye hold (Table 2.4, "see eye"). */
export const ownSkinBand = { from: 400, to: 1400 } as const;

const sameAsEye = (rows: readonly LimitRow[]): LimitRow[] =>
  rows.filter((r) => r.to <= ownSkinBand.from || r.from >= ownSkinBand.to);

export const limitRows: Readonly<Record<Edition, Readonly<Record<Organ, readonly LimitRow[]>>>> = {
  IEC2014: { eye: iecEye, skin: [...skin, ...sameAsEye(iecEye)] },
  EU2006: { eye: euEye, skin: [...skin, ...sameAsEye(euEye)] },
};

/**
 * Wavelengths at which the Directive starts a new list entry instead of sharing an edge (its rows are named 180 to 302, 303, ... 314,
 * 315 to 400), so that the rule "the stricter of two rows" does not apply there.
 */
export const unsharedEdgesNm: readonly number[] = [303, 315];
/** Table 2.2 of the Directive ends below 10 s and Table 2.3 begins there: limits of the eye share no edge at this time [s]. */
export const tableJoin = 10;

/** Steps of 1 nm between 303 and 315 nm in EU2006 [nm, J/m2]; between two steps the lower one holds. Source: directive22. */
export const ultravioletSteps: readonly (readonly [number, number])[] = [
  [303, 40],
  [304, 60],
  [305, 100],
  [306, 160],
  [307, 250],
  [308, 400],
  [309, 630],
  [310, 1000],
  [311, 1600],
  [312, 2500],
  [313, 4000],
  [314, 6300],
];

/** One piece of a correction factor: where it holds and its formula, as text and as function of the wavelength in nm. */
export interface FactorPiece {
  readonly from: number;
  readonly to: number;
  readonly expression: string;
  readonly at: (nm: number) => number;
  readonly source: Source;
}
const iecFactor = source('IEC 60825-1:2014, Table 9', 'from memory');
const piece = (from: number, to: number, expression: string, at: (nm: number) => number, origin = directive25) => ({
  from,
  to,
  expression,
  at,
  source: origin,
});
const c7Common = [
  piece(700, 1150, '1', () => 1),
  piece(1150, 1200, '10^(0.018 * (lam - 1150))', (nm) => 10 ** (0.018 * (nm - 1150))),
];
const commonFactors = {
  C2: [piece(302.5, 315, '10^(0.2 * (lam - 295))', (nm) => 10 ** (0.2 * (nm - 295)), iecFactor)],
  C3: [piece(400, 450, '1', () => 1), piece(450, 600, '10^(0.02 * (lam - 450))', (nm) => 10 ** (0.02 * (nm - 450)))],
  C4: [
    piece(400, 700, '1', () => 1),
    piece(700, 1050, '10^(0.002 * (lam - 700))', (nm) => 10 ** (0.002 * (nm - 700))),
    piece(1050, 1400, '5', () => 5),
  ],
};
export type WavelengthFactor = 'C2' | 'C3' | 'C4' | 'C7';
export const factorPieces: Readonly<Record<Edition, Readonly<Record<WavelengthFactor, readonly FactorPiece[]>>>> = {
  IEC2014: {
    ...commonFactors,
    C7: [
      ...c7Common,
      piece(1200, 1400, '8 + 10^(0.04 * (lam - 1250))', (nm) => 8 + 10 ** (0.04 * (nm - 1250)), iecFactor),
    ],
  },
  EU2006: { ...commonFactors, C7: [...c7Common, piece(1200, 1400, '8', () => 8)] },
};

/** Smallest and largest angular subtense that count, mrad; the 2013 limits shrink the largest with time. */
export const sourceAngles = { smallest: 1.5, largest: 100, t2Span: 98.5 } as const;
/** alpha_max of IEC2014: 5 mrad below 625 us, 200 * sqrt(t) up to 0.25 s, then 100 mrad. */
export const alphaMaxTimes = { short: 625e-6, long: 0.25, shortest: 5, growth: 200 } as const;
export const alphaMaxSource: Source = iecFactor;

/** Large exposed areas of skin above 1400 nm and beyond 10 s: 10/A W/m2 between 0.01 and 0.1 m2. */
export const largeArea = { fromNm: 1400, fromTime: 10, numerator: 10, highest: 1000, lowest: 100 } as const;
export const largeAreaSource: Source = source(
  'ICNIRP 2013 and IEC 60825-1:2014, notes to the skin limits',
  'from memory',
);

/** Time within which pulses count as one [nm, nm, IEC T_i, EU T_min in s]; null: the edition has none there. */
export const groupingTimes: readonly {
  readonly from: number;
  readonly to: number;
  readonly IEC2014: number | null;
  readonly EU2006: number;
}[] = [
  { from: 315, to: 400, IEC2014: null, EU2006: 1e-9 },
  { from: 400, to: 1050, IEC2014: 5e-6, EU2006: 18e-6 },
  { from: 1050, to: 1400, IEC2014: 13e-6, EU2006: 50e-6 },
  { from: 1400, to: 1500, IEC2014: 1e-3, EU2006: 1e-3 },
  { from: 1500, to: 1800, IEC2014: 10, EU2006: 10 },
  { from: 1800, to: 2600, IEC2014: 1e-3, EU2006: 1e-3 },
  { from: 2600, to: 1e6, IEC2014: 1e-7, EU2006: 1e-7 },
];

/** Limiting apertures: from 0.35 s (IEC2014) or 0.3 s (EU2006) to 10 s the diameter grows as 1.5 t^0.375 mm. */
export const apertureGrowthFrom: Readonly<Record<Edition, number>> = { IEC2014: 0.35, EU2006: 0.3 };
export const apertures = { small: 1, growth: 1.5, power: 0.375, growthTo: 10, long: 3.5, pupil: 7, far: 11, skin: 3.5 };
export const apertureBands = { pupilFrom: 400, pupilTo: 1400, farFrom: 1e5 } as const;
export const apertureSources: Readonly<Record<Edition, Source>> = {
  IEC2014: source('IEC 60825-1:2014, table of aperture diameters', 'from memory'),
  EU2006: source(directive, 'read', 'Tables 2.2 and 2.4'),
};
