import { source } from '../floor/source.js';
import type { FactorName } from './types.js';

/** Accessible emission limits and measurement conditions. Everything here is from memory. Wavelengths nm, times s. */
export const classSource = source('IEC 60825-1:2014, Tables 3 to 8', 'from memory');
export const conditionSource = source('IEC 60825-1:2014, Table 10', 'from memory');

/** P [W], Q [J], or E [W/m2] and H [J/m2] that count over the limiting aperture. */
export interface EmissionRow {
  readonly id: string;
  readonly from: number;
  readonly to: number;
  readonly timeFrom: number;
  readonly timeTo: number;
  readonly quantity: 'P' | 'Q' | 'E' | 'H';
  readonly coefficient: number;
  readonly timePower?: number;
  readonly factors: readonly FactorName[];
  readonly smallerOf?: readonly [FactorName, FactorName];
}

const row = (
  id: string,
  [from, to]: readonly [number, number],
  [timeFrom, timeTo]: readonly [number, number],
  quantity: EmissionRow['quantity'],
  coefficient: number,
  ...factors: FactorName[]
): EmissionRow => ({ id, from, to, timeFrom, timeTo, quantity, coefficient, factors });
const withTime = (timePower: number, base: EmissionRow): EmissionRow => ({ ...base, timePower });

// biome-ignore-start format: tables read best one row a line
/** Class 1 and 1M for C6 = 1. */
export const classOneRows: readonly EmissionRow[] = [
  row('A01', [180, 302.5], [1e-13, 1e-9], 'P', 2.4e4),
  row('A02', [180, 302.5], [1e-9, 3e4], 'Q', 2.4e-5),
  row('A03', [302.5, 315], [1e-13, 1e-9], 'P', 2.4e4),
  { ...row('A04', [302.5, 315], [1e-9, 10], 'Q', 7.9e-7), smallerOf: ['C1', 'C2'] },
  row('A05', [302.5, 315], [10, 3e4], 'Q', 7.9e-7, 'C2'),
  row('A06', [315, 400], [1e-13, 1e-9], 'P', 2.4e4),
  row('A07', [315, 400], [1e-9, 10], 'Q', 7.9e-7, 'C1'),
  row('A08', [315, 400], [10, 1e3], 'Q', 7.9e-3),
  row('A09', [315, 400], [1e3, 3e4], 'P', 7.9e-6),
  row('A10', [400, 700], [1e-13, 1e-11], 'Q', 3.8e-8),
  row('A11', [400, 700], [1e-11, 5e-6], 'Q', 7.7e-8),
  withTime(0.75, row('A12', [400, 700], [5e-6, 10], 'Q', 7e-4)),
  row('A13', [400, 500], [10, 100], 'Q', 3.9e-3, 'C3'),
  row('A14', [400, 500], [100, 3e4], 'P', 3.9e-5, 'C3'),
  row('A15', [450, 700], [10, 3e4], 'P', 3.9e-4),
  row('A16', [700, 1050], [1e-13, 1e-11], 'Q', 3.8e-8, 'C4'),
  row('A17', [700, 1050], [1e-11, 5e-6], 'Q', 7.7e-8, 'C4'),
  withTime(0.75, row('A18', [700, 1050], [5e-6, 10], 'Q', 7e-4, 'C4')),
  row('A19', [1050, 1400], [1e-13, 1e-11], 'Q', 3.8e-7, 'C7'),
  row('A20', [1050, 1400], [1e-11, 13e-6], 'Q', 7.7e-7, 'C7'),
  withTime(0.75, row('A21', [1050, 1400], [13e-6, 10], 'Q', 3.5e-3, 'C7')),
  row('A22', [700, 1400], [10, 3e4], 'P', 3.9e-4, 'C4', 'C7'),
  row('A23', [1400, 1500], [1e-13, 1e-9], 'P', 8e5),
  row('A24', [1400, 1500], [1e-9, 1e-3], 'Q', 8e-4),
  withTime(0.25, row('A25', [1400, 1500], [1e-3, 0.35], 'Q', 4.4e-3)),
  withTime(1, row('A26', [1400, 1500], [0.35, 10], 'Q', 1e-2)),
  row('A27', [1500, 1800], [1e-13, 1e-9], 'P', 8e6),
  row('A28', [1500, 1800], [1e-9, 0.35], 'Q', 8e-3),
  withTime(0.75, row('A29', [1500, 1800], [0.35, 10], 'Q', 1.8e-2)),
  row('A30', [1800, 2600], [1e-13, 1e-9], 'P', 8e5),
  row('A31', [1800, 2600], [1e-9, 1e-3], 'Q', 8e-4),
  withTime(0.25, row('A32', [1800, 2600], [1e-3, 0.35], 'Q', 4.4e-3)),
  withTime(1, row('A33', [1800, 2600], [0.35, 10], 'Q', 1e-2)),
  row('A34', [2600, 4000], [1e-13, 1e-9], 'P', 8e4),
  row('A35', [2600, 4000], [1e-9, 1e-7], 'Q', 8e-5),
  withTime(0.25, row('A36', [2600, 4000], [1e-7, 0.35], 'Q', 4.4e-3)),
  withTime(1, row('A37', [2600, 4000], [0.35, 10], 'Q', 1e-2)),
  row('A38', [1400, 4000], [10, 3e4], 'P', 1e-2),
  row('A39', [4000, 1e6], [1e-13, 1e-9], 'E', 1e11),
  row('A40', [4000, 1e6], [1e-9, 1e-7], 'H', 100),
  withTime(0.25, row('A41', [4000, 1e6], [1e-7, 10], 'H', 5600)),
  row('A42', [4000, 1e6], [10, 3e4], 'E', 1000),
];
// biome-ignore-end format: end of the table

