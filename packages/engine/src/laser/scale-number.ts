import { type CalculationStep, fromStep, step, val } from '../floor/calculation.js';
import { type Outcome, ok, type Problem, positive, refuse } from '../floor/problem.js';
import { emittedEnergy, emittedPower, peakExposure } from './beam-exposure.js';
import { countNeeded, noScaleNumber, pulseNeeded, scaleNumberOutside, wavelengthOutside } from './messages.js';
import { nanometres, tidy } from './scale.js';
import { groupingTimes, wavelengthRangeNm } from './tables.js';
import {
  modeTimes,
  pulseCountSource,
  repeatRule,
  type ScaleLimit,
  type ScaleMode,
  type ScaleStandard,
  scaleLimits,
  scaleNumbers,
  scaleSources,
  spotFactorRule,
  spotFactorSource,
} from './tables-filter.js';
import type { Worked } from './types.js';
import { lastOf } from './working.js';

const unitOf = (quantity: 'E' | 'H') => (quantity === 'E' ? ('W/m2' as const) : ('J/m2' as const));

/** Row of the scale; wavelengths are checked before. */
const rowOf = (standard: ScaleStandard, mode: ScaleMode, nm: number): ScaleLimit =>
  scaleLimits[standard].find((l) => l.modes.includes(mode) && nm >= l.from && nm < l.to)!;

const wavelengthProblems = (nm: number): Problem[] =>
  nm >= wavelengthRangeNm.from && nm < wavelengthRangeNm.to ? [] : [wavelengthOutside(nm)];

/**
 * Mode in which a pulse must be tested: M below 1 ns, R to 1 us, I to 0.25 s, D beyond.
 * @param duration of one pulse [s]
 * @returns        mode [-]
 * Source: DGUV Information 203-042, section 5.1 (read).
 */
export function scaleModeOf(duration: number): ScaleMode {
  if (duration < modeTimes.ultrashort) return 'M';
  if (duration < modeTimes.nanosecond) return 'R';
  return duration <= modeTimes.long ? 'I' : 'D';
}

export interface ScaleLimitFound extends Worked {
  readonly limit: number;
  readonly unit: 'W/m2' | 'J/m2';
  /** Largest spectral transmittance of the number. */
  readonly transmittance: number;
}

/**
 * What a scale number withstands and lets through: LB numbers of filters (EN 207), AB numbers of screens (EN 12254).
 *
 *     limit = k 10^(n + c);  transmittance at most 10^-n
 * Screens of EN 12254 are for watched, temporary set-ups up to 100 W mean power and 30 J per pulse; the test lasts 100 s.
 * @param args standard, scale number 1 to 10 [-], mode [-], wavelength [m]
 * @returns    limit [W/m2 or J/m2], or `laser/scale-number`, `laser/wavelength-range`
 * Source: EN 12254:1998 in DGUV Vorschrift 11, annex 6 (published); EN 207:2017 (published in an encyclopedia).
 */
export function scaleNumberLimit(args: {
  readonly standard: ScaleStandard;
  readonly scaleNumber: number;
  readonly mode: ScaleMode;
  readonly wavelength: number;
}): Outcome<ScaleLimitFound> {
  const { standard, scaleNumber: n, mode } = args;
  const nm = nanometres(args.wavelength);
  const problems = wavelengthProblems(nm);
  if (!Number.isInteger(n) || n < scaleNumbers.lowest || n > scaleNumbers.highest) problems.push(scaleNumberOutside(n));
  if (problems.length > 0) return refuse(problems);
  const row = rowOf(standard, mode, nm);
  const limit = row.coefficient * 10 ** (n + row.power);
  const unit = unitOf(row.quantity);
  const values = { n: val(n, '1', 'scale number'), k: val(row.coefficient, '1'), c: val(row.power, '1') };
  return ok({
    limit,
    unit,
    transmittance: 10 ** -n,
    steps: [
      step(
        'limit',
        `limit of scale number ${n}, mode ${mode}`,
        'k * 10^(n + c)',
        values,
        limit,
        unit,
        scaleSources[standard],
      ),
      step('tau', 'largest transmittance', '10^(-n)', { n: values.n }, 10 ** -n, '1', scaleSources[standard]),
    ],
  });
}

