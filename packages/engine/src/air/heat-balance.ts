import type { Outcome } from '../floor/index.js';
import { aboveZero, checked, finite, zeroOrMore } from './arguments.js';
import { roomAir } from './tables.js';

export interface HeatBalance {
  /** P given off inside [W] */
  readonly heat: number;
  /** Q of air through [m3/s] */
  readonly flow: number;
  /** U A of the walls [W/K] */
  readonly wallConductance?: number;
  /** rho [kg/m3] */
  readonly density?: number;
  /** cp [J/(kg K)] */
  readonly specificHeat?: number;
}

const conductance = (b: HeatBalance): number =>
  (b.density ?? roomAir.density) * (b.specificHeat ?? roomAir.specificHeat) * b.flow + (b.wallConductance ?? 0);

const balanceProblems = (b: HeatBalance) => {
  const problems = [
    ...zeroOrMore({
      heat: [b.heat, 'W'],
      flow: [b.flow, 'm3/s'],
      wallConductance: [b.wallConductance ?? 0, 'W/K'],
    }),
    ...aboveZero({
      density: [b.density ?? roomAir.density, 'kg/m3'],
      specificHeat: [b.specificHeat ?? roomAir.specificHeat, 'J/(kg K)'],
    }),
  ];
  return problems.length > 0 ? problems : aboveZero({ conductance: [conductance(b), 'W/K'] });
};

/**
 * Rise of the air through an enclosure over its supply, settled.
 *
 *     dT = P / (rho cp Q + U A)
 * @returns dT [K], or `air/negative`, `air/not-positive`
 * Source: steady heat balance (derived); air 1.2 kg/m3 and 1005 J/(kg K) when not given (from memory).
 */
export const temperatureRise = (b: HeatBalance): Outcome<number> =>
  checked(balanceProblems(b), () => b.heat / conductance(b));

/**
 * Time constant of an enclosure that warms up; three to five of them are a warm-up wait.
 *
 *     tau = C / (rho cp Q + U A)
 * @param capacity C of what warms with the air [J/K]
 * @returns        tau [s], or `air/negative`, `air/not-positive`
 * Source: heat balance (derived).
 */
export const warmUpTimeConstant = (b: HeatBalance, capacity: number): Outcome<number> =>
  checked([...balanceProblems(b), ...aboveZero({ capacity: [capacity, 'J/K'] })], () => capacity / conductance(b));

/**
 * Rise a time after switching on.
 *
 *     dT = dT_end (1 - exp(-t / tau))
 * @param capacity C [J/K]
 * @param time     t [s]
 * @returns        dT [K], or `air/negative`, `air/not-positive`
 * Source: heat balance (derived).
 */
export const temperatureRiseAfter = (b: HeatBalance, capacity: number, time: number): Outcome<number> =>
  checked(
    [...balanceProblems(b), ...aboveZero({ capacity: [capacity, 'J/K'] }), ...zeroOrMore({ time: [time, 's'] })],
    () => (b.heat / conductance(b)) * -Math.expm1((-time * conductance(b)) / capacity),
  );

/**
 * Drift of a mount or length with temperature.
 *
 *     dL = a L dT
 * @param length    L [m]
 * @param expansion a [1/K]
 * @param change    dT [K]
 * @returns         dL [m], or `air/not-positive`, `air/not-finite`
 * Source: linear expansion (derived).
 */
export const expansionDrift = (length: number, expansion: number, change: number): Outcome<number> =>
  checked(
    [...aboveZero({ length: [length, 'm'] }), ...finite({ expansion: [expansion, '1/K'], change: [change, 'K'] })],
    () => expansion * length * change,
  );
