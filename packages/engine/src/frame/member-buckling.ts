import { type CalculationStep, fromStep, val } from '../floor/calculation.js';
import { type Outcome, ok, refuse } from '../floor/problem.js';
import { needNotNegative, needPositive } from './arguments.js';
import { aluminium, frameSources, partialFactors } from './tables.js';

export interface CompressedMember {
  readonly elasticity: number;
  /** 0.2 % proof strength [Pa]. */
  readonly proofStrength: number;
  /** Buckling length: pinned 1, fixed 0.5, cantilever 2 times the length [m]. */
  readonly bucklingLength: number;
  /** Smallest second moment that can bend [m4]. */
  readonly secondMoment: number;
  readonly area: number;
  /** alpha and lambda0 of the buckling class [-]. */
  readonly imperfection: number;
  readonly limitSlenderness: number;
  /** gamma_M1 [-] */
  readonly partialFactor: number;
  /** Softening by welds, 1 without [-]. */
  readonly weldFactor: number;
}

export interface MemberBuckling {
  readonly eulerLoad: number;
  readonly relativeSlenderness: number;
  readonly reduction: number;
  /** Design resistance in compression [N]. */
  readonly resistance: number;
  /** L/i [-]; above 200 a person should look (common practice). */
  readonly slenderness: number;
}

/**
 * Design resistance of a straight member in compression.
 *
 *     Ncr = pi^2 E I / L^2;  l = sqrt(A f0/Ncr);  phi = 0.5 (1 + alpha (l - l0) + l^2)
 *     chi = 1/(phi + sqrt(phi^2 - l^2)) <= 1;  Nb = kappa chi A f0 / gamma_M1
 * Full section effective (no local buckling), flexural buckling only. A post that buckles drops what hangs above: a
 * qualified structural engineer decides.
 * @param m member [Pa, m, m2, m4, -]
 * @returns resistance, or `frame/not-positive`, `frame/negative`
 * Source: EN 1999-1-1:2007, clause 6.3.1 (from memory).
 */
export function memberBuckling(m: CompressedMember): Outcome<MemberBuckling> {
  const problems = [
    ...needPositive({
      elasticity: [m.elasticity, 'Pa'],
      proofStrength: [m.proofStrength, 'Pa'],
      bucklingLength: [m.bucklingLength, 'm'],
      secondMoment: [m.secondMoment, 'm4'],
      area: [m.area, 'm2'],
      partialFactor: [m.partialFactor, '1'],
      weldFactor: [m.weldFactor, '1'],
    }),
    ...needNotNegative({ imperfection: [m.imperfection, '1'], limitSlenderness: [m.limitSlenderness, '1'] }),
  ];
  if (problems.length > 0) return refuse(problems);
  const eulerLoad = (Math.PI ** 2 * m.elasticity * m.secondMoment) / m.bucklingLength ** 2;
  const l = Math.sqrt((m.area * m.proofStrength) / eulerLoad);
  const phi = 0.5 * (1 + m.imperfection * (l - m.limitSlenderness) + l * l);
  // At or below the limit slenderness the curve stays at 1; its formula has no real root for the stockiest ones.
  const reduction = l <= m.limitSlenderness ? 1 : Math.min(1, 1 / (phi + Math.sqrt(phi * phi - l * l)));
  return ok({
    eulerLoad,
    relativeSlenderness: l,
    reduction,
    resistance: (m.weldFactor * reduction * m.area * m.proofStrength) / m.partialFactor,
    slenderness: m.bucklingLength / Math.sqrt(m.secondMoment / m.area),
  });
}

/** The steps of `memberBuckling`, in N and mm. Source: EN 1999-1-1:2007, clause 6.3.1 (from memory). */
export function memberBucklingSteps(m: CompressedMember, found: MemberBuckling): readonly CalculationStep[] {
  const strength = val(m.proofStrength / 1e6, 'N/mm2', '0.2 % proof strength');
  const area = val(m.area * 1e6, 'mm2', 'area');
  const euler: CalculationStep = {
    symbol: 'Ncr',
    name: 'Euler load',
    expression: 'pi^2*E*I/L^2',
    values: {
      E: val(m.elasticity / 1e6, 'N/mm2', 'modulus of elasticity', aluminium.source.work),
      I: val(m.secondMoment * 1e12, 'mm4', 'second moment of area'),
      L: val(m.bucklingLength * 1000, 'mm', 'buckling length'),
    },
    result: found.eulerLoad,
    unit: 'N',
    source: frameSources.euler,
  };
  const slenderness: CalculationStep = {
    symbol: 'l',
    name: 'relative slenderness',
    expression: 'sqrt(A*f0/Ncr)',
    values: { A: area, f0: strength, Ncr: fromStep(euler) },
    result: found.relativeSlenderness,
    unit: '1',
    source: frameSources.buckling,
  };
  const curve = {
    l: fromStep(slenderness),
    alpha: val(m.imperfection, '1', 'imperfection', 'Table 6.6'),
    l0: val(m.limitSlenderness, '1', 'limit of the plateau', 'Table 6.6'),
  };
  const phi: CalculationStep = {
    symbol: 'phi',
    name: 'help value of the buckling curve',
    expression: '0.5*(1 + alpha*(l-l0) + l^2)',
    values: curve,
    result: 0.5 * (1 + m.imperfection * (curve.l.value - m.limitSlenderness) + curve.l.value ** 2),
    unit: '1',
    source: frameSources.buckling,
  };
  const reduction: CalculationStep = {
    symbol: 'chi',
    name: 'reduction for buckling',
    expression: 'min(1, 1/(phi + sqrt(max(0, phi^2 - l^2))))',
    values: { phi: fromStep(phi), l: curve.l },
    result: found.reduction,
    unit: '1',
    source: frameSources.buckling,
  };
  const resistance: CalculationStep = {
    symbol: 'Nb',
    name: 'design resistance in compression',
    expression: 'kappa*chi*A*f0/gamma',
    values: {
      kappa: val(m.weldFactor, '1', 'softening by welds'),
      chi: fromStep(reduction),
      A: area,
      f0: strength,
      gamma: val(m.partialFactor, '1', 'partial factor', partialFactors.source.work),
    },
    result: found.resistance,
    unit: 'N',
    source: frameSources.buckling,
  };
  return [euler, slenderness, phi, reduction, resistance];
}
