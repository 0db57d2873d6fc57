import {
  airCautions,
  classStateAllowed,
  cleanUpTime,
  humanEmission,
  hundredToOneTime,
  onceThroughZone,
  samplingLocations,
  scaledToSize,
  type WellMixedZone,
} from '../air/index.js';
import { classLimitStep, ratioStep } from '../air/steps.js';
import { sources } from '../air/tables.js';
import { type CalculationStep, fromStep, step, val } from '../floor/calculation.js';
import { type Finding, overLimit, verdictOf } from '../floor/finding.js';
import { numberText } from '../floor/number-text.js';
import { valueOf } from '../floor/problem.js';
import { ruleNumber } from '../rules/schema.js';
import type { CleanlinessNeed, EnclosureAir } from './air-enclosure.js';
import { type AirSubject, airJudged, airOpen, atMostAttention } from './air-finding.js';
import { coverageOf, meanVelocityOf, wantsUnidirectional } from './air-flow.js';
import { type CheckContext, ruleValue } from './context.js';

/** Size at which the rule gives the background and people were counted [m]. */
const countedSize = 0.5e-6;

/** The question whose answer replaces an assumed background. */
export const backgroundQuestion = 'needs.background';

const micrometres = (size: number) => `${numberText(size * 1e6)} \u00b5m`;
const perCubicMetre = (c: number) => `${numberText(c)} per m3`;
const minutes = (seconds: number) => (seconds < 120 ? `${numberText(seconds)} s` : `${numberText(seconds / 60)} min`);

export const classText = (need: CleanlinessNeed): string =>
  `ISO class ${numberText(need.isoClass)} at ${micrometres(need.size)} and larger, ${need.state}`;

interface Forecast {
  readonly zone: WellMixedZone;
  readonly background: CalculationStep;
  readonly steady: CalculationStep;
  readonly rate: CalculationStep;
  readonly steps: readonly CalculationStep[];
  readonly assumptions: readonly string[];
  /** A background nobody measured, or a figure scaled to another size. */
  readonly assumed: boolean;
  readonly measured: boolean;
}

function backgroundStep(context: CheckContext, size: number): CalculationStep {
  const given = context.brief.needs.background;
  const from = given?.size ?? countedSize;
  const known = given
    ? val(given.concentration, '1/m3', 'background', 'brief')
    : ruleValue(context, 'air.background', '1/m3');
  return step(
    'Cb',
    `background at ${micrometres(size)}`,
    'C1*(D1/D2)^2.08',
    {
      C1: known,
      D1: val(from * 1e6, 'um', 'size of the background'),
      D2: val(size * 1e6, 'um', 'size of the class', 'brief'),
    },
    scaledToSize(known.value, from, size),
    '1/m3',
    sources.sizeSlope,
  );
}

/** Particles that people give off; people count in the operational state only. */
function peopleStep(need: CleanlinessNeed): {
  readonly line: CalculationStep;
  readonly assumptions: readonly string[];
} {
  const operational = need.state === 'operational';
  const people = operational ? (need.people ?? 1) : 0;
  const clothing = need.clothing ?? 'indoor';
  const measured = humanEmission(clothing, need.size);
  const from = measured.ok ? need.size : countedSize;
  const each = valueOf(humanEmission(clothing, from)) * 60;
  const line = step(
    'S',
    'particles that people give off',
    'people*e*(D1/D2)^2.08/60',
    {
      people: val(people, '1', 'people inside', need.people === undefined ? 'assumed' : 'brief'),
      e: val(each, '1/min', `one person in ${clothing} clothes`, 'Whyte and Hejab 2007'),
      D1: val(from * 1e6, 'um', 'size counted'),
      D2: val(need.size * 1e6, 'um', 'size of the class', 'brief'),
    },
    scaledToSize((people * each) / 60, from, need.size),
    '1/s',
    sources.people,
  );
  return {
    line,
    assumptions: [
      ...(operational && need.people === undefined
        ? ['One person works inside: the brief does not say how many.']
        : []),
      ...(people > 0 && need.clothing === undefined ? ['People wear indoor clothes: the brief does not say.'] : []),
      ...(people > 0 && !measured.ok
        ? ['Emission of people scaled to the size by the slope of the class limits: an estimate.']
        : []),
      ...(people > 0 ? ['All that people give off counts as given off inside.'] : []),
    ],
  };
}

