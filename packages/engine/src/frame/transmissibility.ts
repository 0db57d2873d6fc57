import { type CalculationStep, fromStep, val } from '../floor/calculation.js';
import { type Outcome, ok, refuse } from '../floor/problem.js';
import { needNotNegative, needPositive } from './arguments.js';
import { frameSources, gravitySource, standardGravity } from './tables.js';

export interface IsolatedMass {
  /** Frequency of the floor or fan [Hz]. */
  readonly frequency: number;
  readonly naturalFrequency: number;
  /** Share of critical damping [-]. */
  readonly damping: number;
}

export interface Transmissibility {
  /** Motion of the mass over that of its base [-]; infinite at resonance without damping. */
  readonly ratio: number;
  /** Sag of a linear spring under the mass that belongs to the natural frequency [m]. */
  readonly staticSag: number;
}

/**
 * Share of a base vibration that reaches a mass on a spring with damper.
 *
 *     T = sqrt((1 + (2 z r)^2) / ((1 - r^2)^2 + (2 z r)^2)), r = f/fn;   sag = g / (2 pi fn)^2
 * One degree of freedom, linear; air springs keep a lower natural frequency than their sag says.
 * @param m frequencies and damping [Hz, -]
 * @returns ratio and sag, or `frame/not-positive`, `frame/negative`
 * Source: single-degree-of-freedom base excitation (derived).
 */
export function baseTransmissibility(m: IsolatedMass): Outcome<Transmissibility> {
  const problems = [
    ...needPositive({ frequency: [m.frequency, 'Hz'], naturalFrequency: [m.naturalFrequency, 'Hz'] }),
    ...needNotNegative({ damping: [m.damping, '1'] }),
  ];
  if (problems.length > 0) return refuse(problems);
  const r = m.frequency / m.naturalFrequency;
  const damped = (2 * m.damping * r) ** 2;
  return ok({
    ratio: Math.sqrt((1 + damped) / ((1 - r * r) ** 2 + damped)),
    staticSag: standardGravity / (2 * Math.PI * m.naturalFrequency) ** 2,
  });
}

/** The steps of `baseTransmissibility`. Source: single-degree-of-freedom base excitation (derived). */
export function transmissibilitySteps(m: IsolatedMass, found: Transmissibility): readonly CalculationStep[] {
  const natural = val(m.naturalFrequency, 'Hz', 'natural frequency');
  const r: CalculationStep = {
    symbol: 'r',
    name: 'ratio of frequencies',
    expression: 'f/fn',
    values: { f: val(m.frequency, 'Hz', 'frequency of the base'), fn: natural },
    result: m.frequency / m.naturalFrequency,
    unit: '1',
    source: frameSources.vibration,
  };
  return [
    r,
    {
      symbol: 'T',
      name: 'share that reaches the mass',
      expression: 'sqrt((1 + (2*z*r)^2)/((1 - r^2)^2 + (2*z*r)^2))',
      values: { z: val(m.damping, '1', 'share of critical damping'), r: fromStep(r) },
      result: found.ratio,
      unit: '1',
      source: frameSources.vibration,
    },
    {
      symbol: 'sag',
      name: 'sag of a linear spring with this natural frequency',
      expression: 'g*1000/(2*pi*fn)^2',
      values: { g: val(standardGravity, 'm/s2', 'free fall', gravitySource.work), fn: natural },
      result: found.staticSag * 1000,
      unit: 'mm',
      source: frameSources.vibration,
    },
  ];
}
