import { source } from '../floor/source.js';

/** Regimes of the test: D continuous, I long pulses, R nanosecond pulses, M ultrashort pulses. */
export type ScaleMode = 'D' | 'I' | 'R' | 'M';
export type ScaleStandard = 'EN207' | 'EN12254';

/** Limit of scale number n in a band: coefficient * 10^(n + power), as irradiance [W/m2] or radiant exposure [J/m2]. */
export interface ScaleLimit {
  readonly modes: readonly ScaleMode[];
  /** [nm] */
  readonly from: number;
  readonly to: number;
  readonly coefficient: number;
  readonly power: number;
  readonly quantity: 'E' | 'H';
}

export const scaleSources = {
  EN207: source('EN 207:2017, formulas as quoted in a public encyclopedia', 'published'),
  EN12254: source('EN 12254:1998, table in DGUV Vorschrift 11, annex 6', 'published'),
} as const;
export const spotFactorSource = source('DGUV Information 203-042, section 5.2 and annex 12', 'read');
export const pulseCountSource = source('DGUV Information 203-042, sections 5.3 and 5.4', 'read');

const limit = (
  modes: readonly ScaleMode[],
  from: number,
  to: number,
  coefficient: number,
  power: number,
  quantity: 'E' | 'H',
): ScaleLimit => ({ modes, from, to, coefficient, power, quantity });
const pulses: readonly ScaleMode[] = ['I', 'R'];

/** Bands meet as a <= x < b. */
export const scaleLimits: Readonly<Record<ScaleStandard, readonly ScaleLimit[]>> = {
  EN207: [
    limit(['D'], 180, 315, 1, -3, 'E'),
    limit(['D'], 315, 1400, 1, 1, 'E'),
    limit(['D'], 1400, 1e6, 1, 3, 'E'),
    limit(pulses, 180, 315, 3, 1, 'H'),
    limit(pulses, 315, 1400, 5, -3, 'H'),
    limit(pulses, 1400, 1e6, 1, 2, 'H'),
    limit(['M'], 180, 315, 3, 10, 'E'),
    limit(['M'], 315, 1400, 1.5, -4, 'H'),
    limit(['M'], 1400, 1e6, 1, 11, 'E'),
  ],
  EN12254: [
    limit(['D'], 180, 315, 1, -3, 'E'),
    limit(['D'], 315, 1050, 1, 0, 'E'),
    limit(['D'], 1050, 1400, 2.5, 1, 'E'),
    limit(['D'], 1400, 1e6, 1, 3, 'E'),
    limit(pulses, 180, 315, 3, 1, 'H'),
    limit(pulses, 315, 1400, 5, -3, 'H'),
    limit(pulses, 1400, 1e6, 1, 2, 'H'),
    limit(['M'], 180, 315, 3, 10, 'E'),
    limit(['M'], 315, 1400, 1.5, -4, 'H'),
    limit(['M'], 1400, 1e6, 1, 11, 'E'),
  ],
};

export const scaleNumbers = { lowest: 1, highest: 10 } as const;

/** Larger spots are harder on a filter: F = (d63/mm)^1.7 from 1 to 15 mm, 100 beyond; needed above these values from 315 nm on. */
export const spotFactorRule = {
  fromNm: 315,
  abovePower: 10,
  aboveIrradiance: 1e5,
  smallest: 1,
  largest: 15,
  power: 1.7,
  beyond: 100,
} as const;

/** Repeated pulses: H' = H N^0.25 from 400 nm on, above 1 Hz, for pulses shorter than 0.25 s. */
export const repeatRule = { fromNm: 400, aboveRate: 1, belowPulse: 0.25 } as const;

/** Upper ends of the pulse durations of the modes M and R, and of I [s]; longer counts as continuous. */
export const modeTimes = { ultrashort: 1e-9, nanosecond: 1e-6, long: 0.25 } as const;