function forecast(context: CheckContext, air: EnclosureAir, need: CleanlinessNeed): Forecast {
  const { working, filter, unit, enclosure } = air;
  const background = backgroundStep(context, need.size);
  const people = peopleStep(need);
  const leak = ruleValue(context, 'air.induced-leak', '1');
  const Q = fromStep(working.steps.find((s) => s.symbol === 'Q')!);
  const P = val(filter.integralPenetration, '1', `penetration of ${filter.filterClass}`, `catalogue ${unit.id}`);
  const V = val(enclosure.volume, 'm3', 'volume', 'design');
  const zone = valueOf(
    onceThroughZone({
      volume: enclosure.volume,
      supplyFlow: working.flow,
      penetration: filter.integralPenetration,
      upstream: background.result,
      leakFlow: leak.value * working.flow,
      room: background.result,
      source: people.line.result,
      deposition: 0,
    }),
  );
  const rate = step(
    'lambda',
    'rate of the well-mixed zone',
    'Q*(1+l)/V',
    { Q, l: leak, V },
    zone.decayRate,
    '1/s',
    sources.wellMixed,
  );
  const steady = step(
    'Css',
    'steady concentration, well mixed',
    '(Q*P*Cb+l*Q*Cb+S)/(Q*(1+l))',
    { Q, P, l: leak, Cb: fromStep(background), S: fromStep(people.line) },
    zone.steady,
    '1/m3',
    sources.wellMixed,
  );
  const given = context.brief.needs.background;
  const measured = given?.measured === true;
  const scaled = Math.abs((given?.size ?? countedSize) - need.size) > need.size * 1e-6;
  const assumptions = [
    'The units draw room air; air leaves through every gap; no loss to surfaces; perfect mixing.',
    ...(measured ? [] : [`Nobody measured the background: ${perCubicMetre(background.result)} is assumed.`]),
    ...(scaled ? ['Background scaled to the size by the slope of the class limits: real air differs by factors.'] : []),
    ...people.assumptions,
  ];
  return {
    zone,
    background,
    steady,
    rate,
    steps: [...working.steps, background, people.line, steady],
    assumptions,
    assumed:
      !measured || scaled || people.assumptions.some((a) => a.includes('does not say') || a.includes('estimate')),
    measured,
  };
}

/** Whether the flow over the clean area is unidirectional as planned: asked for, covered and fast enough. */
const isUnidirectional = (context: CheckContext, air: EnclosureAir): boolean =>
  wantsUnidirectional(context, air) &&
  coverageOf(air) >= ruleNumber(context.rules, 'air.coverage') &&
  meanVelocityOf(air) >= 0.8 * ruleNumber(context.rules, 'air.unidirectional-velocity');

interface ClassCase {
  readonly need: CleanlinessNeed;
  /** Behind the id of the enclosure: nothing for the first need, `/2` for the second. */
  readonly tail: string;
}

const subjectOf = (
  air: EnclosureAir,
  c: ClassCase,
  check: string,
  requirement: string,
  measured: boolean,
): AirSubject => ({
  id: `air/${check}/${air.enclosure.id}${c.tail}`,
  subject: air.enclosure.id,
  requirement,
  decider: 'testing organisation',
  cautions: [airCautions.forecast],
  asks: measured ? [] : [backgroundQuestion],
  required: true,
  at: air.enclosure.centre,
});

