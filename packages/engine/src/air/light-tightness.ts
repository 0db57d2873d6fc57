import type { Outcome } from '../floor/index.js';
import { aboveZero, checked } from './arguments.js';
import { reflectanceOne } from './messages.js';

/**
 * How much an enclosure must weaken light. A light-tight figure is no laser-safety figure.
 *
 *     ratio = Eout / Ein;  OD = lg ratio
 * @param outside Eout [lx]
 * @param inside  Ein allowed [lx]
 * @returns       ratio and optical density [-], or `air/not-positive`
 * Source: definition of optical density (derived).
 */
export const lightAttenuation = (
  outside: number,
  inside: number,
): Outcome<{ readonly ratio: number; readonly opticalDensity: number }> =>
  checked(aboveZero({ outside: [outside, 'lx'], inside: [inside, 'lx'] }), () => ({
    ratio: outside / inside,
    opticalDensity: Math.log10(outside / inside),
  }));

export interface DarkSpace {
  /** Eout on the gap [lx] */
  readonly outside: number;
  /** Surface of the inside [m2] */
  readonly surface: number;
  /** Mean reflectance of the inside [-] */
  readonly reflectance: number;
}

const spaceProblems = (s: DarkSpace) => [
  ...aboveZero({ outside: [s.outside, 'lx'], surface: [s.surface, 'm2'] }),
  ...(s.reflectance >= 0 && s.reflectance < 1 ? [] : [reflectanceOne(s.reflectance)]),
];

/**
 * Mean illuminance inside from light through an open gap; an upper bound, a baffle lets less through. No laser-safety figure.
 *
 *     E = Eout Agap / (Ain (1 - rho))
 * @param gapArea Agap [m2]
 * @returns       E [lx], or `air/not-positive`, `air/reflectance`
 * Source: estimate of an integrating enclosure (derived).
 */
export const lightThroughGap = (space: DarkSpace, gapArea: number): Outcome<number> =>
  checked(
    [...spaceProblems(space), ...aboveZero({ gapArea: [gapArea, 'm2'] })],
    () => (space.outside * gapArea) / (space.surface * (1 - space.reflectance)),
  );

/**
 * Largest open gap that keeps an illuminance inside.
 *
 *     Agap = Ein Ain (1 - rho) / Eout
 * @param inside Ein allowed [lx]
 * @returns      Agap [m2], or `air/not-positive`, `air/reflectance`
 * Source: estimate of an integrating enclosure (derived).
 */
export const largestLightGap = (space: DarkSpace, inside: number): Outcome<number> =>
  checked(
    [...spaceProblems(space), ...aboveZero({ inside: [inside, 'lx'] })],
    () => (inside * space.surface * (1 - space.reflectance)) / space.outside,
  );
