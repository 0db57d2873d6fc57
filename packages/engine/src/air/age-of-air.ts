import type { Outcome } from '../floor/index.js';
import { aboveZero, checked, zeroOrMore } from './arguments.js';
import { emptyList } from './messages.js';

/**
 * Mean age of the air at the single exhaust, whatever the flow pattern.
 *
 *     tau = V / Q
 * @param volume V [m3]
 * @param flow   Q [m3/s]
 * @returns      tau [s], or `air/not-positive`
 * Source: Roulet, Ventilation and Airflow in Buildings, eq. 3.11 (published).
 */
export const exhaustAge = (volume: number, flow: number): Outcome<number> =>
  checked(aboveZero({ volume: [volume, 'm3'], flow: [flow, 'm3/s'] }), () => volume / flow);

/**
 * Air exchange efficiency: 1 for piston flow, 0.5 for perfect mixing, below for a short circuit.
 *
 *     e = tau_n / (2 <tau>)
 * @param nominal tau_n = V/Q [s]
 * @param roomAge <tau>, mean over the room [s]
 * @returns       e [-], or `air/not-positive`
 * Source: Roulet, Ventilation and Airflow in Buildings, eq. 3.12 (published).
 */
export const airExchangeEfficiency = (nominal: number, roomAge: number): Outcome<number> =>
  checked(aboveZero({ nominal: [nominal, 's'], roomAge: [roomAge, 's'] }), () => nominal / (2 * roomAge));

/** Mean age of the room's air by flow pattern [s], for comparison. Source: Roulet, eq. 3.12 (published). */
export const roomAgeOf = { mixing: (nominal: number) => nominal, piston: (nominal: number) => nominal / 2 } as const;

export interface TracerAge {
  /** Age at the exhaust [s] */
  readonly exhaust: number;
  /** Mean age in the room [s] */
  readonly room: number;
}

/**
 * Ages from a tracer that falls in the exhaust as exp(-t/T).
 *
 *     exhaust = int C dt / C0 = T;  room = int t C dt / int C dt = T
 * @param timeConstant T [s]
 * @returns            ages [s], or `air/not-positive`
 * Source: Roulet, Ventilation and Airflow in Buildings, eq. 3.10 (published).
 */
export const ageFromExponentialDecay = (timeConstant: number): Outcome<TracerAge> =>
  checked(aboveZero({ timeConstant: [timeConstant, 's'] }), () => ({ exhaust: timeConstant, room: timeConstant }));

/**
 * Ages from a tracer log in the exhaust, by the trapezoidal rule. The log must run until almost nothing is left: the rest is
 * not added.
 *
 *     exhaust = int C dt / C0;  room = int t C dt / int C dt
 * @param log times from the stop of the tracer [s] and concentrations [any]
 * @returns   ages [s], or `air/too-few`, `air/negative`, `air/not-positive`
 * Source: Roulet, Ventilation and Airflow in Buildings, eq. 3.10 (published).
 */
export function ageFromTracerLog(
  log: readonly { readonly time: number; readonly value: number }[],
): Outcome<TracerAge> {
  const problems = [
    ...(log.length < 3 ? [emptyList('log', 3)] : []),
    ...log.flatMap(({ time, value }) => zeroOrMore({ time: [time, 's'], value: [value, '1'] })),
    ...log.slice(1).flatMap(({ time }, i) => aboveZero({ 'time between readings': [time - log[i]!.time, 's'] })),
    ...aboveZero({ 'first reading': [log[0]?.value ?? 0, '1'] }),
  ];
  return checked(problems, () => {
    const integral = (f: (time: number, value: number) => number) =>
      log.slice(1).reduce((sum, b, i) => {
        const a = log[i]!;
        return sum + ((f(a.time, a.value) + f(b.time, b.value)) / 2) * (b.time - a.time);
      }, 0);
    const area = integral((_, value) => value);
    return { exhaust: area / log[0]!.value, room: integral((time, value) => time * value) / area };
  });
}
