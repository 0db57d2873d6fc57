import { type CalculationStep, step, val } from '../floor/calculation.js';
import {
  alphaMaxSource,
  alphaMaxTimes,
  directive22,
  directive25,
  factorPieces,
  iecLimits,
  sourceAngles,
  ultravioletSteps,
  type WavelengthFactor,
} from './tables.js';
import type { Edition, FactorName } from './types.js';

/** What the factors depend on, in the units of the tables. */
export interface FactorArguments {
  readonly edition: Edition;
  /** [nm] */
  readonly nm: number;
  /** Time of the limit being tested [s]. */
  readonly time: number;
  /** Angular subtense of the source; 1.5 or less is a point source [mrad]. */
  readonly alpha: number;
}

const degrees = 'mrad';

/**
 * Largest angular subtense that counts: 100 mrad (EU2006), or for IEC2014 5 mrad below 625 us, 200 sqrt(t) up to 0.25 s, then 100.
 * @param edition edition of the limits [-]
 * @param time    time of the limit being tested [s]
 * @returns       step with alpha_max [mrad]
 * Source: Directive 2006/25/EC Table 2.5 (read); IEC 60825-1:2014 Table 9 (from memory).
 */
export function alphaMaxStep(edition: Edition, time: number): CalculationStep {
  const name = 'largest angular subtense that counts';
  if (edition === 'EU2006') return step('alpha_max', name, '100', {}, sourceAngles.largest, degrees, directive25);
  const { short, long, shortest, growth } = alphaMaxTimes;
  if (time < short) return step('alpha_max', name, '5', {}, shortest, degrees, alphaMaxSource);
  if (time > long) return step('alpha_max', name, '100', {}, sourceAngles.largest, degrees, alphaMaxSource);
  return step(
    'alpha_max',
    name,
    '200 * sqrt(t)',
    { t: val(time, 's') },
    growth * Math.sqrt(time),
    degrees,
    alphaMaxSource,
  );
}

/** The piece of a factor that holds; at an edge that two pieces of the Directive share, the one with the smaller value. */
function wavelengthFactor(name: WavelengthFactor, { edition, nm }: FactorArguments): CalculationStep {
  const held = factorPieces[edition][name].filter(
    (p) => nm >= p.from && (nm < p.to || (edition === 'EU2006' && nm === p.to)),
  );
  const [first, ...rest] = held;
  if (!first) throw new Error(`factor ${name} asked for at ${nm} nm`);
  const piece = rest.reduce((least, p) => (p.at(nm) < least.at(nm) ? p : least), first);
  const values = piece.expression.includes('lam') ? { lam: val(nm, 'nm', 'wavelength') } : {};
  return step(name, `correction factor ${name}`, piece.expression, values, piece.at(nm), '1', piece.source);
}

function extendedSourceFactor({ edition, time, alpha }: FactorArguments): CalculationStep[] {
  const name = 'factor for the size of the source, C6';
  const { smallest, largest } = sourceAngles;
  if (alpha <= smallest)
    return [
      step('C6', name, 'max(1.5, alpha) / 1.5', { alpha: val(alpha, degrees) }, 1, '1', directive25, 'point source'),
    ];
  if (edition === 'EU2006') {
    const inside = alpha <= largest;
    const result = inside ? alpha / smallest : alpha ** 2 / (smallest * largest);
    const expression = inside ? 'alpha / 1.5' : 'alpha^2 / (1.5 * 100)';
    return [step('C6', name, expression, { alpha: val(alpha, degrees) }, result, '1', directive25)];
  }
  const most = alphaMaxStep(edition, time);
  const values = { alpha: val(alpha, degrees), alpha_max: val(most.result, degrees, most.name, 'step alpha_max') };
  const result = Math.min(alpha, most.result) / smallest;
  return [most, step('C6', name, 'min(alpha, alpha_max) / 1.5', values, result, '1', alphaMaxSource)];
}

/**
 * T2: the time from which the limit of an extended source no longer falls.
 *
 *     T2 = 10 * 10^((alpha - 1.5) / 98.5) s, alpha between 1.5 and 100 mrad
 * @param alpha angular subtense [mrad]
 * @returns     step with T2 [s]
 * Source: Directive 2006/25/EC, Table 2.5 (read).
 */
export function t2Step(alpha: number): CalculationStep {
  const { smallest, largest, t2Span } = sourceAngles;
  const within = Math.max(smallest, Math.min(alpha, largest));
  return step(
    'T2',
    'thermal time of the source, T2',
    '10 * 10^((max(1.5, min(alpha, 100)) - 1.5) / 98.5)',
    { alpha: val(alpha, degrees) },
    10 * 10 ** ((within - smallest) / t2Span),
    's',
    directive25,
  );
}

function ultravioletStep(nm: number): CalculationStep {
  const entry = ultravioletSteps.filter(([from]) => nm >= from).at(-1);
  if (!entry) throw new Error(`no ultraviolet step at ${nm} nm`);
  const [from, exposure] = entry;
  return step('UVSTEP', `limit of the 1 nm step from ${from} nm`, String(exposure), {}, exposure, 'J/m2', directive22);
}

/**
 * The steps that give one factor, its own step last.
 * @param name      factor [-]
 * @param arguments edition, wavelength [nm], time [s] and angular subtense [mrad]
 * @returns         steps; a factor outside its band is a bug of the caller
 * Source: Directive 2006/25/EC, Table 2.5 (read); IEC 60825-1:2014, Table 9 (from memory).
 */
export function factorSteps(name: FactorName, given: FactorArguments): CalculationStep[] {
  switch (name) {
    case 'C1':
      return [
        step(
          'C1',
          'ultraviolet limit by heat, C1',
          '5600 * t^0.25',
          { t: val(given.time, 's') },
          5600 * given.time ** 0.25,
          'J/m2',
          given.edition === 'EU2006' ? directive22 : iecLimits,
        ),
      ];
    case 'C6':
      return extendedSourceFactor(given);
    case 'T2':
      return [t2Step(given.alpha)];
    case 'UVSTEP':
      return [ultravioletStep(given.nm)];
    default:
      return [wavelengthFactor(name, given)];
  }
}
