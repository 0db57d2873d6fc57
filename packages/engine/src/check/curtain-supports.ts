import { supportLoadBound, worstSupportLoad } from '../curtain/index.js';
import { aluminiumModulus, gravity, supportCautions, threeMomentSource, tributaryFactor } from '../curtain/tables.js';
import { type CalculationStep, calculation, fromStep, val } from '../floor/calculation.js';
import type { Finding } from '../floor/finding.js';
import { millimetreText, numberText } from '../floor/number-text.js';
import { remembered } from '../floor/remembered.js';
import { commonPractice, geometrySource, source } from '../floor/source.js';
import { ruleNumber } from '../rules/schema.js';
import { assessed, notAssessed, type RunFacts } from './curtain-facts.js';

const catalogueSource = source('catalogue', 'entered');
const mm = (metres: number, name: string, origin: string) => val(metres * 1000, 'mm', name, origin);

/** Utilisation of something that must not exceed its limit; both in the same unit. */
const share = (demand: CalculationStep, limit: CalculationStep['values'][string]): CalculationStep => ({
  symbol: 'u',
  name: 'utilisation',
  expression: 'x / limit',
  values: { x: fromStep(demand), limit },
  result: demand.result / limit.value,
  unit: '1',
  source: geometrySource,
});

/** Largest distance between neighbouring supports against the track's own limit for this kind of hanging. */
export function spacingFinding({ context, run, track }: RunFacts): Finding {
  const places = run.supports.map((s) => s.at);
  const pairs = places.slice(1).map((b, i) => ({ a: places[i]!, b }));
  if (run.closed) pairs.push({ a: places.at(-1)!, b: places[0]! + run.pathLength });
  const worst = pairs.reduce((m, p) => (p.b - p.a > m.b - m.a ? p : m), pairs[0] ?? { a: 0, b: run.pathLength });
  const limit = track.supportSpacing[run.hung];
  const distance: CalculationStep = {
    symbol: 's',
    name: 'largest distance between supports',
    expression: 'b - a',
    values: { a: mm(worst.a, 'support', 'design'), b: mm(worst.b, 'next support', 'design') },
    result: (worst.b - worst.a) * 1000,
    unit: 'mm',
    source: geometrySource,
  };
  const steps = [distance, share(distance, mm(limit, `largest spacing, ${run.hung}`, `catalogue ${track.id}`))];
  return assessed(
    context,
    {
      id: `curtain/support-spacing/${run.id}`,
      subject: run.id,
      requirement: `Supports of the track at most ${millimetreText(limit)} apart.`,
      message: `The largest distance between supports of ${run.name} is ${millimetreText(worst.b - worst.a)}; ${millimetreText(limit)} are allowed.`,
      source: catalogueSource,
      decider: 'facilities',
      required: true,
      cautions: supportCautions,
      at: run.supports.find((s) => s.at === worst.a)?.point,
    },
    {
      demand: worst.b - worst.a,
      capacity: limit,
      unit: 'm',
      calculation: calculation('Support spacing', steps, { cautions: supportCautions }),
    },
  );
}

/** Overhang of an open track beyond its outer supports. */
export function endFinding({ context, run }: RunFacts): Finding[] {
  if (run.closed) return [];
  const first = run.supports[0]?.at ?? run.pathLength;
  const last = run.supports.at(-1)?.at ?? 0;
  const limit = ruleNumber(context.rules, 'curtain.end-distance');
  const worst = Math.max(first, run.pathLength - last);
  const overhang: CalculationStep = {
    symbol: 'e',
    name: 'largest distance from an end to its first support',
    expression: 'max(a, L - b)',
    values: {
      a: mm(first, 'first support', 'design'),
      b: mm(last, 'last support', 'design'),
      L: mm(run.pathLength, 'length of the track', 'design'),
    },
    result: worst * 1000,
    unit: 'mm',
    source: geometrySource,
  };
  const steps = [overhang, share(overhang, mm(limit, 'largest end distance', 'rule curtain.end-distance'))];
  return [
    assessed(
      context,
      {
        id: `curtain/support-ends/${run.id}`,
        subject: run.id,
        rule: 'curtain.end-distance',
        requirement: `A support within ${millimetreText(limit)} of each end of the track.`,
        message: `The end of ${run.name} is ${millimetreText(worst)} from its first support; ${millimetreText(limit)} are allowed.`,
        source: context.rules.byId['curtain.end-distance'].source,
        decider: 'facilities',
        cautions: supportCautions,
        at: run.supports[0]?.point,
      },
      {
        demand: worst,
        capacity: limit,
        unit: 'm',
        calculation: calculation('End distance', steps, { cautions: supportCautions }),
      },
    ),
  ];
}

