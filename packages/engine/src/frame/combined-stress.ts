import { type Outcome, ok, refuse } from '../floor/problem.js';
import { needFinite, needPositive } from './arguments.js';

/** Forces of one cut of a member, with the moduli of its section. Signs of forces do not matter: the worst corner is taken. */
export interface StressedSection {
  readonly axial: number;
  readonly momentY: number;
  readonly momentZ: number;
  readonly torque: number;
  readonly area: number;
  readonly modulusY: number;
  readonly modulusZ: number;
  readonly torsionModulus: number;
  /** 0.2 % proof strength [Pa]. */
  readonly proofStrength: number;
  /** gamma_M1 on ultimate forces, or an overall factor on characteristic ones [-]. */
  readonly factor: number;
}

export interface CombinedStress {
  readonly normal: number;
  readonly shear: number;
  readonly vonMises: number;
  readonly utilisation: number;
}

/**
 * Stress in a member under axial force, two bending moments and torsion.
 *
 *     s = |N|/A + |My|/Wy + |Mz|/Wz;  t = |T|/Wt;  v = sqrt(s^2 + 3 t^2);  utilisation = v factor / f0
 * Safe side: all largest values are put into one corner. Shear forces, welds and local buckling are left out.
 * @param c forces, moduli, strength [N, N m, m2, m3, Pa, -]
 * @returns stresses [Pa], or `frame/not-positive`, `frame/not-a-number`
 * Source: von Mises criterion (derived); f0 and gamma_M1: EN 1999-1-1:2007 (from memory).
 */
export function combinedStress(c: StressedSection): Outcome<CombinedStress> {
  const problems = [
    ...needFinite({ axial: c.axial, momentY: c.momentY, momentZ: c.momentZ, torque: c.torque }),
    ...needPositive({
      area: [c.area, 'm2'],
      modulusY: [c.modulusY, 'm3'],
      modulusZ: [c.modulusZ, 'm3'],
      torsionModulus: [c.torsionModulus, 'm3'],
      proofStrength: [c.proofStrength, 'Pa'],
      factor: [c.factor, '1'],
    }),
  ];
  if (problems.length > 0) return refuse(problems);
  const normal = Math.abs(c.axial) / c.area + Math.abs(c.momentY) / c.modulusY + Math.abs(c.momentZ) / c.modulusZ;
  const shear = Math.abs(c.torque) / c.torsionModulus;
  const vonMises = Math.sqrt(normal ** 2 + 3 * shear ** 2);
  return ok({ normal, shear, vonMises, utilisation: (vonMises * c.factor) / c.proofStrength });
}
