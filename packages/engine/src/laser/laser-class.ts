import { type CalculationStep, type CalculationValue, fromStep, step, val } from '../floor/calculation.js';
import { type Outcome, ok, positive, refuse, valueOf } from '../floor/problem.js';
import { gaussianOptics } from './beam-diameter.js';
import { type Emitted, emittedEnergy, emittedPower, notation } from './beam-exposure.js';
import { factorSteps } from './correction-factors.js';
import { limitingAperture } from './limiting-aperture.js';
import { editionWithoutClasses, negative, wavelengthOutside } from './messages.js';
import { beamDiameterAt } from './propagation.js';
import { nanometres, tidy } from './scale.js';
import { sourceAngles, timeRange, wavelengthRangeNm } from './tables.js';
import {
  classOneRows,
  classSource,
  classThreeBRows,
  classThreeR,
  classTwo,
  conditionSource,
  conditions,
  type EmissionRow,
  telescopeBand,
  timeBase,
} from './tables-class.js';
import type { Edition, FactorName, Worked } from './types.js';
import { marked } from './working.js';

export type LaserClass = '1' | '1M' | '2' | '2M' | '3R' | '3B' | '4';

export interface LaserClassArguments {
  /** Only IEC2014 has classes here. */
  readonly edition: Edition;
  /** [m] */
  readonly wavelength: number;
  /** d63 where it leaves [m] */
  readonly diameter: number;
  /** Full divergence at 1/e [rad]. */
  readonly divergence: number;
}

/** Limits of the classes in W (continuous) or J (single pulse); null where a class does not exist. */
export interface EmissionLimits {
  readonly one: number;
  readonly two: number | null;
  readonly threeR: number | null;
  readonly threeB: number;
}

export interface LaserClassFound extends Worked {
  readonly class: LaserClass;
  readonly unit: 'W' | 'J';
  readonly limits: EmissionLimits;
  /** Emission through the aperture of the naked-eye measurement (condition 3) and of the telescope (condition 1). */
  readonly naked: number;
  readonly telescope: number | null;
  /** Rows of class 1 tested. */
  readonly rows: readonly string[];
}

/**
 * Class of a continuous laser of one wavelength, a point source.
 *
 * Time base 100 s (30 000 s up to 400 nm), 0.25 s for classes 2, 2M and 3R. Emission is measured at 2 m through 50 mm and at 100 mm
 * through 7 mm (400 to 1400 nm; other bands as Table 10). Class 3B is tested with the whole power: the safe side.
 *
 * The class is the manufacturer's to declare, from the worst case with single faults; this is a plausibility check.
 * @param args  edition, wavelength [m], beam diameter [m] and divergence [rad] at 1/e
 * @param watts power [W]
 * @returns     class with limits and emissions [W], or `laser/class-edition`, `laser/wavelength-range`, `laser/emission`,
 *              `laser/diameter`, `laser/negative`
 * Source: IEC 60825-1:2014, Tables 3 to 8 and 10 (from memory).
 */
export function continuousLaserClass(args: LaserClassArguments, watts: number): Outcome<LaserClassFound> {
  const time = nanometres(args.wavelength) < timeBase.ultravioletTo ? timeBase.ultraviolet : timeBase.else;
  return classOf(args, emittedPower(watts), time);
}

/**
 * Class of a laser that gives one pulse, by the energy of the pulse. Trains need two more tests and are not classed here.
 * @param args        edition, wavelength [m], beam diameter [m] and divergence [rad] at 1/e
 * @param joules      energy [J]
 * @param pulse       duration, up to 0.25 s [s]
 * @param allInside   all energy passes the apertures of both measurements [-]
 * @returns           class with limits and emissions [J], or the problems of `continuousLaserClass`, `laser/pulse`
 * Source: IEC 60825-1:2014, Tables 3 to 8 and 10 (from memory).
 */