/** Beam on the filter or screen: from its power or pulse energy and diameter, or the exposure as known. */
export interface ScaleNumberArguments {
  readonly standard: ScaleStandard;
  readonly mode: ScaleMode;
  readonly wavelength: number;
  /** Mean power, for mode D [W]. */
  readonly power?: number;
  /** Energy of one pulse, for modes I, R, M [J]. */
  readonly energy?: number;
  /** d63 on the surface [m]. */
  readonly diameter?: number;
  /** Known instead of power and diameter [W/m2]. */
  readonly irradiance?: number;
  /** Known instead of energy and diameter [J/m2]. */
  readonly radiantExposure?: number;
  readonly pulse?: number;
  readonly rate?: number;
  /** Pulses in the test; instead of rate and count time. */
  readonly pulseCount?: number;
  /** Time over which pulses are counted: 5 s in EN 207:2017, 10 s before [s]. */
  readonly countTime?: number;
}

export interface ScaleNumberFound extends Worked {
  readonly scaleNumber: number;
  /** Before correction: [W/m2] in mode D, [J/m2] else. */
  readonly exposure: number;
  /** Spot-size factor F in mode D; 1 where it is not asked for. */
  readonly spotFactor: number;
  /** N^0.25 of repeated pulses in modes I, R and M; 1 in mode D. */
  readonly repeatFactor: number;
  readonly corrected: number;
  readonly unit: 'W/m2' | 'J/m2';
}

/**
 * Smallest scale number that withstands and attenuates a beam: eyewear and filters (EN 207), screens (EN 12254).
 *
 *     D: E' = E F(d63), F = (d63/mm)^1.7 from 1 to 15 mm and 100 beyond, when P > 10 W or E > 1e5 W/m2 (315 nm to 1 mm)
 *     I, R, M: H' = H N^0.25, N = f t; pulses closer than T_i are summed
 * The smallest n with limit(n) >= the corrected exposure. A pulsed laser needs mode D with its mean power as well.
 * The choice of eyewear and screens belongs to the appointed laser safety officer.
 * @param args standard, mode, wavelength [m] and the beam: power [W], energy [J], d63 [m], pulse [s], rate [Hz]
 * @returns    scale number [-] and exposures [W/m2 or J/m2], or `laser/wavelength-range`, `laser/exposure`, `laser/diameter`,
 *             `laser/pulse-needed`, `laser/count-needed`, `laser/beyond-scale`
 * Source: DGUV Information 203-042, sections 5.2 to 5.4 and annex 12 (read); scales as in `scaleNumberLimit`.
 */
export function requiredScaleNumber(args: ScaleNumberArguments): Outcome<ScaleNumberFound> {
  const nm = nanometres(args.wavelength);
  const problems = wavelengthProblems(nm);
  if (problems.length > 0) return refuse(problems);
  const row = rowOf(args.standard, args.mode, nm);
  const found = args.mode === 'D' ? continuousExposure(args, nm) : pulsedExposure(args, row, nm);
  if (!found.ok) return found;
  const { corrected, steps } = found.value;
  const unit = unitOf(row.quantity);
  const limit = (n: number) => row.coefficient * 10 ** (n + row.power);
  const { lowest, highest } = scaleNumbers;
  let n: number = lowest;
  while (n <= highest && limit(n) < tidy(corrected)) n++;
  if (n > highest) return refuse([noScaleNumber(limit(highest), corrected, unit)]);
  const last = lastOf(steps);
  const chosen = step(
    'n',
    `scale number, ${args.standard === 'EN207' ? 'LB' : 'AB'}`,
    `max(1, ceil(log10(${last.symbol} / k) - c))`,
    { [last.symbol]: fromStep(last), k: val(row.coefficient, '1'), c: val(row.power, '1') },
    n,
    '1',
    scaleSources[args.standard],
    'smallest n whose limit k 10^(n + c) is not below the exposure',
  );
  return ok({ ...found.value, scaleNumber: n, unit, steps: [...steps, chosen] });
}