function classFinding(
  context: CheckContext,
  air: EnclosureAir,
  c: ClassCase,
  f: Forecast,
  limit: CalculationStep,
): Finding {
  const subject: AirSubject = {
    ...subjectOf(air, c, 'class', `Forecast for ${classText(c.need)}`, f.measured),
    rule: 'air.limit-share',
  };
  const share = ruleValue(context, 'air.limit-share', '1');
  const allowed = step(
    'Ca',
    'concentration that the design may use',
    'f*Cn',
    { f: share, Cn: fromStep(limit) },
    share.value * limit.result,
    '1/m3',
    sources.limitShare,
  );
  const mixed = ratioStep(
    'u',
    'utilisation, well mixed',
    ['Css', fromStep(f.steady)],
    ['Ca', fromStep(allowed)],
    '1',
    sources.limitShare,
  );
  const proof = 'Only a measurement proves a class.';
  const allowedText = `${numberText(share.value * 100)} % of the limit of ${perCubicMetre(limit.result)} may be used`;
  if (overLimit(mixed.result) && isUnidirectional(context, air)) {
    const P = val(
      air.filter.integralPenetration,
      '1',
      `penetration of ${air.filter.filterClass}`,
      `catalogue ${air.unit.id}`,
    );
    const core = step(
      'Cc',
      'clean core behind the filters',
      'P*Cb',
      { P, Cb: fromStep(f.background) },
      P.value * f.background.result,
      '1/m3',
      sources.filters,
    );
    const used = ratioStep(
      'uc',
      'utilisation, clean core',
      ['Cc', fromStep(core)],
      ['Ca', fromStep(allowed)],
      '1',
      sources.limitShare,
    );
    return airJudged(context, subject, {
      message: `In the undisturbed core behind the filters at most ${perCubicMetre(core.result)} are expected, well mixed ${perCubicMetre(f.steady.result)}; ${allowedText}. Between the two decide wakes and edges, which are not assessed. ${proof}`,
      demand: core.result,
      capacity: allowed.result,
      unit: '1/m3',
      utilisation: used.result,
      verdict: atMostAttention(verdictOf(used.result), true),
      steps: [...f.steps, limit, allowed, mixed, core, used],
      assumptions: [
        ...f.assumptions,
        'The clean core is fed by the filters alone and nobody works upstream of the optics.',
      ],
    });
  }
  const overShare = overLimit(mixed.result) && f.steady.result <= limit.result;
  return airJudged(context, subject, {
    message: `${perCubicMetre(f.steady.result)} are expected in the steady state; ${allowedText}${overShare ? ', so the limit holds but without the reserve' : ''}. ${proof}`,
    demand: f.steady.result,
    capacity: allowed.result,
    unit: '1/m3',
    utilisation: mixed.result,
    verdict: atMostAttention(verdictOf(mixed.result), f.assumed),
    steps: [...f.steps, limit, allowed, mixed],
    assumptions: f.assumptions,
  });
}

function cleanUpFinding(
  context: CheckContext,
  air: EnclosureAir,
  c: ClassCase,
  f: Forecast,
  limit: CalculationStep,
): Finding {
  const within = c.need.recoveryWithin;
  const subject: AirSubject = {
    ...subjectOf(air, c, 'clean-up', `Time from opening or switching on until ${classText(c.need)}`, f.measured),
    required: within !== undefined,
    source: sources.wellMixed,
  };
  const time = cleanUpTime(f.zone, f.background.result, limit.result);
  if (!time.ok) {
    const never = `Well mixed, the air settles at ${perCubicMetre(f.steady.result)} and does not reach the limit of ${perCubicMetre(limit.result)}`;
    if (isUnidirectional(context, air))
      return airOpen(
        context,
        subject,
        `${never}. Under unidirectional flow this model is too severe for the core, so the time is not assessed.`,
        { steps: [...f.steps, f.rate, limit], assumptions: f.assumptions },
      );
    const used = ratioStep(
      'u',
      'utilisation',
      ['Css', fromStep(f.steady)],
      ['Cn', fromStep(limit)],
      '1',
      sources.wellMixed,
    );
    return airJudged(context, subject, {
      message: `${never}, however long one waits.`,
      demand: f.steady.result,
      capacity: limit.result,
      unit: '1/m3',
      utilisation: used.result,
      verdict: 'fails',
      steps: [...f.steps, limit, used],
      assumptions: f.assumptions,
    });
  }
  const line = step(
    't',
    'time from the background to the limit',
    'log((max(Cb,Cn)-Css)/(Cn-Css))/lambda',
    { Cb: fromStep(f.background), Cn: fromStep(limit), Css: fromStep(f.steady), lambda: fromStep(f.rate) },
    time.value,
    's',
    sources.wellMixed,
  );
  const steps = [...f.steps, f.rate, limit, line];
  const found = `From the background to the limit it takes ${minutes(time.value)}`;
  if (within === undefined)
    return airOpen(context, subject, `${found}. The brief gives no longest wait.`, {
      steps,
      assumptions: f.assumptions,
    });
  const used = ratioStep(
    'u',
    'utilisation',
    ['t', fromStep(line)],
    ['tmax', val(within, 's', 'longest wait', 'brief')],
    '1',
    sources.wellMixed,
  );
  return airJudged(context, subject, {
    message: `${found}; ${minutes(within)} are allowed. A recovery test proves it.`,
    demand: time.value,
    capacity: within,
    unit: 's',
    utilisation: used.result,
    verdict: atMostAttention(verdictOf(used.result), f.assumed),
    steps: [...steps, used],
    assumptions: f.assumptions,
  });
}

