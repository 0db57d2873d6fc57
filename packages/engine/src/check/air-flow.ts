import { airCautions } from '../air/index.js';
import { ratioStep } from '../air/steps.js';
import { sources, typicalAirChanges } from '../air/tables.js';
import { fromStep, step, val } from '../floor/calculation.js';
import { type Finding, overLimit, verdictOf } from '../floor/finding.js';
import { numberText } from '../floor/number-text.js';
import { ruleNumber } from '../rules/schema.js';
import type { EnclosureAir } from './air-enclosure.js';
import { airJudged, airOpen, atMostAttention } from './air-finding.js';
import { type CheckContext, ruleValue } from './context.js';

const perHourText = (flow: number): string => `${numberText(flow * 3600)} m3/h`;
const last = <T>(list: readonly T[]): T => list[list.length - 1]!;

/** Soft curtains bulge above this. Source: some pascals; a 2 m2 strip then carries 10 N (common practice). */
const softCurtainPressure = 5;

/** Share by which the velocity may fall short or exceed. Source: EU GMP Annex 1 (2022): within 20 % (from memory). */
const velocityBand = 0.2;

/** Whether a class is asked for that is planned with unidirectional flow. */
export const wantsUnidirectional = (context: CheckContext, air: EnclosureAir): boolean =>
  air.needs.some((need) => need.isoClass <= ruleNumber(context.rules, 'air.unidirectional-from-class'));

export const coverageOf = (air: EnclosureAir): number =>
  (air.enclosure.unitCount * air.unit.face[0] * air.unit.face[1]) / air.enclosure.cleanArea;

export const meanVelocityOf = (air: EnclosureAir): number => air.working.flow / air.enclosure.cleanArea;

const flowStep = (air: EnclosureAir) => air.working.steps.find((s) => s.symbol === 'Q')!;

function fanFinding(context: CheckContext, air: EnclosureAir): Finding {
  const { working, unit, enclosure } = air;
  const over = last(working.steps);
  const most = Math.max(...unit.curve.map((p) => p.pressure));
  const pressure = val(most, 'Pa', 'highest pressure of the fan curve', `catalogue ${unit.id}`);
  const used = ratioStep(
    'u',
    'share of the pressure used',
    ['dp', fromStep(over)],
    ['pmax', pressure],
    '1',
    sources.fanCurve,
  );
  return airJudged(
    context,
    {
      id: `air/flow/${enclosure.id}`,
      subject: enclosure.id,
      requirement: 'Fan filter units work within their fan curve',
      source: sources.fanCurve,
      cautions: [airCautions.overhead],
      at: enclosure.centre,
    },
    {
      message: `${enclosure.unitCount} units give ${perHourText(working.flow)} together, ${perHourText(working.unitFlow)} each, against ${numberText(working.pressure)} Pa of over-pressure.`,
      demand: working.pressure,
      capacity: most,
      unit: 'Pa',
      utilisation: used.result,
      steps: [...working.steps, used],
      assumptions: ['Clean filters; the flow falls as they load with dust.'],
    },
  );
}

