import { type CalculationStep, fromStep, val } from '../floor/calculation.js';
import { type Outcome, ok, refuse } from '../floor/problem.js';
import { needPositive } from './arguments.js';
import { frameSources, nutFactors } from './tables.js';

export interface TightenedBolt {
  /** Nominal diameter [m]. */
  readonly diameter: number;
  readonly torque: number;
  /** K, about 0.2 as received, 0.15 to 0.18 lubricated [-]. */
  readonly nutFactor: number;
  /** 0.1 to 0.15 for anodised on anodised (common practice) [-]. */
  readonly friction: number;
  /** Faces that must slip [-]. */
  readonly interfaces: number;
}

export interface BoltPreload {
  readonly preload: number;
  /** Force at which the joint slips, without a safety factor [N]. */
  readonly slip: number;
}

/**
 * Preload of a tightened bolt and the force at which its joint slips.
 *
 *     F = T / (K d);  S = mu n F
 * Scatter of the preload 25 to 30 %; the lip of a slot may limit it below what the bolt bears. Do not rely on friction
 * for loads over people without a stop that locks by form.
 * @param b bolt and joint [m, N m, -]
 * @returns forces [N], or `frame/not-positive`
 * Source: Shigley, Mechanical Engineering Design, torque equation (from memory); friction (derived).
 */
export function boltPreload(b: TightenedBolt): Outcome<BoltPreload> {
  const problems = needPositive({
    diameter: [b.diameter, 'm'],
    torque: [b.torque, 'N m'],
    nutFactor: [b.nutFactor, '1'],
    friction: [b.friction, '1'],
    interfaces: [b.interfaces, '1'],
  });
  if (problems.length > 0) return refuse(problems);
  const preload = b.torque / (b.nutFactor * b.diameter);
  return ok({ preload, slip: b.friction * b.interfaces * preload });
}

/** The steps of `boltPreload`. Source: Shigley, Mechanical Engineering Design (from memory). */
export function boltPreloadSteps(b: TightenedBolt, found: BoltPreload): readonly CalculationStep[] {
  const preload: CalculationStep = {
    symbol: 'F',
    name: 'preload',
    expression: 'T/(K*d/1000)',
    values: {
      T: val(b.torque, 'N m', 'tightening torque'),
      K: val(b.nutFactor, '1', 'nut factor'),
      d: val(b.diameter * 1000, 'mm', 'nominal diameter'),
    },
    result: found.preload,
    unit: 'N',
    source: nutFactors.source,
    note: `The preload scatters by about ${nutFactors.scatter * 100} %.`,
  };
  const slip: CalculationStep = {
    symbol: 'S',
    name: 'force at which the joint slips',
    expression: 'mu*n*F',
    values: {
      mu: val(b.friction, '1', 'friction'),
      n: val(b.interfaces, '1', 'faces that must slip'),
      F: fromStep(preload),
    },
    result: found.slip,
    unit: 'N',
    source: frameSources.slip,
  };
  return [preload, slip];
}