type Exposure = Omit<ScaleNumberFound, 'scaleNumber' | 'unit'>;

/** Irradiance with the spot-size factor where the rule asks for it. */
function continuousExposure(args: ScaleNumberArguments, nm: number): Outcome<Exposure> {
  const first = exposureStep(args, 'E');
  if (!first.ok) return first;
  const exposure = first.value.result;
  const spot = spotFactor({ ...args, irradiance: exposure, nm });
  if (!spot.ok) return spot;
  const factor = spot.value;
  const corrected = exposure * factor.result;
  const last = step(
    'E_F',
    'irradiance with the spot-size factor',
    'E * F',
    { E: fromStep(first.value), F: fromStep(factor) },
    corrected,
    'W/m2',
    spotFactorSource,
  );
  return ok({
    exposure,
    spotFactor: factor.result,
    repeatFactor: 1,
    corrected,
    steps: [first.value, factor, last],
  });
}

/**
 * Spot-size factor of filters and screens under continuous light.
 *
 *     F = (d63 / mm)^1.7 from 1 to 15 mm, 100 beyond, 1 below; only when P > 10 W or E > 1e5 W/m2, 315 nm to 1 mm
 * @param args irradiance [W/m2], wavelength nm [nm], d63 [m], power [W]
 * @returns    step with F [-], or `laser/diameter` when the rule asks for a diameter that is not known
 * Source: DGUV Information 203-042, section 5.2 and annex 12 (read).
 */
export function spotFactor(args: {
  readonly irradiance: number;
  readonly nm: number;
  readonly diameter?: number;
  readonly power?: number;
}): Outcome<CalculationStep> {
  const { fromNm, abovePower, aboveIrradiance, smallest, largest, power: exponent, beyond } = spotFactorRule;
  const name = 'spot-size factor';
  const strong = (args.power ?? 0) > abovePower || args.irradiance > aboveIrradiance;
  if (args.nm < fromNm || !strong)
    return ok(step('F', name, '1', {}, 1, '1', spotFactorSource, 'not asked for at this power and irradiance'));
  const problems = positive('laser/diameter', 'diameter', args.diameter ?? Number.NaN, 'm');
  if (problems.length > 0) return refuse(problems);
  const mm = tidy(args.diameter! * 1000);
  const values = { d63: val(mm, 'mm', 'beam diameter at 1/e') };
  if (mm > largest) return ok(step('F', name, '100', {}, beyond, '1', spotFactorSource, 'beam wider than 15 mm'));
  if (mm < smallest) return ok(step('F', name, '1', {}, 1, '1', spotFactorSource, 'beam narrower than 1 mm'));
  return ok(step('F', name, 'd63^1.7', values, mm ** exponent, '1', spotFactorSource));
}

/** The exposure as given, or from the beam. */
function exposureStep(args: ScaleNumberArguments, density: 'E' | 'H'): Outcome<CalculationStep> {
  const known = density === 'E' ? args.irradiance : args.radiantExposure;
  if (known === undefined) {
    const amount = density === 'E' ? args.power : args.energy;
    const emitted = density === 'E' ? emittedPower(amount ?? Number.NaN) : emittedEnergy(amount ?? Number.NaN);
    const found = peakExposure(emitted, args.diameter ?? Number.NaN);
    return found.ok ? ok(found.value.steps[0]!) : found;
  }
  const unit = density === 'E' ? 'W/m2' : 'J/m2';
  const problems = positive('laser/exposure', 'exposure', known, unit);
  if (problems.length > 0) return refuse(problems);
  const given = { [`${density}_0`]: val(known, unit, 'exposure as given') };
  return ok(step(density, 'exposure on the surface', `${density}_0`, given, known, unit, pulseCountSource));
}