function velocityFinding(context: CheckContext, air: EnclosureAir): Finding {
  const { enclosure, unit, working } = air;
  const Q = flowStep(air);
  const face = step(
    'vf',
    'velocity at the filter face',
    'q/(3600*a*c)',
    {
      q: val(working.unitFlow * 3600, 'm3/h', 'flow of one unit', 'step q'),
      a: val(unit.face[0], 'm', 'filter face', `catalogue ${unit.id}`),
      c: val(unit.face[1], 'm', 'filter face', `catalogue ${unit.id}`),
    },
    working.unitFlow / (unit.face[0] * unit.face[1]),
    'm/s',
    sources.continuity,
  );
  const area = val(enclosure.cleanArea, 'm2', 'clean area', 'design');
  // Filters that reach past the clean area blow part of the flow beside it: the air is nowhere faster than at their faces.
  const faces = enclosure.unitCount * unit.face[0] * unit.face[1];
  const mean = step(
    'v',
    'mean velocity over the clean area',
    'Q/max(A, F)',
    { Q: fromStep(Q), A: area, F: val(faces, 'm2', 'all filter faces', 'design') },
    Q.result / Math.max(enclosure.cleanArea, faces),
    'm/s',
    sources.continuity,
  );
  const subject = {
    id: `air/velocity/${enclosure.id}`,
    subject: enclosure.id,
    requirement: 'Mean velocity of the clean air for unidirectional flow',
    rule: 'air.unidirectional-velocity',
    required: wantsUnidirectional(context, air),
    at: enclosure.centre,
  } as const;
  const found = `The clean air moves at ${numberText(mean.result)} m/s over the clean area and at ${numberText(face.result)} m/s at the filter face.`;
  if (!subject.required)
    return airOpen(context, subject, `${found} No need asks for unidirectional flow here.`, { steps: [Q, face, mean] });
  const target = ruleValue(context, 'air.unidirectional-velocity', 'm/s');
  const least = step(
    'vmin',
    'least velocity',
    'v0*(1-band)',
    { v0: target, band: val(velocityBand, '1', 'band', 'EU GMP Annex 1, from memory') },
    target.value * (1 - velocityBand),
    'm/s',
    sources.velocityBand,
  );
  const used = ratioStep(
    'u',
    'utilisation',
    ['vmin', fromStep(least)],
    ['v', fromStep(mean)],
    '1',
    sources.velocityBand,
  );
  const fast = mean.result > target.value * (1 + velocityBand);
  const short = mean.result < target.value;
  return airJudged(context, subject, {
    message: `${found} ${numberText(target.value)} m/s is planned${fast ? '; more disturbs beams' : short ? '; it falls short of that' : ''}.`,
    demand: least.result,
    capacity: mean.result,
    unit: 'm/s',
    utilisation: used.result,
    verdict: atMostAttention(verdictOf(used.result), fast || short),
    steps: [...air.working.steps, face, mean, least, used],
    assumptions: ['A shortfall of up to 20 % is within the band that the guidance gives for its value.'],
  });
}

function coverageFinding(context: CheckContext, air: EnclosureAir): Finding {
  const { enclosure, unit } = air;
  const coverage = step(
    'c',
    'filter face over clean area',
    'n*a*b/A',
    {
      n: air.count,
      a: val(unit.face[0], 'm', 'filter face', `catalogue ${unit.id}`),
      b: val(unit.face[1], 'm', 'filter face', `catalogue ${unit.id}`),
      A: val(enclosure.cleanArea, 'm2', 'clean area', 'design'),
    },
    coverageOf(air),
    '1',
    sources.coverage,
  );
  const subject = {
    id: `air/coverage/${enclosure.id}`,
    subject: enclosure.id,
    requirement: 'Clean area under filter faces for unidirectional flow',
    rule: 'air.coverage',
    required: wantsUnidirectional(context, air),
    at: enclosure.centre,
  } as const;
  const found = `Filter faces measure ${numberText(coverage.result * 100)} % of the clean area.`;
  if (!subject.required)
    return airOpen(context, subject, `${found} No need asks for unidirectional flow here; the mixed model is used.`, {
      steps: [coverage],
    });
  const rule = ruleValue(context, 'air.coverage', '1');
  const used = ratioStep('u', 'utilisation', ['c0', rule], ['c', fromStep(coverage)], '1', sources.coverage);
  return airJudged(context, subject, {
    message: `${found} ${numberText(rule.value * 100)} % is asked for; below it the flow mixes.`,
    demand: rule.value,
    capacity: coverage.result,
    unit: '1',
    utilisation: used.result,
    steps: [coverage, used],
    assumptions: ['The faces lie over the clean area without large gaps between them.'],
  });
}

