import type { Outcome } from '../floor/index.js';
import { aboveZero, checked, finite } from './arguments.js';
import { indexRange } from './messages.js';

export interface AirIndex {
  /** n - 1 [-] */
  readonly refractivity: number;
  /** dn/dT at constant pressure [1/K] */
  readonly perKelvin: number;
  /** dn/dp at constant temperature [1/Pa] */
  readonly perPascal: number;
}

const within = (name: string, value: number, low: number, high: number, unit: string) =>
  value >= low && value <= high ? [] : [indexRange(name, `${value} ${unit}`, `${low} to ${high} ${unit}`)];

/**
 * Refractive index of dry air, with its slopes.
 *
 *     s = 1/um^2;  ns = 1e-8 (8342.54 + 2406147/(130 - s) + 15998/(38.9 - s))
 *     X = (1 + 1e-8 (0.601 - 0.00972 t) p) / (1 + 0.003661 t);  n - 1 = p ns X / 96095.43
 * Water vapour (about -3.7e-10 per Pa of its pressure) and carbon dioxide are not in it.
 * @param wavelength  0.3 um to 1.7 um; the equation was fitted from 0.35 um to 0.65 um [m]
 * @param temperature -40 degC to 100 degC, absolute [K]
 * @param pressure    10 kPa to 140 kPa [Pa]
 * @returns           n - 1 and slopes, or `air/index-range`
 * Source: Birch and Downs 1994, Metrologia 31, 315 (published in public codes; ranges from memory).
 */
export function airRefractiveIndex(wavelength: number, temperature: number, pressure: number): Outcome<AirIndex> {
  const micrometres = wavelength * 1e6;
  const t = temperature - 273.15;
  const problems = [
    ...within('wavelength', micrometres, 0.3, 1.7, 'um'),
    ...within('temperature', t, -40, 100, 'degC'),
    ...within('pressure', pressure, 10_000, 140_000, 'Pa'),
  ];
  return checked(problems, () => {
    const s = 1 / micrometres ** 2;
    const standard = 1e-8 * (8342.54 + 2406147 / (130 - s) + 15998 / (38.9 - s));
    const compress = 1e-8 * (0.601 - 0.00972 * t);
    const warm = 1 + 0.003661 * t;
    const numerator = 1 + compress * pressure;
    const factor = (pressure * standard) / 96095.43;
    return {
      refractivity: (factor * numerator) / warm,
      perKelvin: (factor * (-1e-8 * 0.00972 * pressure * warm - numerator * 0.003661)) / warm ** 2,
      perPascal: (standard * (1 + 2 * compress * pressure)) / (96095.43 * warm),
    };
  });
}

/**
 * Bending of a beam by a temperature gradient across it; it bends towards the colder air.
 *
 *     angle = L |dn/dT| dT/dx;  shift = L^2/2 |dn/dT| dT/dx
 * @param path      L [m]
 * @param gradient  dT/dx [K/m]
 * @param perKelvin dn/dT, its sign does not matter [1/K]
 * @returns         angle [rad] and shift [m], or `air/not-positive`, `air/not-finite`
 * Source: ray equation for small angles (derived).
 */
export const beamBending = (
  path: number,
  gradient: number,
  perKelvin: number,
): Outcome<{ readonly angle: number; readonly shift: number }> =>
  checked(
    [...aboveZero({ path: [path, 'm'] }), ...finite({ gradient: [gradient, 'K/m'], perKelvin: [perKelvin, '1/K'] })],
    () => {
      const bend = Math.abs(perKelvin * gradient);
      return { angle: path * bend, shift: (path ** 2 / 2) * bend };
    },
  );