export function singlePulseLaserClass(
  args: LaserClassArguments,
  joules: number,
  pulse: number,
  allInside: 'all energy in aperture' | 'through apertures' = 'through apertures',
): Outcome<LaserClassFound> {
  const problems = positive('laser/pulse', 'pulse', pulse, 's');
  if (pulse > classTwo.time) problems.push(...pulseTooLong(pulse));
  if (problems.length > 0) return refuse(problems);
  return classOf(args, emittedEnergy(joules), tidy(pulse), allInside === 'all energy in aperture');
}

const pulseTooLong = (pulse: number) => [
  {
    code: 'laser/pulse',
    path: ['pulse'],
    message: `A pulse of ${pulse} s is longer than 0.25 s.`,
    hint: 'Class it as a continuous laser of the same power.',
  },
];

function classOf(
  args: LaserClassArguments,
  emitted: Emitted,
  time: number,
  allInside = false,
): Outcome<LaserClassFound> {
  const nm = nanometres(args.wavelength);
  const { amountUnit: unit } = notation(emitted);
  const problems = [
    ...positive('laser/emission', emitted.kind, emitted.amount, unit),
    ...positive('laser/diameter', 'diameter', args.diameter, 'm'),
  ];
  if (args.edition !== 'IEC2014') problems.push(editionWithoutClasses(args.edition));
  if (!(nm >= wavelengthRangeNm.from && nm < wavelengthRangeNm.to)) problems.push(wavelengthOutside(nm));
  if (!(args.divergence >= 0)) problems.push(negative('divergence', args.divergence, 'rad'));
  if (problems.length > 0) return refuse(problems);
  const limits = emissionLimits(nm, time, unit);
  const measured = emissions(args, nm, emitted, time, allInside);
  const found = decide(nm, measured.naked.result, measured.telescope?.result ?? null, emitted.amount, limits.values);
  return ok({
    class: found,
    unit,
    limits: limits.values,
    naked: measured.naked.result,
    telescope: measured.telescope?.result ?? null,
    rows: limits.rows,
    steps: [...limits.steps, ...measured.steps],
  });
}

/** The order of the standard: rising classes, the first that fits. */
function decide(
  nm: number,
  naked: number,
  telescope: number | null,
  total: number,
  { one, two, threeR, threeB }: EmissionLimits,
): LaserClass {
  const far = telescope ?? naked;
  const magnified = nm >= telescopeBand.from && nm < telescopeBand.to && total <= threeB;
  if (naked <= one && far <= one) return '1';
  if (naked <= one && magnified) return '1M';
  if (two !== null && naked <= two && far <= two) return '2';
  if (two !== null && naked <= two && magnified) return '2M';
  const most = Math.max(naked, far);
  if (threeR !== null && most <= threeR && total <= threeB) return '3R';
  return total <= threeB ? '3B' : '4';
}

interface LimitsFound extends Worked {
  readonly values: EmissionLimits;
  readonly rows: readonly string[];
}

function emissionLimits(nm: number, time: number, unit: 'W' | 'J'): LimitsFound {
  const rows = classOneRows.filter(
    (r) =>
      nm >= r.from &&
      nm < r.to &&
      time >= r.timeFrom &&
      (time < r.timeTo || (time === r.timeTo && time === timeRange.longest)),
  );
  const worked = rows.map((r) => emissionRow(r, nm, time, unit));
  const threeB = threeBStep(nm, time, unit);
  // The class 1 limit of 1250 to 1400 nm never exceeds that of class 3B (note to the tables).
  const parts = [...worked.map((w) => w.limit), ...(nm >= 1250 && nm < 1400 ? [threeB.limit] : [])];
  const one = step(
    'AEL_1',
    'emission limit of class 1',
    `min(${parts.map((p) => p.symbol).join(', ')})`,
    Object.fromEntries(parts.map((p) => [p.symbol, fromStep(p)])),
    Math.min(...parts.map((p) => p.result)),
    unit,
    classSource,
  );
  const two = twoStep(nm, time, one);
  const threeR = threeRStep(nm, time, one);
  return {
    rows: rows.map((r) => r.id),
    values: { one: one.result, two: two?.result ?? null, threeR: threeR?.result ?? null, threeB: threeB.limit.result },
    steps: [
      ...worked.flatMap((w) => w.steps),
      ...threeB.steps,
      one,
      ...(two ? [two] : []),
      ...(threeR ? [threeR] : []),
    ],
  };
}