function changesFinding(context: CheckContext, air: EnclosureAir): Finding {
  const { enclosure } = air;
  const Q = flowStep(air);
  const n = step(
    'n',
    'air changes',
    '3600*Q/V',
    { Q: fromStep(Q), V: val(enclosure.volume, 'm3', 'volume', 'design') },
    (3600 * air.working.flow) / enclosure.volume,
    '1/h',
    sources.continuity,
  );
  const cleanest = Math.min(...air.needs.map((need) => need.isoClass));
  const typical = typicalAirChanges[Math.floor(cleanest)];
  const subject = {
    id: `air/changes/${enclosure.id}`,
    subject: enclosure.id,
    requirement: 'Air changes as in built examples of the class',
    source: sources.typicalChanges,
    at: enclosure.centre,
  };
  const found = `The air changes ${numberText(n.result)} times an hour.`;
  if (!typical)
    return airOpen(context, subject, `${found} There is no typical value to hold it against here.`, { steps: [Q, n] });
  const least = val(typical[0], '1/h', 'lower end of built examples', 'ISO 14644-4:2001, Annex B');
  const used = ratioStep('u', 'utilisation', ['n0', least], ['n', fromStep(n)], '1', sources.typicalChanges);
  return airJudged(context, subject, {
    message: `${found} Built examples have ${typical[0]} to ${typical[1]}; the class standard prescribes none.`,
    demand: typical[0],
    capacity: n.result,
    unit: '1/h',
    utilisation: used.result,
    // A value below the examples breaks no rule: the balance of particles decides.
    verdict: overLimit(used.result) ? 'attention' : verdictOf(used.result),
    steps: [...air.working.steps, n, used],
  });
}

function pressureFinding(context: CheckContext, air: EnclosureAir): Finding {
  const { enclosure, working } = air;
  const soft = enclosure.sides.some((side) => side.closure === 'curtain' || side.closure === 'strip');
  const subject = {
    id: `air/over-pressure/${enclosure.id}`,
    subject: enclosure.id,
    requirement: 'Over-pressure that hanging curtains stand',
    cautions: [airCautions.overPressure],
    at: enclosure.centre,
  };
  const found = `The units hold ${numberText(working.pressure)} Pa over the room.`;
  if (!soft)
    return airOpen(context, subject, `${found} No curtain hangs here, and no rule asks for a pressure.`, {
      steps: working.steps,
    });
  const most = val(softCurtainPressure, 'Pa', 'curtains bulge above', 'common practice');
  const used = ratioStep(
    'u',
    'utilisation',
    ['dp', fromStep(last(working.steps))],
    ['pmax', most],
    '1',
    sources.orifice,
  );
  const bulges = overLimit(used.result);
  return airJudged(context, subject, {
    message: bulges
      ? `${found} Above some ${softCurtainPressure} Pa curtains bulge and open more gap: do not count on this pressure.`
      : `${found} Curtains stand that.`,
    demand: working.pressure,
    capacity: softCurtainPressure,
    unit: 'Pa',
    utilisation: used.result,
    verdict: bulges ? 'attention' : verdictOf(used.result),
    steps: [...working.steps, used],
  });
}

function gapFinding(context: CheckContext, air: EnclosureAir): Finding {
  const { enclosure, working } = air;
  const Q = flowStep(air);
  const A = last(working.steps).values.A!;
  const v = ratioStep(
    'v',
    'mean velocity outwards in the gaps',
    ['Q', fromStep(Q)],
    ['A', A],
    'm/s',
    sources.continuity,
  );
  const rule = ruleValue(context, 'air.gap-velocity', 'm/s');
  const used = ratioStep('u', 'utilisation', ['v0', rule], ['v', fromStep(v)], '1', sources.gapVelocity);
  return airJudged(
    context,
    {
      id: `air/gap-velocity/${enclosure.id}`,
      subject: enclosure.id,
      requirement: 'Air leaves through every gap fast enough to keep room air out',
      rule: 'air.gap-velocity',
      required: air.needs.length > 0,
      cautions: [airCautions.overPressure],
      at: enclosure.centre,
    },
    {
      message: `Air leaves the gaps at ${numberText(v.result)} m/s on average; at least ${numberText(rule.value)} m/s is asked for.`,
      demand: rule.value,
      capacity: v.result,
      unit: 'm/s',
      utilisation: used.result,
      steps: [...working.steps, v, used],
      assumptions: ['Mean over all gaps; people who pass need 0.5 m/s and more (common practice).'],
    },
  );
}

/** What the air of one enclosure does: fan point, velocity, coverage, air changes, over-pressure, gaps. */
export const flowFindings = (context: CheckContext, air: EnclosureAir): Finding[] =>
  [fanFinding, velocityFinding, coverageFinding, changesFinding, pressureFinding, gapFinding].map((of) =>
    of(context, air),
  );
