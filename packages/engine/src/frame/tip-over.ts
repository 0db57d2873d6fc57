import { type CalculationStep, fromStep, val } from '../floor/calculation.js';
import { type Outcome, ok, refuse } from '../floor/problem.js';
import { needFinite, needPositive } from './arguments.js';
import { frameMessages } from './messages.js';
import { frameSources, gravitySource, standardGravity } from './tables.js';

/** A rigid body about one tipping edge. */
export interface TipOver {
  /** [kg] */
  readonly mass: number;
  /** Horizontal distance from the centre of mass to the edge; negative when it lies outside of the base [m]. */
  readonly lever: number;
  /** Height of the centre of mass [m]. */
  readonly height: number;
  /** Horizontal push [N] and its height [m]. */
  readonly push: number;
  readonly pushHeight: number;
  /** Tilt of the floor or test [rad]. */
  readonly tilt: number;
}

export interface TipOverResult {
  /** Tilt at which it tips; zero or negative when it falls by itself [rad]. */
  readonly tippingAngle: number;
  /** Push at the given height that tips it [N]. */
  readonly forceToTip: number;
  /** forceToTip over push. */
  readonly pushFactor: number;
  /** What is left of the lever at the given tilt [m]. */
  readonly leverTilted: number;
  readonly stableTilted: boolean;
}

/**
 * Resistance of a free-standing body to a push and to a tilt, about one edge.
 *
 *     tips when F hF > m g b;  tips at the tilt atan(b / z);  lever at tilt t: b cos t - z sin t
 * A rigid body on a rigid floor, no anchors. Take the least favourable state: doors open, curtains at one end, swivels
 * turned inward. Things that tip can crush: a qualified person decides about ballast or anchors.
 * @param t body, push and tilt [kg, m, N, rad]
 * @returns results, or `frame/not-positive`, `frame/not-a-number`, `frame/tilt-range`
 * Source: statics of a rigid body (derived); the 10 degree tilt: IEC 61010-1, clause 7.4 (from memory).
 */
export function tipOver(t: TipOver): Outcome<TipOverResult> {
  const problems = [
    ...needPositive({
      mass: [t.mass, 'kg'],
      height: [t.height, 'm'],
      push: [t.push, 'N'],
      pushHeight: [t.pushHeight, 'm'],
    }),
    ...needFinite({ lever: t.lever }),
  ];
  if (!(t.tilt >= 0 && t.tilt < Math.PI / 2)) problems.push(frameMessages.tiltRange(t.tilt));
  if (problems.length > 0) return refuse(problems);
  const forceToTip = (t.mass * standardGravity * t.lever) / t.pushHeight;
  const leverTilted = t.lever * Math.cos(t.tilt) - t.height * Math.sin(t.tilt);
  return ok({
    tippingAngle: Math.atan2(t.lever, t.height),
    forceToTip,
    pushFactor: forceToTip / t.push,
    leverTilted,
    stableTilted: leverTilted > 0,
  });
}

/** Where the numbers come from, for print. */
export interface TipOverOrigins {
  readonly mass: string;
  readonly lever: string;
  readonly push: string;
}

/** The steps of `tipOver` for the push: weight, the two moments and the factor. Source: statics of a rigid body (derived). */
export function pushSteps(t: TipOver, origins: TipOverOrigins): readonly CalculationStep[] {
  const weight: CalculationStep = {
    symbol: 'W',
    name: 'weight',
    expression: 'm*g',
    values: { m: val(t.mass, 'kg', 'mass', origins.mass), g: val(standardGravity, 'm/s2', 'free fall') },
    result: t.mass * standardGravity,
    unit: 'N',
    source: gravitySource,
  };
  const standing: CalculationStep = {
    symbol: 'Ms',
    name: 'moment that holds it upright',
    expression: 'W*b/1000',
    values: { W: fromStep(weight), b: val(t.lever * 1000, 'mm', 'centre of mass to tipping edge', origins.lever) },
    result: weight.result * t.lever,
    unit: 'N m',
    source: frameSources.rigidBody,
  };
  const tipping: CalculationStep = {
    symbol: 'Mt',
    name: 'moment that tips it',
    expression: 'F*h/1000',
    values: {
      F: val(t.push, 'N', 'push', origins.push),
      h: val(t.pushHeight * 1000, 'mm', 'height of the push', origins.push),
    },
    result: t.push * t.pushHeight,
    unit: 'N m',
    source: frameSources.rigidBody,
  };
  const factor: CalculationStep = {
    symbol: 'f',
    name: 'factor against tipping',
    expression: 'Ms/Mt',
    values: { Ms: fromStep(standing), Mt: fromStep(tipping) },
    result: standing.result / tipping.result,
    unit: '1',
    source: frameSources.rigidBody,
  };
  return [weight, standing, tipping, factor];
}

/** The step of `tipOver` for the tilt at which it tips. Source: statics of a rigid body (derived). */
export function tiltStep(
  t: Pick<TipOver, 'lever' | 'height'>,
  origins: Pick<TipOverOrigins, 'mass' | 'lever'>,
): CalculationStep {
  return {
    symbol: 'tilt',
    name: 'tilt at which it tips',
    expression: 'atan(b/z)*180/pi',
    values: {
      b: val(t.lever * 1000, 'mm', 'centre of mass to tipping edge', origins.lever),
      z: val(t.height * 1000, 'mm', 'height of the centre of mass', origins.mass),
    },
    result: (Math.atan2(t.lever, t.height) * 180) / Math.PI,
    unit: 'deg',
    source: frameSources.rigidBody,
  };
}