interface RowWorked extends Worked {
  readonly limit: CalculationStep;
}

/** A row in the unit of the emission: energies and powers convert by the time, densities by the limiting aperture. */
function emissionRow(row: EmissionRow, nm: number, time: number, unit: 'W' | 'J'): RowWorked {
  const names = [...row.factors, ...(row.smallerOf ?? [])];
  const factors = names.flatMap((name) =>
    factorSteps(name, { edition: 'IEC2014', nm, time, alpha: sourceAngles.smallest }),
  );
  const named = (name: FactorName) => factors.find((f) => f.symbol === name)!;
  const values: Record<string, CalculationValue> = Object.fromEntries(names.map((n) => [n, fromStep(named(n))]));
  const terms = [String(row.coefficient), ...row.factors];
  let result = row.factors.reduce((product, n) => product * named(n).result, row.coefficient);
  if (row.smallerOf) {
    terms.push(`min(${row.smallerOf.join(', ')})`);
    result *= Math.min(...row.smallerOf.map((n) => named(n).result));
  }
  const t = val(time, 's', 'time base or pulse');
  if (row.timePower !== undefined) {
    terms.push(`t^${row.timePower}`);
    result *= time ** row.timePower;
    values.t = t;
  }
  const steps = [...factors];
  if (row.quantity === 'E' || row.quantity === 'H') {
    const aperture = valueOf(
      limitingAperture({ edition: 'IEC2014', organ: 'eye', wavelength: nm * 1e-9, duration: time }),
    );
    const d = marked(aperture.steps, row.id)[0]!;
    steps.push(d);
    terms.push(`pi * (${d.symbol} / 1000)^2 / 4`);
    values[d.symbol] = fromStep(d);
    result *= (Math.PI * aperture.diameter ** 2) / 4;
  }
  const isPower = row.quantity === 'P' || row.quantity === 'E';
  let expression = terms.join(' * ');
  if (isPower !== (unit === 'W')) {
    expression += isPower ? ' * t' : ' / t';
    result = isPower ? result * time : result / time;
    values.t = t;
  }
  const limit = step(`AEL_${row.id}`, `row ${row.id} of class 1`, expression, values, result, unit, classSource);
  return { limit, steps: [...steps, limit] };
}

function threeBStep(nm: number, time: number, unit: 'W' | 'J'): RowWorked {
  const row = classThreeBRows.find((r) => nm >= r.from && nm < r.to)!;
  const factor = row.factor
    ? factorSteps(row.factor, { edition: 'IEC2014', nm, time, alpha: sourceAngles.smallest })[0]!
    : null;
  const times = factor?.result ?? 1;
  const until = row.energyUntil * (row.factor === 'C4' ? times : 1);
  const name = 'emission limit of class 3B';
  const t = { t: val(time, 's', 'pulse') };
  const scaled = (value: number, withFactor: boolean, converted: '' | ' * t' | ' / t') => {
    const used = factor !== null && withFactor;
    const base = value * (used ? times : 1);
    const result = converted === ' * t' ? base * time : converted === ' / t' ? base / time : base;
    const values = { ...(used ? { [factor.symbol]: fromStep(factor) } : {}), ...(converted ? t : {}) };
    const text = `${value}${used ? ` * ${factor.symbol}` : ''}${converted}`;
    return step('AEL_3B', name, text, values, result, unit, classSource);
  };
  const inJoules = unit === 'J';
  const limit =
    time < 1e-9
      ? scaled(row.shortPower, true, inJoules ? ' * t' : '')
      : time < until
        ? scaled(row.energy, true, inJoules ? '' : ' / t')
        : scaled(row.power, row.factor === 'C2', inJoules ? ' * t' : '');
  return { limit, steps: [...(factor && limit.values[factor.symbol] ? [factor] : []), limit] };
}

