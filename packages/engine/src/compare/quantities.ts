import { type Dimension, inUnit } from '../floor/units.js';

/** How a number of a thing is told: in which unit, and from which difference on it counts as another number. */
interface Quantity {
  readonly dimension: Dimension;
  /** Unit in which people read it. */
  readonly shown: string;
  /** Differences up to this are noise of arithmetic [SI unit of the dimension]. */
  readonly slack: number;
}

/** Places and lengths closer than this are the same: far above the noise of turned coordinates, far below anything built [m]. */
export const sameLength = 1e-6;
/** Angles closer than this are the same: one micrometre at ten metres [rad]. */
export const sameAngle = 1e-7;
/** Share of a number that is noise of arithmetic. */
export const sameShare = 1e-9;

export const quantities = {
  length: { dimension: 'length', shown: 'mm', slack: sameLength },
  area: { dimension: 'area', shown: 'm2', slack: 1e-9 },
  angle: { dimension: 'angle', shown: 'deg', slack: sameAngle },
  wavelength: { dimension: 'length', shown: 'nm', slack: 0 },
  'beam width': { dimension: 'length', shown: 'mm', slack: 0 },
  divergence: { dimension: 'angle', shown: 'mrad', slack: 0 },
  power: { dimension: 'power', shown: 'W', slack: 0 },
  energy: { dimension: 'energy', shown: 'mJ', slack: 0 },
  'pulse duration': { dimension: 'time', shown: 'ns', slack: 0 },
  'pulse rate': { dimension: 'frequency', shown: 'Hz', slack: 0 },
  time: { dimension: 'time', shown: 'min', slack: 0 },
  mass: { dimension: 'mass', shown: 'kg', slack: sameShare },
  share: { dimension: 'ratio', shown: '%', slack: sameShare },
  voltage: { dimension: 'voltage', shown: 'V', slack: 0 },
  flow: { dimension: 'flow', shown: 'm3/h', slack: 0 },
  'sound level': { dimension: 'sound level', shown: 'dB', slack: 0 },
} as const satisfies Readonly<Record<string, Quantity>>;

export type QuantityName = keyof typeof quantities;

/** The number in the unit in which people read it. */
export const inShownUnit = (value: number, quantity: QuantityName): number =>
  inUnit(value, quantities[quantity].shown, quantities[quantity].dimension);

/** True when two numbers differ by no more than the noise of the arithmetic that gave them. */
export const sameNumber = (a: number, b: number, slack = 0): boolean =>
  a === b || Math.abs(a - b) <= Math.max(slack, sameShare * Math.max(Math.abs(a), Math.abs(b)));
