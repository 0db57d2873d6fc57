import { type CalculationStep, step, val } from '../floor/calculation.js';
import { type Outcome, ok, positive, refuse } from '../floor/problem.js';
import { alphaMaxStep, factorSteps } from './correction-factors.js';
import { sourceAngleNotUsable, wavelengthOutside } from './messages.js';
import { milliradians, nanometres } from './scale.js';
import { directive25, factorPieces, sourceAngles, type WavelengthFactor, wavelengthRangeNm } from './tables.js';
import type { Edition, FactorName, Worked } from './types.js';

/**
 * Field of view within which photochemical exposure of the retina counts; leaving it out is the safe simplification.
 *
 *     11 mrad up to 100 s, 1.1 sqrt(t) mrad up to 10 000 s, 110 mrad beyond
 * @param duration exposure t [s]
 * @returns        full angle [rad], or `laser/duration`
 * Source: Directive 2006/25/EC, Table 2.5 (read).
 */
export function photochemicalFieldOfView(duration: number): Outcome<Worked & { readonly angle: number }> {
  const problems = positive('laser/duration', 'duration', duration, 's');
  if (problems.length > 0) return refuse(problems);
  const mrad = duration <= 100 ? 11 : duration <= 1e4 ? 1.1 * Math.sqrt(duration) : 110;
  const grows = duration > 100 && duration <= 1e4;
  const s = step(
    'gamma_ph',
    'field of view of the photochemical limit',
    grows ? '1.1 * sqrt(t)' : String(mrad),
    grows ? { t: val(duration, 's', 'exposure') } : {},
    mrad,
    'mrad',
    directive25,
  );
  return ok({ angle: mrad / 1000, steps: [s] });
}

export interface CorrectionFactors extends Worked {
  /** By name: C1 to C7 as they exist at this wavelength, T2 [s], alpha_max [mrad]. */
  readonly factors: Readonly<Record<string, number>>;
}

/**
 * All correction factors that exist at a wavelength: C3, C4, C6, C7, T2 and alpha_max in 400 to 1400 nm, C1 and C2 below.
 * @param args edition, wavelength [m], time [s] (needed for C1 and for alpha_max), angular subtense [rad]
 * @returns    factors by their IEC names, or `laser/wavelength-range`, `laser/duration`, `laser/source-angle`
 * Source: Directive 2006/25/EC, Table 2.5 (read); IEC 60825-1:2014, Table 9 (from memory).
 */
export function correctionFactors(args: {
  readonly edition: Edition;
  readonly wavelength: number;
  readonly duration?: number;
  readonly sourceAngle?: number;
}): Outcome<CorrectionFactors> {
  const nm = nanometres(args.wavelength);
  const problems = args.duration === undefined ? [] : positive('laser/duration', 'duration', args.duration, 's');
  if (!(nm >= wavelengthRangeNm.from && nm < wavelengthRangeNm.to)) problems.push(wavelengthOutside(nm));
  if (args.sourceAngle !== undefined && !(args.sourceAngle > 0 && args.sourceAngle < 3.2))
    problems.push(sourceAngleNotUsable(args.sourceAngle));
  if (problems.length > 0) return refuse(problems);
  const alpha = args.sourceAngle === undefined ? sourceAngles.smallest : milliradians(args.sourceAngle);
  const given = { edition: args.edition, nm, time: args.duration ?? Number.NaN, alpha };
  const steps: CalculationStep[] = existing(nm, args).flatMap((name) => factorSteps(name, given));
  const retinal = nm >= 400 && nm < 1400;
  if (retinal && args.duration !== undefined && !steps.some((s) => s.symbol === 'alpha_max'))
    steps.push(alphaMaxStep(args.edition, args.duration));
  return ok({ factors: Object.fromEntries(steps.map((s) => [s.symbol, s.result])), steps });
}

/** Names of the factors that exist at the wavelength and can be told from what is given. */
function existing(
  nm: number,
  args: { readonly edition: Edition; readonly duration?: number; readonly sourceAngle?: number },
) {
  const wanted: readonly WavelengthFactor[] = ['C2', 'C3', 'C4', 'C7'];
  const names: FactorName[] = wanted.filter((name) =>
    factorPieces[args.edition][name].some((p) => nm >= p.from && nm < p.to),
  );
  if (nm >= 302.5 && nm < 400 && args.duration !== undefined) names.push('C1');
  const point = args.sourceAngle === undefined || milliradians(args.sourceAngle) <= sourceAngles.smallest;
  const timeKnown = args.edition === 'EU2006' || args.duration !== undefined;
  if (nm >= 400 && nm < 1400) names.push('T2', ...(point || timeKnown ? (['C6'] as const) : []));
  return names;
}
