import { type CalculationStep, type CalculationValue, fromStep, val } from '../floor/calculation.js';
import { sourceText } from '../floor/source.js';
import type { SingleSpanResult } from './single-span.js';
import { aluminium, frameSources } from './tables.js';
import type { BeamEnds, SingleSpan } from './types.js';

/** Terms of the beam tables as text; `P#` and `a#` are the numbered point loads. */
interface Terms {
  readonly uniform: string;
  readonly point: string;
}

const reactions: Readonly<Record<BeamEnds, Terms>> = {
  simple: { uniform: 'q*L/2', point: 'P#*(L-a#)/L' },
  'fixed and simple': { uniform: '5*q*L/8', point: 'P#*(L-a#)*(3*L^2-(L-a#)^2)/(2*L^3)' },
  fixed: { uniform: 'q*L/2', point: 'P#*(L-a#)^2*(2*a#+L)/L^3' },
  cantilever: { uniform: 'q*L', point: 'P#' },
};

const endMoments: Readonly<Record<Exclude<BeamEnds, 'simple'>, Terms>> = {
  'fixed and simple': { uniform: 'q*L^2/8', point: 'P#*a#*(L-a#)*(2*L-a#)/(2*L^2)' },
  fixed: { uniform: 'q*L^2/12', point: 'P#*a#*(L-a#)^2/L^2' },
  cantilever: { uniform: 'q*L^2/2', point: 'P#*a#' },
};

const simpleSlope: Terms = { uniform: 'q*L^3/24', point: 'P#*(L-a#)*(L^2-(L-a#)^2)/(6*L)' };

const join = (terms: Terms, count: number): string =>
  [terms.uniform, ...Array.from({ length: count }, (_, i) => terms.point.replaceAll('#', String(i + 1)))].join(' + ');

const macaulay = (count: number, power: 1 | 3): string =>
  Array.from({ length: count }, (_, i) =>
    power === 1 ? ` - P${i + 1}*max(0, x-a${i + 1})` : ` + P${i + 1}*max(0, x-a${i + 1})^3/6`,
  ).join('');

export interface SingleSpanOrigins {
  readonly loads: string;
  readonly section: string;
  readonly elasticity: string;
}

/**
 * The steps of `singleSpan`, in N and mm: reaction and moment at the first end, slope there, deflection and moment at
 * their largest. The places x are where slope and shear are zero.
 * Source: Roark's Formulas for Stress and Strain, beam tables (from memory).
 */
export function singleSpanSteps(
  s: SingleSpan,
  found: SingleSpanResult,
  origins: SingleSpanOrigins,
): { readonly deflection: readonly CalculationStep[]; readonly moment: readonly CalculationStep[] } {
  const count = s.points.length;
  const source = frameSources.beamTables;
  const loads: Record<string, CalculationValue> = {
    q: val(s.uniform / 1000, 'N/mm', 'uniform load', origins.loads),
    L: val(s.span * 1000, 'mm', 'span', origins.loads),
  };
  s.points.forEach((p, i) => {
    loads[`P${i + 1}`] = val(p.load, 'N', `point load ${i + 1}`, origins.loads);
    loads[`a${i + 1}`] = val(p.at * 1000, 'mm', `its distance from the first end`, origins.loads);
  });
  const stiffness = {
    E: val(s.elasticity / 1e6, 'N/mm2', 'modulus of elasticity', origins.elasticity),
    I: val(s.secondMoment * 1e12, 'mm4', 'second moment of area', origins.section),
  };
  const reaction: CalculationStep = {
    symbol: 'R',
    name: 'reaction at the first end',
    expression: join(reactions[s.ends], count),
    values: loads,
    result: found.startReaction,
    unit: 'N',
    source,
  };
  const held: CalculationStep[] =
    s.ends === 'simple'
      ? []
      : [
          {
            symbol: 'Me',
            name: 'moment at the held first end',
            expression: `-(${join(endMoments[s.ends], count)})`,
            values: loads,
            result: found.startMoment * 1000,
            unit: 'N mm',
            source,
          },
        ];
  const slope: CalculationStep[] =
    s.ends === 'simple'
      ? [
          {
            symbol: 's',
            name: 'slope at the first end',
            expression: `(${join(simpleSlope, count)})/(E*I)`,
            values: { ...loads, ...stiffness },
            result: found.startSlope,
            unit: 'rad',
            source,
          },
        ]
      : [];
  const known = Object.fromEntries([reaction, ...held, ...slope].map((step) => [step.symbol, fromStep(step)]));
  const { L: _span, ...along } = loads;
  const deflection: CalculationStep = {
    symbol: 'd',
    name: 'largest deflection',
    expression:
      (s.ends === 'simple' ? 's*x' : '-Me*x^2/(2*E*I)') +
      ` - R*x^3/(6*E*I) + q*x^4/(24*E*I)${count > 0 ? ` + (${macaulay(count, 3).slice(3)})/(E*I)` : ''}`,
    values: { ...along, ...known, ...stiffness, x: val(found.deflection.at * 1000, 'mm', 'where the slope is zero') },
    result: found.deflection.value * 1000,
    unit: 'mm',
    source,
  };
  const { s: _slope, ...forces } = known;
  const moment: CalculationStep = {
    symbol: 'M',
    name: 'largest bending moment',
    expression: `(${s.ends === 'simple' ? '' : 'Me + '}R*x - q*x^2/2${macaulay(count, 1)})/1000`,
    values: { ...along, ...forces, x: val(found.moment.at * 1000, 'mm', 'where the shear changes its sign') },
    result: found.moment.value,
    unit: 'N m',
    source,
  };
  return { deflection: [reaction, ...held, ...slope, deflection], moment: [reaction, ...held, moment] };
}

/** What a check of bending leaves out, to stand beside its numbers. */
export const singleSpanAssumptions = {
  ends: 'Straight bar on hinged ends; joints that hold the ends make it stiffer.',
  bending:
    'Bending only: shear deflection (about 1 to 4 % above a span of 15 depths), torsion and joints are left out.',
  elasticity: `Modulus of elasticity of aluminium: ${sourceText(aluminium.source)}.`,
} as const;