function samplingFinding(context: CheckContext, air: EnclosureAir, c: ClassCase, limit: CalculationStep): Finding {
  const { enclosure } = air;
  const area = enclosure.insideLength * enclosure.insideWidth;
  const count = valueOf(samplingLocations(area));
  const areaStep = step(
    'A',
    'floor area of the clean zone',
    'L*W',
    {
      L: val(enclosure.insideLength, 'm', 'inside length', 'design'),
      W: val(enclosure.insideWidth, 'm', 'inside width', 'design'),
    },
    area,
    'm2',
    sources.locations,
  );
  const row = val(count, '1', `row of Table A.1 for ${numberText(area)} m²`, 'ISO 14644-1:2015, Table A.1');
  const locations = step('NL', 'sampling locations', 'row', { row }, count, '1', sources.locations);
  const volume = step(
    'Vs',
    'volume at each location',
    'max(2, 20/Cn*1000)',
    { Cn: fromStep(limit) },
    Math.max(2, 20_000 / limit.result),
    'L',
    sources.sampleVolume,
  );
  return airJudged(
    context,
    {
      ...subjectOf(air, c, 'sampling', `Measurement that proves ${classText(c.need)}`, true),
      required: false,
      source: sources.locations,
    },
    {
      message: `The class is proven by sampling at ${count} ${count === 1 ? 'location' : 'locations'} or more, ${numberText(volume.result)} L and one minute or more at each.`,
      demand: count,
      capacity: null,
      unit: '1',
      utilisation: null,
      verdict: 'attention',
      steps: [areaStep, locations, limit, volume],
    },
  );
}

/** 100:1 recovery of an enclosure against the site rule: it depends on flow and volume alone. */
export function recoveryFinding(context: CheckContext, air: EnclosureAir): Finding {
  const { enclosure, working } = air;
  const leak = ruleValue(context, 'air.induced-leak', '1');
  const Q = working.steps.find((s) => s.symbol === 'Q')!;
  const rate = step(
    'lambda',
    'rate of the well-mixed zone',
    'Q*(1+l)/V',
    { Q: fromStep(Q), l: leak, V: val(enclosure.volume, 'm3', 'volume', 'design') },
    (working.flow * (1 + leak.value)) / enclosure.volume,
    '1/s',
    sources.wellMixed,
  );
  const time = valueOf(hundredToOneTime(rate.result));
  const line = step(
    't100',
    '100:1 recovery time',
    'log(100)/lambda',
    { lambda: fromStep(rate) },
    time,
    's',
    sources.recovery,
  );
  const rule = ruleValue(context, 'air.recovery', 's');
  const used = ratioStep('u', 'utilisation', ['t100', fromStep(line)], ['tmax', rule], '1', sources.recovery);
  return airJudged(
    context,
    {
      id: `air/recovery/${enclosure.id}`,
      subject: enclosure.id,
      requirement: 'Recovery from a hundred times the limit',
      rule: 'air.recovery',
      decider: 'testing organisation',
      required: air.needs.length > 0,
      cautions: [airCautions.forecast],
      at: enclosure.centre,
    },
    {
      message: `Well mixed, the concentration falls to a hundredth in ${minutes(time)}; ${minutes(rule.value)} are allowed. A recovery test proves it.`,
      demand: time,
      capacity: rule.value,
      unit: 's',
      utilisation: used.result,
      steps: [...working.steps, rate, line, used],
      assumptions: ['Perfect mixing; the steady concentration lies far below the limit.'],
    },
  );
}

/** Class, clean-up time and proving of each cleanliness need of one enclosure. */
export function cleanlinessFindings(context: CheckContext, air: EnclosureAir): Finding[] {
  return air.needs.flatMap((need, i) => {
    const c: ClassCase = { need, tail: i === 0 ? '' : `/${i + 1}` };
    const limit = classLimitStep(need.isoClass, need.size, 'brief');
    const state = classStateAllowed(need.isoClass, need.state);
    const refused = [limit, state].flatMap((outcome) => (outcome.ok ? [] : outcome.problems));
    if (!limit.ok || refused.length > 0)
      return [
        airOpen(
          context,
          subjectOf(air, c, 'class', `Forecast for ${classText(need)}`, true),
          `${refused[0]!.message} ${refused[0]!.hint}`,
        ),
      ];
    const f = forecast(context, air, need);
    return [
      classFinding(context, air, c, f, limit.value),
      cleanUpFinding(context, air, c, f, limit.value),
      samplingFinding(context, air, c, limit.value),
    ];
  });
}