/** Radiant exposure with the count of pulses; peak power density where the scale wants that. */
function pulsedExposure(args: ScaleNumberArguments, row: ScaleLimit, nm: number): Outcome<Exposure> {
  const first = exposureStep(args, 'H');
  if (!first.ok) return first;
  const h = first.value;
  if (row.quantity === 'E') {
    if (!(args.pulse !== undefined && args.pulse > 0)) return refuse([pulseNeeded()]);
    const values = { H: fromStep(h), t_p: val(args.pulse, 's', 'pulse duration') };
    const peak = h.result / args.pulse;
    const last = step('E_peak', 'peak irradiance', 'H / t_p', values, peak, 'W/m2', pulseCountSource);
    return ok({ exposure: h.result, spotFactor: 1, repeatFactor: 1, corrected: peak, steps: [h, last] });
  }
  const repeated = repeatedPulses(args, nm);
  if (!repeated.ok) return repeated;
  const { steps, factor, summed } = repeated.value;
  const corrected = h.result * summed * factor;
  const [n, m] = steps;
  const last = step(
    'H_N',
    'radiant exposure with the count of pulses',
    `H${m ? ' * m' : ''}${n ? ' * N^0.25' : ''}`,
    { H: fromStep(h), ...(n ? { N: fromStep(n) } : {}), ...(m ? { m: fromStep(m) } : {}) },
    corrected,
    'J/m2',
    pulseCountSource,
  );
  return ok({ exposure: h.result, spotFactor: 1, repeatFactor: factor, corrected, steps: [h, ...steps, last] });
}

export interface RepeatedPulses extends Worked {
  /** N^0.25 [-]. */
  readonly factor: number;
  /** Pulses summed within T_i. */
  readonly summed: number;
}

/**
 * How much harder repeated pulses are on a filter or screen than one: N^0.25, after pulses closer than T_i are summed.
 *
 *     H' = H m N^0.25, N = f t (or t / T_i with m = f T_i); no steps where one pulse counts alone
 * @param args pulse [s], rate [Hz], and the count of pulses [-] or the time over which they are counted [s]
 * @param nm   wavelength [nm]
 * @returns    factor, pulses summed, steps `N` and `m`, or `laser/count-needed`
 * Source: DGUV Information 203-042, section 5.3 (read).
 */
export function repeatedPulses(
  args: Pick<ScaleNumberArguments, 'pulse' | 'rate' | 'pulseCount' | 'countTime'>,
  nm: number,
): Outcome<RepeatedPulses> {
  const { pulse, rate, pulseCount, countTime } = args;
  const counted = (count: number, expression: string, values: CalculationStep['values']) =>
    step('N', 'pulses counted', expression, values, count, '1', pulseCountSource);
  const alone: RepeatedPulses = { factor: 1, summed: 1, steps: [] };
  if (nm < repeatRule.fromNm || (pulse ?? 0) >= repeatRule.belowPulse) return ok(alone);
  if (pulseCount !== undefined) {
    const count = Math.max(1, pulseCount);
    return ok({ factor: count ** 0.25, summed: 1, steps: [counted(count, String(count), {})] });
  }
  if (rate === undefined || rate <= repeatRule.aboveRate) return ok(alone);
  if (countTime === undefined) return refuse([countNeeded()]);
  const t = val(countTime, 's', 'time over which pulses are counted');
  const f = val(rate, 'Hz', 'repetition rate');
  const group = groupingTimes.find((g) => nm >= g.from && nm < g.to)?.IEC2014 ?? 0;
  if (tidy(rate * group) > 1) {
    const within = Math.min(group, countTime);
    const tg = val(within, 's', 'time within which pulses are summed');
    const summed = rate * within;
    const count = countTime / within;
    const m = step('m', 'pulses summed', 'f * T_i', { f, T_i: tg }, summed, '1', pulseCountSource);
    return ok({ factor: count ** 0.25, summed, steps: [counted(count, 't / T_i', { t, T_i: tg }), m] });
  }
  const count = Math.max(1, rate * countTime);
  return ok({ factor: count ** 0.25, summed: 1, steps: [counted(count, 'max(1, f * t)', { f, t })] });
}
