import { type CalculationStep, step, val } from '../floor/calculation.js';
import { type Outcome, ok, positive, refuse } from '../floor/problem.js';
import { wavelengthOutside } from './messages.js';
import { nanometres } from './scale.js';
import { apertureBands, apertureGrowthFrom, apertureSources, apertures, wavelengthRangeNm } from './tables.js';
import type { Edition, Organ, Worked } from './types.js';

export interface LimitingAperture extends Worked {
  /** [m] */
  readonly diameter: number;
}

/**
 * Diameter over which an exposure is averaged before it is compared with the limit, also when the beam is smaller.
 *
 * Eye: 7 mm from 400 to 1400 nm; 1 mm, growing as 1.5 t^0.375 mm to 3.5 mm at 10 s, in the ultraviolet and from 1400 nm to 0.1 mm;
 * 11 mm beyond. Skin: 3.5 mm, 11 mm beyond 0.1 mm.
 * @param args edition, organ, wavelength [m], duration [s]
 * @returns    diameter [m], or `laser/wavelength-range`, `laser/duration`
 * Source: Directive 2006/25/EC, Tables 2.2 and 2.4 (read); IEC 60825-1:2014 (from memory).
 */
export function limitingAperture(args: {
  readonly edition: Edition;
  readonly organ: Organ;
  readonly wavelength: number;
  readonly duration: number;
}): Outcome<LimitingAperture> {
  const nm = nanometres(args.wavelength);
  const problems = positive('laser/duration', 'duration', args.duration, 's');
  if (!(nm >= wavelengthRangeNm.from && nm < wavelengthRangeNm.to)) problems.push(wavelengthOutside(nm));
  if (problems.length > 0) return refuse(problems);
  const s = apertureStep(args.edition, args.organ, nm, args.duration);
  return ok({ diameter: s.result / 1000, steps: [s] });
}

function apertureStep(edition: Edition, organ: Organ, nm: number, t: number): CalculationStep {
  const origin = apertureSources[edition];
  const fixed = (mm: number) => step('D', `limiting aperture of the ${organ}`, String(mm), {}, mm, 'mm', origin);
  if (nm >= apertureBands.farFrom) return fixed(apertures.far);
  if (organ === 'skin') return fixed(apertures.skin);
  if (nm >= apertureBands.pupilFrom && nm < apertureBands.pupilTo) return fixed(apertures.pupil);
  if (t < apertureGrowthFrom[edition]) return fixed(apertures.small);
  if (t >= apertures.growthTo) return fixed(apertures.long);
  return step(
    'D',
    `limiting aperture of the ${organ}`,
    '1.5 * t^0.375',
    { t: val(t, 's', 'exposure') },
    apertures.growth * t ** apertures.power,
    'mm',
    origin,
  );
}