/** Distance along a track that may run back into itself. */
const along = (a: number, b: number, length: number, closed: boolean): number =>
  closed ? Math.min(Math.abs(a - b), length - Math.abs(a - b)) : Math.abs(a - b);

/** Every joint of track pieces needs a support near it. */
export function jointFinding({ context, run }: RunFacts): Finding[] {
  if (run.joints.length === 0) return [];
  const limit = ruleNumber(context.rules, 'curtain.joint-distance');
  const nearest = run.joints.map((joint) => {
    const distances = run.supports.map((s) => ({
      joint,
      support: s,
      distance: along(joint, s.at, run.pathLength, run.closed),
    }));
    return distances.reduce((a, b) => (b.distance < a.distance ? b : a));
  });
  const worst = nearest.reduce((a, b) => (b.distance > a.distance ? b : a));
  const distance: CalculationStep = {
    symbol: 'd',
    name: 'distance from the joint to its nearest support',
    expression: run.closed ? 'min(abs(j - s), L - abs(j - s))' : 'abs(j - s)',
    values: {
      j: mm(worst.joint, 'joint', 'design'),
      s: mm(worst.support.at, 'nearest support', 'design'),
      ...(run.closed ? { L: mm(run.pathLength, 'length of the track', 'design') } : {}),
    },
    result: worst.distance * 1000,
    unit: 'mm',
    source: geometrySource,
  };
  const steps = [distance, share(distance, mm(limit, 'largest joint distance', 'rule curtain.joint-distance'))];
  return [
    assessed(
      context,
      {
        id: `curtain/support-joints/${run.id}`,
        subject: run.id,
        rule: 'curtain.joint-distance',
        requirement: `A support within ${millimetreText(limit)} of each joint of track pieces.`,
        message: `The joint of ${run.name} that is farthest from a support is ${millimetreText(worst.distance)} away; ${millimetreText(limit)} are allowed.`,
        source: context.rules.byId['curtain.joint-distance'].source,
        decider: 'facilities',
        cautions: supportCautions,
        at: worst.support.point,
      },
      {
        demand: worst.distance,
        capacity: limit,
        unit: 'm',
        calculation: calculation('Joint distance', steps, { cautions: supportCautions }),
      },
    ),
  ];
}

const whereText = (
  run: RunFacts['run'],
  state: 'drawn' | { readonly stretch: number; readonly end: 'from' | 'to' },
): string =>
  state === 'drawn'
    ? 'curtain drawn'
    : `curtain of stretch ${state.stretch + 1} pushed together at ${millimetreText(run.stretches[state.stretch]![state.end])}`;

/** Where a run stands changes nothing in what hangs on its supports. */
const worstLoad = remembered(worstSupportLoad);

