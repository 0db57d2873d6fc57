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

type Values = Readonly<Record<string, CalculationValue>>;

function loadValues(s: SingleSpan, origin: string): Values {
  const values: Record<string, CalculationValue> = { q: val(s.uniform / 1000, 'N/mm', 'uniform load', origin) };
  s.points.forEach((p, i) => {
    values[`P${i + 1}`] = val(p.load, 'N', `point load ${i + 1}`, origin);
    values[`a${i + 1}`] = val(p.at * 1000, 'mm', 'its distance from the first end', origin);
  });
  return values;
}

const stiffnessValues = (s: SingleSpan, origins: SingleSpanOrigins): Values => ({
  E: val(s.elasticity / 1e6, 'N/mm2', 'modulus of elasticity', origins.elasticity),
  I: val(s.secondMoment * 1e12, 'mm4', 'second moment of area', origins.section),
});

type Step = Omit<CalculationStep, 'source'>;
const step = (s: Step): CalculationStep => ({ ...s, source: frameSources.beamTables });

const reactionStep = (s: SingleSpan, found: SingleSpanResult, values: Values): CalculationStep =>
  step({
    symbol: 'R',
    name: 'reaction at the first end',
    expression: join(reactions[s.ends], s.points.length),
    values,
    result: found.startReaction,
    unit: 'N',
  });

/** Moment at a held first end; a simple end has none. */
const heldEndStep = (s: SingleSpan, found: SingleSpanResult, values: Values): CalculationStep[] =>
  s.ends === 'simple'
    ? []
    : [
        step({
          symbol: 'Me',
          name: 'moment at the held first end',
          expression: `-(${join(endMoments[s.ends], s.points.length)})`,
          values,
          result: found.startMoment * 1000,
          unit: 'N mm',
        }),
      ];

/** Slope at a simple first end; a held end has none. */
const slopeStep = (s: SingleSpan, found: SingleSpanResult, values: Values): CalculationStep[] =>
  s.ends === 'simple'
    ? [
        step({
          symbol: 's',
          name: 'slope at the first end',
          expression: `(${join(simpleSlope, s.points.length)})/(E*I)`,
          values,
          result: found.startSlope,
          unit: 'rad',
        }),
      ]
    : [];

function deflectionStep(s: SingleSpan, found: SingleSpanResult, values: Values): CalculationStep {
  const start = s.ends === 'simple' ? 's*x' : '-Me*x^2/(2*E*I)';
  const loads = s.points.length > 0 ? ` + (${macaulay(s.points.length, 3).slice(3)})/(E*I)` : '';
  return step({
    symbol: 'd',
    name: 'largest deflection',
    expression: `${start} - R*x^3/(6*E*I) + q*x^4/(24*E*I)${loads}`,
    values: { ...values, x: val(found.deflection.at * 1000, 'mm', 'where the slope is zero, or the free end') },
    result: found.deflection.value * 1000,
    unit: 'mm',
  });
}

const momentStep = (s: SingleSpan, found: SingleSpanResult, values: Values): CalculationStep =>
  step({
    symbol: 'M',
    name: 'largest bending moment',
    expression: `(${s.ends === 'simple' ? '' : 'Me + '}R*x - q*x^2/2${macaulay(s.points.length, 1)})/1000`,
    values: { ...values, x: val(found.moment.at * 1000, 'mm', 'where the shear changes its sign, or a held end') },
    result: found.moment.value,
    unit: 'N m',
  });

const known = (steps: readonly CalculationStep[]): Values =>
  Object.fromEntries(steps.map((s) => [s.symbol, fromStep(s)]));

/**
 * The steps of `singleSpan`, in N and mm: reaction and moment at the first end, slope there, deflection and moment at
 * their largest.
 * Source: Roark's Formulas for Stress and Strain, beam tables (from memory).
 */
export function singleSpanSteps(
  s: SingleSpan,
  found: SingleSpanResult,
  origins: SingleSpanOrigins,
): { readonly deflection: readonly CalculationStep[]; readonly moment: readonly CalculationStep[] } {
  const along = loadValues(s, origins.loads);
  const loads = { ...along, L: val(s.span * 1000, 'mm', 'span', origins.loads) };
  const stiffness = stiffnessValues(s, origins);
  const forces = [reactionStep(s, found, loads), ...heldEndStep(s, found, loads)];
  const slope = slopeStep(s, found, { ...loads, ...stiffness });
  return {
    deflection: [
      ...forces,
      ...slope,
      deflectionStep(s, found, { ...along, ...known([...forces, ...slope]), ...stiffness }),
    ],
    moment: [...forces, momentStep(s, found, { ...along, ...known(forces) })],
  };
}

/** What a check of bending leaves out, to stand beside its numbers. */
export const singleSpanAssumptions = {
  ends: 'Straight bar on hinged ends; joints that hold the ends make it stiffer.',
  bending:
    'Bending only: shear deflection (about 1 to 4 % above a span of 15 depths), torsion and joints are left out.',
  elasticity: `Modulus of elasticity of aluminium: ${sourceText(aluminium.source)}.`,
} as const;
