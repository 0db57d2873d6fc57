import { step } from '../floor/calculation.js';
import {
  type CalculationStep,
  type CalculationValue,
  fromStep,
  numberText,
  type Outcome,
  ok,
  refuse,
  type Source,
  val,
} from '../floor/index.js';
import { classLimit, classLimitUnrounded } from './class-limit.js';
import { curveOutside } from './messages.js';
import { tabledOperatingPoint } from './operating-point.js';
import { sources } from './tables.js';
import type { FanPoint } from './types.js';

/**
 * Step of the class limit: the rounded formula, which gives every filled cell of the class table.
 * @param classNumber N [-]
 * @param size        D [m]
 * @returns           a step in 1/m3, or the problems of the class limit
 * Source: ISO 14644-1:2015, Table 1 and Annex E, Formula E.1.
 */
export function classLimitStep(classNumber: number, size: number, origin?: string): Outcome<CalculationStep> {
  const limit = classLimit(classNumber, size);
  if (!limit.ok) return limit;
  const rounding = Math.max(1, 10 ** (Math.floor(Math.log10(classLimitUnrounded(classNumber, size))) - 2));
  return ok(
    step(
      'Cn',
      `limit of ISO class ${numberText(classNumber)} at ${numberText(size * 1e6)} \u00b5m`,
      'round(10^N * (0.1/D)^2.08 / r) * r',
      {
        N: val(classNumber, '1', 'class', origin),
        D: val(size * 1e6, 'um', 'particle size', origin),
        r: val(rounding, '1/m3', 'rounding to three figures'),
      },
      limit.value,
      '1/m3',
      Number.isInteger(classNumber) ? sources.classTable : sources.classFormula,
      'The table prints this formula rounded to at most three figures and to a whole number.',
    ),
  );
}

export interface UnitsAgainstGaps {
  readonly curve: readonly FanPoint[];
  readonly count: CalculationValue;
  /** A [m2] */
  readonly gapArea: CalculationValue;
  /** Cd [1] */
  readonly dischargeCoefficient: CalculationValue;
  /** rho [kg/m3] */
  readonly density: CalculationValue;
  /** Where the curve comes from. */
  readonly origin: string;
}

export interface UnitsWorking {
  /** All units [m3/s] */
  readonly flow: number;
  /** One unit [m3/s] */
  readonly unitFlow: number;
  /** Over-pressure that they work against [Pa] */
  readonly pressure: number;
  readonly steps: readonly CalculationStep[];
}

const perHour = 3600;

/**
 * Equal fan filter units that blow into an enclosure and work against the over-pressure that its gaps hold. Flows in m3/h, as
 * fan curves print them.
 *
 *     p1 - f (q - q1) = b q^2 with b = rho/2 (n / (3600 Cd A))^2 and f the fall of the curve on the piece that holds q
 * @returns flow, pressure and the steps, or `air/fan-curve`, `air/operating-point-outside`
 * Source: fan curve meets orifice equation (derived).
 */
export function unitsAgainstGaps(u: UnitsAgainstGaps): Outcome<UnitsWorking> {
  const quadratic = (u.density.value / 2) * (u.count.value / (u.dischargeCoefficient.value * u.gapArea.value)) ** 2;
  const point = tabledOperatingPoint(u.curve, { linear: 0, quadratic });
  if (!point.ok) return point;
  const { flow: unitFlow, pressure } = point.value;
  const next = u.curve.findIndex((p, i) => i > 0 && p.flow >= unitFlow);
  const [a, b] = [u.curve[next - 1], u.curve[next]];
  if (!a || !b) return refuse([curveOutside('below the first')]);
  const onCurve = (value: number, unit: string) => val(value, unit, 'point of the fan curve', u.origin);
  const resistance = step(
    'b',
    'resistance of the gaps to one unit of n',
    'rho/2 * (n/(3600*Cd*A))^2',
    { rho: u.density, n: u.count, Cd: u.dischargeCoefficient, A: u.gapArea },
    quadratic / perHour ** 2,
    'Pa h2/m6',
    sources.orifice,
  );
  const fall = step(
    'f',
    'fall of the fan curve between its points',
    '(p1-p2)/(q2-q1)',
    {
      p1: onCurve(a.pressure, 'Pa'),
      p2: onCurve(b.pressure, 'Pa'),
      q1: onCurve(a.flow * perHour, 'm3/h'),
      q2: onCurve(b.flow * perHour, 'm3/h'),
    },
    (a.pressure - b.pressure) / (b.flow - a.flow) / perHour,
    'Pa h/m3',
    sources.fanCurve,
  );
  const one = step(
    'q',
    'flow of one unit at its working pressure',
    '2*(p1+f*q1)/(f+sqrt(f^2+4*b*(p1+f*q1)))',
    {
      p1: onCurve(a.pressure, 'Pa'),
      q1: onCurve(a.flow * perHour, 'm3/h'),
      f: fromStep(fall),
      b: fromStep(resistance),
    },
    unitFlow * perHour,
    'm3/h',
    sources.fanCurve,
    'Positive root of p1 - f (q - q1) = b q^2.',
  );
  const all = step(
    'Q',
    'flow of all units',
    'n*q/3600',
    { n: u.count, q: fromStep(one) },
    u.count.value * unitFlow,
    'm3/s',
    sources.continuity,
  );
  const over = step(
    'dp',
    'over-pressure in the enclosure',
    'rho/2 * (Q/(Cd*A))^2',
    { rho: u.density, Q: fromStep(all), Cd: u.dischargeCoefficient, A: u.gapArea },
    pressure,
    'Pa',
    sources.orifice,
  );
  return ok({ flow: u.count.value * unitFlow, unitFlow, pressure, steps: [resistance, fall, one, all, over] });
}

/** Step that divides one thing by another: `Q/A` and the like. */
export const ratioStep = (
  symbol: string,
  name: string,
  top: readonly [string, CalculationValue],
  bottom: readonly [string, CalculationValue],
  unit: string,
  source: Source,
): CalculationStep =>
  step(
    symbol,
    name,
    `${top[0]}/${bottom[0]}`,
    { [top[0]]: top[1], [bottom[0]]: bottom[1] },
    top[1].value / bottom[1].value,
    unit,
    source,
  );