/** Class 3B: power below 1 ns, energy up to `energyUntil` [s], power beyond; each with its factor. */
export interface ClassThreeBRow {
  readonly from: number;
  readonly to: number;
  readonly shortPower: number;
  readonly energy: number;
  readonly energyUntil: number;
  readonly power: number;
  /** Factor on the short power and the energy, and (`C4`) on the time; `C2` also on the long power. */
  readonly factor?: 'C2' | 'C4';
}
export const classThreeBRows: readonly ClassThreeBRow[] = [
  { from: 180, to: 302.5, shortPower: 3.8e5, energy: 3.8e-4, energyUntil: 0.25, power: 1.5e-3 },
  { from: 302.5, to: 315, shortPower: 1.25e4, energy: 1.25e-5, energyUntil: 0.25, power: 5e-5, factor: 'C2' },
  { from: 315, to: 400, shortPower: 1.25e8, energy: 0.125, energyUntil: 0.25, power: 0.5 },
  { from: 400, to: 700, shortPower: 3e7, energy: 0.03, energyUntil: 0.06, power: 0.5 },
  { from: 700, to: 1050, shortPower: 3e7, energy: 0.03, energyUntil: 0.06, power: 0.5, factor: 'C4' },
  { from: 1050, to: 1400, shortPower: 1.5e8, energy: 0.15, energyUntil: 0.25, power: 0.5 },
  { from: 1400, to: 1e6, shortPower: 1.25e8, energy: 0.125, energyUntil: 0.25, power: 0.5 },
];

/** Visible classes 2 and 3R from 0.25 s on [W]; class 3R elsewhere is five times class 1. */
export const classTwo = { from: 400, to: 700, time: 0.25, power: 1e-3 } as const;
export const classThreeR = { power: 5e-3, times: 5, fromNm: 302.5 } as const;
/** Time base without intended viewing [s]. */
export const timeBase = { ultraviolet: 3e4, else: 100, ultravioletTo: 400 } as const;
/** Classes 1M and 2M exist here only [nm]. */
export const telescopeBand = { from: 302.5, to: 4000 } as const;

/** Aperture [mm; `growing` from 1 mm at 0.35 s to 3.5 mm at 10 s] and distance [mm] of the two measurements. */
export interface Condition {
  readonly from: number;
  readonly to: number;
  readonly telescope: { readonly aperture: number | 'seven times'; readonly distance: number } | null;
  readonly naked: { readonly aperture: number | 'growing'; readonly distance: number };
}
export const conditions: readonly Condition[] = [
  { from: 180, to: 302.5, telescope: null, naked: { aperture: 1, distance: 0 } },
  { from: 302.5, to: 400, telescope: { aperture: 7, distance: 2000 }, naked: { aperture: 1, distance: 100 } },
  { from: 400, to: 1400, telescope: { aperture: 50, distance: 2000 }, naked: { aperture: 7, distance: 100 } },
  {
    from: 1400,
    to: 4000,
    telescope: { aperture: 'seven times', distance: 2000 },
    naked: { aperture: 'growing', distance: 100 },
  },
  { from: 4000, to: 1e5, telescope: null, naked: { aperture: 'growing', distance: 0 } },
  { from: 1e5, to: 1e6, telescope: null, naked: { aperture: 11, distance: 0 } },
];
