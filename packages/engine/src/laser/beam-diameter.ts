import { step, val } from '../floor/calculation.js';
import { type Outcome, ok, positive, refuse } from '../floor/problem.js';
import { source } from '../floor/source.js';
import { conventionUnknown } from './messages.js';
import type { DiameterConvention, Worked } from './types.js';

export const gaussianOptics = source('Gaussian beam optics', 'derived');

/** d63 (at 1/e of the peak) of a Gaussian beam = share * diameter in the other convention. */
const d63Of: Readonly<Record<DiameterConvention, { readonly expression: string; readonly share: number }>> = {
  '1/e': { expression: 'd', share: 1 },
  '1/e2': { expression: 'd / sqrt(2)', share: Math.SQRT1_2 },
  fwhm: { expression: 'd / sqrt(log(2))', share: 1 / Math.sqrt(Math.LN2) },
};

/** Factor that turns a diameter or a divergence into the 1/e convention (Gaussian profile). */
export const toD63 = (convention: DiameterConvention): number => d63Of[convention].share;

export interface BeamDiameters extends Worked {
  /** Diameter at 1/e of the peak: holds 63.2 % of the power; the one that hazard documents use [m]. */
  readonly d63: number;
  /** Diameter at 1/e2 of the peak: holds 86.5 %; the one of most data sheets [m]. */
  readonly d86: number;
  readonly fwhm: number;
}

/**
 * Diameters of a Gaussian beam in the three conventions.
 *
 *     d86 = sqrt(2) d63;  FWHM = sqrt(ln 2) d63
 * Taking d86 for d63 halves the hazard: always ask which one a data sheet gives. Divergences convert by the same factors.
 * @param diameter   [m]
 * @param convention where it is measured [-]
 * @returns          d63, d86, full width at half maximum [m], or `laser/diameter`, `laser/convention`
 * Source: Gaussian beam optics (derived).
 */
export function beamDiameters(diameter: number, convention: DiameterConvention): Outcome<BeamDiameters> {
  const problems = positive('laser/diameter', 'diameter', diameter, 'm');
  if (!(convention in d63Of)) problems.push(conventionUnknown(convention));
  if (problems.length > 0) return refuse(problems);
  const { expression, share } = d63Of[convention];
  const d63 = diameter * share;
  const d86 = d63 * Math.SQRT2;
  const fwhm = d63 * Math.sqrt(Math.LN2);
  const name = (where: string) => `diameter at ${where}`;
  const mm = 1000;
  const first = step(
    'd63',
    name('1/e of the peak'),
    expression,
    { d: val(diameter * mm, 'mm', name(convention)) },
    d63 * mm,
    'mm',
    gaussianOptics,
  );
  const from = { d63: val(d63 * mm, 'mm', first.name, 'step d63') };
  return ok({
    d63,
    d86,
    fwhm,
    steps: [
      first,
      step('d86', name('1/e2 of the peak'), 'd63 * sqrt(2)', from, d86 * mm, 'mm', gaussianOptics),
      step('fwhm', 'full width at half maximum', 'd63 * sqrt(log(2))', from, fwhm * mm, 'mm', gaussianOptics),
    ],
  });
}
