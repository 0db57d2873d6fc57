import { type Outcome, refuse } from '../floor/index.js';
import { aboveZero, checked, finite, zeroOrMore } from './arguments.js';
import { outsideDuct } from './messages.js';

/** The series falls as 1/n^3 with changing sign: up to here the rest is below 1e-9 of the sum. */
const lastTerm = 1001;

export interface RectangularDuct {
  /** a, along y [m] */
  readonly width: number;
  /** b, along z [m] */
  readonly height: number;
  /** G / mu: fall of pressure along the duct over viscosity [1/(m s)] */
  readonly drive: number;
}

const ductProblems = (d: RectangularDuct) =>
  aboveZero({ width: [d.width, 'm'], height: [d.height, 'm'], drive: [d.drive, '1/(m s)'] });

/** cosh(x) / cosh(y) for |x| <= y without overflow. */
const coshRatio = (x: number, y: number): number => (Math.exp(x - y) + Math.exp(-x - y)) / (1 + Math.exp(-2 * y));

function oddSum(term: (n: number, sign: 1 | -1) => number): number {
  let sum = 0;
  for (let n = lastTerm; n >= 1; n -= 2) sum += term(n, n % 4 === 1 ? 1 : -1);
  return sum;
}

/**
 * Velocity in a rectangular duct, laminar and fully developed.
 *
 *     u = 4 G a^2/(mu pi^3) sum over odd n of (-1)^((n-1)/2) [1 - cosh(n pi z/a)/cosh(n pi b/(2a))] cos(n pi y/a)/n^3
 * An exact answer to hold a flow solver against; a room is turbulent and is not described by it.
 * @param y from the middle along the width [m]
 * @param z from the middle along the height [m]
 * @returns u [m/s], or `air/not-positive`, `air/outside-duct`
 * Source: White, Viscous Fluid Flow, ch. 3 (from memory).
 */
export function ductVelocity(d: RectangularDuct, y: number, z: number): Outcome<number> {
  const problems = ductProblems(d);
  if (!(Math.abs(y) <= d.width / 2 && Math.abs(z) <= d.height / 2)) problems.push(outsideDuct());
  if (problems.length > 0) return refuse(problems);
  const k = Math.PI / d.width;
  const sum = oddSum(
    (n, sign) => (sign * (1 - coshRatio(n * k * z, (n * k * d.height) / 2)) * Math.cos(n * k * y)) / n ** 3,
  );
  return checked([], () => ((4 * d.drive * d.width ** 2) / Math.PI ** 3) * sum);
}

/**
 * Mean velocity in the same duct, and its friction.
 *
 *     mean = 8 G a^2/(mu pi^4) sum over odd n of [1 - 2a/(n pi b) tanh(n pi b/(2a))]/n^4;  f Re = 2 G Dh^2/(mu mean)
 * @returns mean [m/s] and Darcy friction factor times Reynolds number on the hydraulic diameter [-], or `air/not-positive`
 * Source: White, Viscous Fluid Flow, ch. 3; Shah and London 1978 (from memory).
 */
export const ductMean = (d: RectangularDuct): Outcome<{ readonly mean: number; readonly frictionReynolds: number }> =>
  checked(ductProblems(d), () => {
    const half = (Math.PI * d.height) / (2 * d.width);
    const sum = oddSum((n) => (1 - Math.tanh(n * half) / (n * half)) / n ** 4);
    const mean = ((8 * d.drive * d.width ** 2) / Math.PI ** 4) * sum;
    const hydraulic = (2 * d.width * d.height) / (d.width + d.height);
    return { mean, frictionReynolds: (2 * d.drive * hydraulic ** 2) / mean };
  });

/**
 * Laminar flow between two plates.
 *
 *     umax = G h^2 / (8 mu);  mean = 2/3 umax
 * @param gap   h [m]
 * @param drive G / mu [1/(m s)]
 * @returns     velocities [m/s], or `air/not-positive`
 * Source: exact solution (derived).
 */
export const plateFlow = (gap: number, drive: number): Outcome<{ readonly maximum: number; readonly mean: number }> =>
  checked(aboveZero({ gap: [gap, 'm'], drive: [drive, '1/(m s)'] }), () => ({
    maximum: (drive * gap ** 2) / 8,
    mean: (drive * gap ** 2) / 12,
  }));

/**
 * Decay of a periodic array of vortices.
 *
 *     velocity = exp(-2 nu k^2 t);  energy = exp(-4 nu k^2 t)
 * @param waveNumber k [1/m]
 * @param viscosity  nu, kinematic [m2/s]
 * @param time       t [s]
 * @returns          ratios to the start [-], or `air/not-positive`, `air/negative`
 * Source: Taylor and Green 1937 (from memory).
 */
export const vortexDecay = (
  waveNumber: number,
  viscosity: number,
  time: number,
): Outcome<{ readonly velocity: number; readonly energy: number }> =>
  checked(
    [
      ...aboveZero({ waveNumber: [waveNumber, '1/m'], viscosity: [viscosity, 'm2/s'] }),
      ...zeroOrMore({ time: [time, 's'] }),
      ...finite({ time: [time, 's'] }),
    ],
    () => {
      const velocity = Math.exp(-2 * viscosity * waveNumber ** 2 * time);
      return { velocity, energy: velocity ** 2 };
    },
  );

export interface BenchmarkRoom {
  /** H [m] */
  readonly height: number;
  /** h/H, inlet [-] */
  readonly inlet: number;
  /** t/H, outlet [-] */
  readonly outlet: number;
  /** L/H [-] */
  readonly length: number;
  /** On the inlet height [-] */
  readonly reynolds: number;
  /** nu [m2/s] */
  readonly viscosity: number;
  /** [-] */
  readonly turbulenceIntensity: number;
}

/**
 * Boundary data of the two-dimensional benchmark room.
 *
 *     U0 = Re nu / h;  k0 = 1.5 (I U0)^2;  epsilon0 = k0^1.5 / (h/10)
 * @returns sizes [m], inlet velocity [m/s], k [m2/s2], epsilon [m2/s3], or `air/not-positive`
 * Source: Nielsen 1990, specification of the IEA Annex 20 two-dimensional test case (turbulence data from memory).
 */
export const benchmarkRoomBoundary = (
  r: BenchmarkRoom,
): Outcome<{
  readonly inletHeight: number;
  readonly outletHeight: number;
  readonly roomLength: number;
  readonly inletVelocity: number;
  readonly turbulentEnergy: number;
  readonly dissipation: number;
}> =>
  checked(
    aboveZero({
      height: [r.height, 'm'],
      inlet: [r.inlet, '1'],
      outlet: [r.outlet, '1'],
      length: [r.length, '1'],
      reynolds: [r.reynolds, '1'],
      viscosity: [r.viscosity, 'm2/s'],
      turbulenceIntensity: [r.turbulenceIntensity, '1'],
    }),
    () => {
      const inletHeight = r.inlet * r.height;
      const inletVelocity = (r.reynolds * r.viscosity) / inletHeight;
      const turbulentEnergy = 1.5 * (r.turbulenceIntensity * inletVelocity) ** 2;
      return {
        inletHeight,
        outletHeight: r.outlet * r.height,
        roomLength: r.length * r.height,
        inletVelocity,
        turbulentEnergy,
        dissipation: turbulentEnergy ** 1.5 / (inletHeight / 10),
      };
    },
  );
