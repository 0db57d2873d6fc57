import { type CalculationStep, val } from '../floor/calculation.js';
import { type Outcome, ok, refuse } from '../floor/problem.js';
import { needFinite, needPositive } from './arguments.js';
import { frameSources } from './tables.js';

export interface WarmedBar {
  readonly length: number;
  readonly temperatureChange: number;
  readonly expansion: number;
  readonly elasticity: number;
}

export interface ThermalGrowth {
  /** Free growth, shrinking negative [m]. */
  readonly growth: number;
  /** Stress when both ends are held; the sign of the growth, so positive is compression [Pa]. */
  readonly restrainedStress: number;
}

/**
 * Growth of a bar that gets warmer, and the stress when it is kept from growing.
 *
 *     dL = alpha L dT;  s = E alpha dT
 * @param b bar [m, K, 1/K, Pa]
 * @returns growth and stress, or `frame/not-positive`, `frame/not-a-number`
 * Source: linear expansion (derived); constants of aluminium: EN 1999-1-1:2007, clause 3.2.5 (from memory).
 */
export function thermalGrowth(b: WarmedBar): Outcome<ThermalGrowth> {
  const problems = [
    ...needPositive({
      length: [b.length, 'm'],
      expansion: [b.expansion, '1/K'],
      elasticity: [b.elasticity, 'Pa'],
    }),
    ...needFinite({ temperatureChange: b.temperatureChange }),
  ];
  if (problems.length > 0) return refuse(problems);
  const strain = b.expansion * b.temperatureChange;
  return ok({ growth: strain * b.length, restrainedStress: b.elasticity * strain });
}

/** The steps of `thermalGrowth`. Source: linear expansion (derived). */
export function thermalGrowthSteps(b: WarmedBar, found: ThermalGrowth): readonly CalculationStep[] {
  const warm = {
    alpha: val(b.expansion * 1e6, 'um/(m K)', 'linear expansion'),
    dT: val(b.temperatureChange, 'K', 'change of temperature'),
  };
  return [
    {
      symbol: 'dL',
      name: 'growth',
      expression: 'alpha*L*dT/1000',
      values: { ...warm, L: val(b.length, 'm', 'length') },
      result: found.growth * 1000,
      unit: 'mm',
      source: frameSources.thermal,
    },
    {
      symbol: 's',
      name: 'stress when held',
      expression: 'E*alpha/1000000*dT',
      values: { ...warm, E: val(b.elasticity / 1e6, 'N/mm2', 'modulus of elasticity') },
      result: found.restrainedStress / 1e6,
      unit: 'N/mm2',
      source: frameSources.thermal,
    },
  ];
}