/** The support that carries most, curtain drawn or pushed together, with a person pulling, against its capacity. */
export function loadFinding(facts: RunFacts): Finding {
  const { context, run, track, support, hanging } = facts;
  const g = gravity.value;
  const pull = ruleNumber(context.rules, 'curtain.pull');
  const common = {
    id: `curtain/support-load/${run.id}`,
    subject: run.id,
    rule: 'curtain.pull' as const,
    requirement: 'Load on a support within its capacity divided by its factor, with a person pulling.',
    source: threeMomentSource,
    decider: 'structural engineer' as const,
    cautions: supportCautions,
  };
  const worst = worstLoad({
    length: run.pathLength,
    closed: run.closed,
    supports: run.supports.map((s) => s.at),
    joints: run.joints,
    trackLoad: track.massPerLength * g,
    stretches: run.stretches.map((s, i) => ({
      from: s.from,
      to: s.to,
      weight: hanging[i]!.mass * g,
      stack: hanging[i]!.stack,
    })),
    pull,
    pullOnly: run.hung === 'ceiling',
  });
  if (!worst.ok)
    return notAssessed(context, {
      ...common,
      message: `The loads of the supports of ${run.name} were not computed: ${worst.problems.map((p) => p.message).join(' ')}`,
    });
  const { reaction, state, pullAt, joints, simple, moment, before, after } = worst.value;
  const origin = 'three-moment equation over all spans';
  const load: CalculationStep = {
    symbol: 'R',
    name: 'load on the support that carries most',
    expression: `S${before ? ' + (M_a - M) / a' : ''}${after ? ' + (M_b - M) / b' : ''}`,
    values: {
      S: val(simple, 'N', 'reactions of the neighbouring spans as simple beams, pull included', 'loads below'),
      M: val(moment, 'N m', 'moment over the support', origin),
      ...(before
        ? {
            M_a: val(before.moment, 'N m', 'moment over the support before', origin),
            a: val(before.span, 'm', 'span before', 'design'),
          }
        : {}),
      ...(after
        ? {
            M_b: val(after.moment, 'N m', 'moment over the support after', origin),
            b: val(after.span, 'm', 'span after', 'design'),
          }
        : {}),
    },
    result: reaction,
    unit: 'N',
    source: threeMomentSource,
    note: `${whereText(run, state)}, pull at ${millimetreText(pullAt)}, joints as ${joints === 'stiff' ? 'stiff' : 'hinges'}`,
  };
  const allowed: CalculationStep = {
    symbol: 'F',
    name: 'load that a support may carry',
    expression: 'C / f',
    values: {
      C: val(support.capacity, 'N', 'capacity', `catalogue ${support.id}`),
      f: val(support.capacityFactor, '1', 'factor', `catalogue ${support.id}`),
    },
    result: support.capacity / support.capacityFactor,
    unit: 'N',
    source: catalogueSource,
  };
  const steps = [...drawnSteps(facts, pull), load, allowed, share(load, fromStep(allowed))];
  return assessed(
    context,
    {
      ...common,
      message: `A support of ${run.name} carries up to ${numberText(reaction)} N (${whereText(run, state)}, a person pulling with ${numberText(pull)} N); it may carry ${numberText(allowed.result)} N.`,
      at: run.supports[worst.value.support]!.point,
    },
    {
      demand: reaction,
      capacity: allowed.result,
      unit: 'N',
      calculation: calculation('Load on a track support', steps, {
        assumptions: [
          'Track unrolled to a straight beam of constant stiffness on rigid supports; bends are not computed in space.',
          'Curtain drawn, or each stretch pushed together at either end; the pull acts at the worst place; joints once stiff and once as hinges.',
          ...(run.hung === 'ceiling' ? ['Ceiling supports do not push the track down.'] : []),
        ],
        cautions: supportCautions,
      }),
    },
  );
}

/** Weight with the curtain drawn and the bound used on site, to compare the exact load with. */
function drawnSteps({ run }: RunFacts, pull: number): CalculationStep[] {
  const w: CalculationStep = {
    symbol: 'w',
    name: 'weight per length with the curtain drawn',
    expression: 'm * g',
    values: {
      m: val(run.massPerLength, 'kg/m', 'mass per length', 'design'),
      g: val(gravity.value, 'm/s2', 'free fall'),
    },
    result: run.massPerLength * gravity.value,
    unit: 'N/m',
    source: gravity.source,
  };
  const bound = supportLoadBound(w.result, run.supportSpacing, pull);
  if (!bound.ok) return [w];
  return [
    w,
    {
      symbol: 'R_bound',
      name: 'bound used on site, curtain drawn',
      expression: 'k * w * l + P',
      values: {
        k: val(tributaryFactor.value, '1', 'factor on the tributary length'),
        w: fromStep(w),
        l: val(run.supportSpacing, 'm', 'support spacing', 'catalogue'),
        P: val(pull, 'N', 'pull of a person', 'rule curtain.pull'),
      },
      result: bound.value,
      unit: 'N',
      source: tributaryFactor.source,
    },
  ];
}

/**
 * Sag of the track in its largest span as a simple beam, the heaviest stretch pushed together in its middle.
 * Source: simple beam under full and under central partial uniform load (textbook formulas).
 */