/** Class 2: 1 mW from 0.25 s on; for pulses the limit of class 1. */
function twoStep(nm: number, time: number, one: CalculationStep): CalculationStep | null {
  if (nm < classTwo.from || nm >= classTwo.to) return null;
  const name = 'emission limit of class 2';
  if (one.unit === 'W') return step('AEL_2', name, '0.001', {}, classTwo.power, 'W', classSource, 'at 0.25 s');
  if (time < classTwo.time) return step('AEL_2', name, 'AEL_1', { AEL_1: fromStep(one) }, one.result, 'J', classSource);
  return step('AEL_2', name, '0.001 * t', { t: val(time, 's', 'pulse') }, classTwo.power * time, 'J', classSource);
}

function threeRStep(nm: number, time: number, one: CalculationStep): CalculationStep | null {
  if (nm < classThreeR.fromNm) return null;
  const name = 'emission limit of class 3R';
  const visible = nm >= classTwo.from && nm < classTwo.to;
  if (visible && one.unit === 'W')
    return step('AEL_3R', name, '0.005', {}, classThreeR.power, 'W', classSource, 'at 0.25 s');
  if (visible && time >= classTwo.time)
    return step(
      'AEL_3R',
      name,
      '0.005 * t',
      { t: val(time, 's', 'pulse') },
      classThreeR.power * time,
      'J',
      classSource,
    );
  const values = { AEL_1: fromStep(one) };
  return step('AEL_3R', name, '5 * AEL_1', values, classThreeR.times * one.result, one.unit, classSource);
}

interface Measured extends Worked {
  readonly naked: CalculationStep;
  readonly telescope: CalculationStep | null;
}

function emissions(
  args: LaserClassArguments,
  nm: number,
  emitted: Emitted,
  time: number,
  allInside: boolean,
): Measured {
  const condition = conditions.find((c) => nm >= c.from && nm < c.to)!;
  const growing = () =>
    valueOf(limitingAperture({ edition: 'IEC2014', organ: 'eye', wavelength: args.wavelength, duration: time }))
      .diameter * 1000;
  const near = condition.naked.aperture === 'growing' ? growing() : condition.naked.aperture;
  const naked = through('naked', args, emitted, near, condition.naked.distance, allInside);
  if (!condition.telescope) return { naked, telescope: null, steps: [naked] };
  const { aperture, distance } = condition.telescope;
  const wide = aperture === 'seven times' ? 7 * near : aperture;
  const telescope = through('telescope', args, emitted, wide, distance, allInside);
  return { naked, telescope, steps: [naked, telescope] };
}

function through(
  which: 'naked' | 'telescope',
  { diameter, divergence }: LaserClassArguments,
  emitted: Emitted,
  apertureMm: number,
  distanceMm: number,
  allInside: boolean,
): CalculationStep {
  const n = notation(emitted);
  const amount = { [n.amount]: val(emitted.amount, n.amountUnit, n.amountName) };
  const name = `emission through ${apertureMm} mm at ${distanceMm} mm (condition ${which === 'naked' ? 3 : 1})`;
  const symbol = `AE_${which}`;
  if (allInside)
    return step(symbol, name, n.amount, amount, emitted.amount, n.amountUnit, conditionSource, 'all energy inside');
  const d = valueOf(beamDiameterAt({ diameter, divergence, distance: distanceMm / 1000 })).diameter * 1000;
  const values = {
    ...amount,
    D: val(apertureMm, 'mm', 'aperture'),
    a: val(diameter * 1000, 'mm', 'beam diameter at 1/e'),
    phi: val(divergence * 1000, 'mrad', 'full divergence at 1/e'),
    z: val(distanceMm / 1000, 'm', 'distance'),
  };
  const result = -emitted.amount * Math.expm1(-((apertureMm / d) ** 2));
  const expression = `${n.amount} * (1 - exp(-D^2 / (a^2 + (phi * z)^2)))`;
  return step(symbol, name, expression, values, result, n.amountUnit, gaussianOptics);
}
