import type { Outcome } from '../floor/index.js';
import { aboveZero, checked, shares, zeroOrMore } from './arguments.js';

/**
 * Velocity of the jet in a gap.
 *
 *     v = sqrt(2 dp / rho)
 * @param pressure dp, inside over outside [Pa]
 * @param density  rho [kg/m3]
 * @returns        v [m/s], or `air/negative`, `air/not-positive`
 * Source: orifice equation, textbook (from memory).
 */
export const gapJetVelocity = (pressure: number, density: number): Outcome<number> =>
  checked([...zeroOrMore({ pressure: [pressure, 'Pa'] }), ...aboveZero({ density: [density, 'kg/m3'] })], () =>
    Math.sqrt((2 * pressure) / density),
  );

export interface AirGap {
  /** A [m2] */
  readonly area: number;
  /** Cd, 0.6 for a sharp edge, 0.65 to 0.8 for longer slots [-] */
  readonly dischargeCoefficient: number;
  /** rho [kg/m3] */
  readonly density: number;
}

const gapProblems = (gap: AirGap) => [
  ...aboveZero({
    area: [gap.area, 'm2'],
    dischargeCoefficient: [gap.dischargeCoefficient, '1'],
    density: [gap.density, 'kg/m3'],
  }),
  ...shares({ dischargeCoefficient: gap.dischargeCoefficient }),
];

/**
 * Flow through gaps at a pressure difference.
 *
 *     Q = Cd A sqrt(2 dp / rho)
 * @param gap      all gaps together
 * @param pressure dp [Pa]
 * @returns        Q [m3/s], or `air/not-positive`, `air/not-a-share`, `air/negative`
 * Source: orifice equation, textbook (from memory).
 */
export const gapFlow = (gap: AirGap, pressure: number): Outcome<number> =>
  checked(
    [...gapProblems(gap), ...zeroOrMore({ pressure: [pressure, 'Pa'] })],
    () => gap.dischargeCoefficient * gap.area * Math.sqrt((2 * pressure) / gap.density),
  );

/**
 * Over-pressure that a supply holds in an enclosure against its gaps. Over-pressure drives fume, gas and laser-generated
 * particles outwards: where the work gives off such, extraction by a competent person comes first.
 *
 *     dp = rho/2 (Q / (Cd A))^2
 * @param gap  all gaps together
 * @param flow Q [m3/s]
 * @returns    dp [Pa], or `air/not-positive`, `air/not-a-share`, `air/negative`
 * Source: orifice equation, textbook (from memory).
 */
export const overPressure = (gap: AirGap, flow: number): Outcome<number> =>
  checked(
    [...gapProblems(gap), ...zeroOrMore({ flow: [flow, 'm3/s'] })],
    () => (gap.density / 2) * (flow / (gap.dischargeCoefficient * gap.area)) ** 2,
  );

/**
 * Mean outward velocity in the gaps.
 *
 *     v = Q / A
 * @param flow Q [m3/s]
 * @param area A of all gaps [m2]
 * @returns    v [m/s], or `air/negative`, `air/not-positive`
 * Source: continuity (derived).
 */
export const meanGapVelocity = (flow: number, area: number): Outcome<number> =>
  checked([...zeroOrMore({ flow: [flow, 'm3/s'] }), ...aboveZero({ area: [area, 'm2'] })], () => flow / area);

/**
 * Largest gap area through which a supply still blows outwards with a least velocity.
 *
 *     A = Q / v
 * @param flow     Q [m3/s]
 * @param velocity v [m/s]
 * @returns        A [m2], or `air/not-positive`
 * Source: continuity (derived); 0.2 m/s and more outwards: ISO 14644-4:2001, Annex A (from memory).
 */
export const largestGapArea = (flow: number, velocity: number): Outcome<number> =>
  checked(aboveZero({ flow: [flow, 'm3/s'], velocity: [velocity, 'm/s'] }), () => flow / velocity);

/**
 * Draught of a warm enclosure: the pressure that draws room air in below.
 *
 *     dp = rho g h dT / T
 * @param height      h [m]
 * @param rise        dT, inside over outside [K]
 * @param temperature T, absolute [K]
 * @param density     rho [kg/m3]
 * @returns           dp [Pa], or `air/not-positive`, `air/negative`
 * Source: hydrostatics (derived); g 9.80665 m/s2.
 */
export const buoyancyPressure = (height: number, rise: number, temperature: number, density: number): Outcome<number> =>
  checked(
    [
      ...aboveZero({ height: [height, 'm'], temperature: [temperature, 'K'], density: [density, 'kg/m3'] }),
      ...zeroOrMore({ rise: [rise, 'K'] }),
    ],
    () => (density * 9.80665 * height * rise) / temperature,
  );