export function deflectionFinding({ context, run, track, hanging }: RunFacts): Finding {
  const limit = ruleNumber(context.rules, 'frame.track-deflection');
  const places = run.supports.map((s) => s.at);
  const spans = places.slice(1).map((b, i) => b - places[i]!);
  if (run.closed) spans.push(places[0]! + run.pathLength - places.at(-1)!);
  const formula = source('simple beam, full and central partial uniform load: textbook formulas', 'published');
  const common = {
    id: `curtain/track-deflection/${run.id}`,
    subject: run.id,
    rule: 'frame.track-deflection' as const,
    requirement: `Sag of the track at most its span divided by ${numberText(limit)}.`,
    source: formula,
    decider: 'facilities' as const,
    cautions: supportCautions,
    at: run.line[0],
  };
  if (spans.length === 0)
    return notAssessed(context, {
      ...common,
      message: `${run.name} hangs from one support only; the sag of a track that hangs over on both sides is not computed.`,
    });
  const l = Math.max(...spans);
  const heaviest = hanging.reduce((a, b) => (b.mass / b.stack > a.mass / a.stack ? b : a));
  const c = Math.min(l, heaviest.stack);
  const weight = heaviest.mass * gravity.value * (c / heaviest.stack);
  const EI = aluminiumModulus.value * track.secondMoment;
  const sag: CalculationStep = {
    symbol: 'y',
    name: 'sag in the largest span',
    expression: '(5 * w * l^4 + W * (8 * l^3 - 4 * l * c^2 + c^3)) / (384 * E * I) * 1000',
    values: {
      w: val(track.massPerLength * gravity.value, 'N/m', 'weight of the track', `catalogue ${track.id}`),
      l: val(l, 'm', 'largest span', 'design'),
      W: val(weight, 'N', 'weight of curtain pushed together in the span', 'design'),
      c: val(c, 'm', 'length that it takes', 'design'),
      E: val(aluminiumModulus.value, 'Pa', 'modulus of elasticity, aluminium assumed', 'EN 1999-1-1'),
      I: val(track.secondMoment, 'm4', 'second moment of area', `catalogue ${track.id}`),
    },
    result:
      ((5 * track.massPerLength * gravity.value * l ** 4 + weight * (8 * l ** 3 - 4 * l * c ** 2 + c ** 3)) /
        (384 * EI)) *
      1000,
    unit: 'mm',
    source: formula,
  };
  const use: CalculationStep = {
    symbol: 'u',
    name: 'utilisation',
    expression: 'n * y / l',
    values: {
      n: val(limit, '1', 'span over sag, at least', 'rule frame.track-deflection'),
      y: fromStep(sag),
      l: val(l * 1000, 'mm', 'largest span', 'design'),
    },
    result: (limit * sag.result) / (l * 1000),
    unit: '1',
    source: context.rules.byId['frame.track-deflection'].source,
  };
  return assessed(
    context,
    {
      ...common,
      message: `The track of ${run.name} sags ${numberText(sag.result)} mm over ${millimetreText(l)} with the curtain pushed together there; ${numberText((l * 1000) / limit)} mm are allowed.`,
    },
    {
      demand: sag.result / 1000,
      capacity: l / limit,
      unit: 'm',
      calculation: calculation('Sag of the track', [sag, use], {
        assumptions: [
          'The span counts as a simple beam; a track that runs on over its supports sags less.',
          'The track is of aluminium; the catalogue does not state the material.',
          'The pull of a person is not included: it passes.',
        ],
        cautions: supportCautions,
      }),
    },
  );
}

const carrierWords = {
  ceiling: 'the ceiling',
  wall: 'the wall',
  'floor post': 'the floor',
  frame: 'the frame',
  shelf: 'the table',
} as const;

/** Fixings into the building are never computed here; into an unknown ceiling or a suspended grid they may not carry at all. */
export function anchorFinding({ context, run }: RunFacts): Finding[] {
  if (run.hung === 'frame' || run.hung === 'shelf') return [];
  const kind = context.brief.room.ceiling?.kind ?? 'unknown';
  const doubtful = run.hung === 'ceiling' && (kind === 'unknown' || kind === 'suspended grid');
  const reason = doubtful
    ? kind === 'unknown'
      ? 'nobody has said what the ceiling is made of'
      : 'a suspended grid carries no curtain; its supports have to reach the structure above'
    : `the fixings into ${carrierWords[run.hung]} are not computed`;
  return [
    notAssessed(context, {
      id: `curtain/anchors/${run.id}`,
      subject: run.id,
      requirement: `Fixings of the track into ${carrierWords[run.hung]} that hold.`,
      message: `Not assessed: ${reason}. A structural engineer decides on anchors and what they are fixed to.`,
      source: commonPractice,
      decider: 'structural engineer',
      required: doubtful,
      cautions: supportCautions,
      asks: doubtful && kind === 'unknown' ? ['room.ceiling'] : [],
      at: run.line[0],
    }),
  ];
}
