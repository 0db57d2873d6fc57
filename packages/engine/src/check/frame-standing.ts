import type { Foot, Item } from '../catalogue/schema.js';
import type { DesignEnclosure } from '../design/types.js';
import { type CalculationStep, fromStep, val } from '../floor/calculation.js';
import { type Finding, overLimit } from '../floor/finding.js';
import { between2, plan, type Vec2 } from '../floor/geometry/vec.js';
import { millimetreText, numberText } from '../floor/number-text.js';
import { enteredByUser } from '../floor/source.js';
import {
  footLoadSteps,
  footLoads,
  footLoadsWithoutOne,
  footPlane,
  frameCautions,
  frameSources,
  gravitySource,
  leverStep,
  pushSteps,
  sharedLoadSteps,
  standardGravity,
  type TippingEdge,
  tiltStep,
  tippingEdges,
} from '../frame/index.js';
import { ruleNumber } from '../rules/schema.js';
import { type CheckContext, ruleValue } from './context.js';
import { judged, notAssessed, type Subject, utilisationStep } from './frame-finding.js';

const isFoot = (item: Item | undefined): item is Foot =>
  item?.kind === 'foot plate' || item?.kind === 'levelling foot' || item?.kind === 'caster';

const footOf = (enclosure: DesignEnclosure, { design, catalogue }: CheckContext): Foot | undefined => {
  const part = design.parts.find((p) => p.of === enclosure.id && p.role === 'foot');
  const item = part && catalogue.byId.get(part.item);
  return isFoot(item) ? item : undefined;
};

const standingAssumptions = [
  'The frame is one rigid body on a rigid, level floor; nothing anchors it.',
  'Mass and centre of mass as designed: curtains and doors where they are drawn, clean filters.',
];

const cautionsOf = (enclosure: DesignEnclosure): string[] => [
  frameCautions.engineer,
  frameCautions.climbing,
  ...(enclosure.feet === 'caster' ? [frameCautions.casters] : []),
];

interface Edge {
  readonly edge: TippingEdge;
  readonly inward: number;
}

/** The weakest tipping edge, or why there is none to compute. */
function weakestEdge(enclosure: DesignEnclosure, context: CheckContext): Edge | string {
  const foot = footOf(enclosure, context);
  const inward = enclosure.feet === 'caster' ? foot?.swivelOffset : 0;
  if (inward === undefined)
    return 'The catalogue does not give the swivel offset of the caster, and a swivel turned inward narrows the base.';
  const edges = tippingEdges(enclosure.footPoints, plan(enclosure.centreOfMass), inward);
  return edges.ok ? { edge: edges.value[0], inward } : edges.problems.map((p) => p.message).join(' ');
}

function checkPush(enclosure: DesignEnclosure, context: CheckContext): Finding {
  const subject: Subject = {
    enclosure,
    check: 'tipping-push',
    requirement: 'Stands against a push',
    cautions: cautionsOf(enclosure),
  };
  const weakest = weakestEdge(enclosure, context);
  if (typeof weakest === 'string')
    return notAssessed(subject, `Tipping under a push is not assessed. ${weakest}`, {
      required: true,
      rule: context.rules.byId['frame.push-factor'],
      context,
    });
  const { edge, inward } = weakest;
  const { rules } = context;
  const atRule = ruleNumber(rules, 'frame.push-height');
  const asked = ruleNumber(rules, 'frame.push-factor');
  const body = {
    mass: enclosure.mass,
    lever: edge.lever,
    height: enclosure.centreOfMass[2],
    push: ruleNumber(rules, 'frame.push-force'),
    pushHeight: Math.min(atRule, enclosure.frameTop),
    tilt: 0,
  };
  const steps = pushSteps(body, {
    mass: 'design',
    lever: 'step b',
    push:
      atRule <= enclosure.frameTop
        ? 'rules frame.push-force and frame.push-height'
        : 'rule frame.push-force, at the top of the frame',
  });
  const factor = steps.at(-1)!;
  const falls = edge.lever <= 0;
  const use: CalculationStep = {
    symbol: 'u',
    name: 'utilisation',
    expression: 'required/f',
    values: { required: ruleValue(context, 'frame.push-factor', '1'), f: fromStep(factor) },
    result: asked / factor.result,
    unit: '1',
    source: frameSources.rigidBody,
  };
  const pushText = `a push of ${numberText(body.push)} N at ${millimetreText(body.pushHeight)}`;
  return judged(
    context,
    { ...subject, at: between2(edge.from, edge.to, 0.5) },
    {
      message: falls
        ? `${enclosure.name} falls by itself: its centre of mass is not over its feet.`
        : `${enclosure.name} stands against ${pushText} with factor ${numberText(factor.result)}; ${numberText(asked)} is asked. The centre of mass is ${millimetreText(edge.lever)} inside the weakest edge.${factor.result < asked ? ' Add ballast, outriggers or a wider base, or have it anchored.' : ''}`,
      utilisation: falls ? null : use.result,
      demand: asked,
      capacity: factor.result,
      unit: '1',
      steps: [leverStep(edge, plan(enclosure.centreOfMass), inward, 'design'), ...steps, ...(falls ? [] : [use])],
      assumptions: standingAssumptions,
      rule: 'frame.push-factor',
    },
  );
}

function checkTilt(enclosure: DesignEnclosure, context: CheckContext): Finding[] {
  if (enclosure.feet !== 'caster') return [];
  const subject: Subject = {
    enclosure,
    check: 'tipping-tilt',
    requirement: 'Stands when tilted on its casters',
    cautions: cautionsOf(enclosure),
  };
  const weakest = weakestEdge(enclosure, context);
  if (typeof weakest === 'string')
    return [
      notAssessed(subject, `Tipping when tilted is not assessed. ${weakest}`, {
        required: true,
        rule: context.rules.byId['frame.tilt'],
        context,
      }),
    ];
  const { edge, inward } = weakest;
  const tips = tiltStep({ lever: edge.lever, height: enclosure.centreOfMass[2] }, { mass: 'design', lever: 'step b' });
  const asked = ruleValue(context, 'frame.tilt', 'deg', 180 / Math.PI);
  const falls = edge.lever <= 0;
  const use: CalculationStep = {
    symbol: 'u',
    name: 'utilisation',
    expression: 'asked/tilt',
    values: { asked, tilt: fromStep(tips) },
    result: asked.value / tips.result,
    unit: '1',
    source: frameSources.rigidBody,
  };
  return [
    judged(
      context,
      { ...subject, at: between2(edge.from, edge.to, 0.5) },
      {
        message: falls
          ? `${enclosure.name} falls by itself: its centre of mass is not over its casters with their swivels turned inward.`
          : `${enclosure.name} tips at a tilt of ${numberText(tips.result)} degrees; it must stand at ${numberText(asked.value)} degrees.`,
        utilisation: falls ? null : use.result,
        demand: asked.value,
        capacity: tips.result,
        unit: 'deg',
        steps: [leverStep(edge, plan(enclosure.centreOfMass), inward, 'design'), tips, ...(falls ? [] : [use])],
        assumptions: standingAssumptions,
        rule: 'frame.tilt',
      },
    ),
  ];
}

const capacityStep = (foot: Foot): CalculationStep => ({
  symbol: 'C',
  name: 'capacity of a foot',
  expression: 'c*g',
  values: {
    c: val(foot.capacity, 'kg', 'capacity', `catalogue ${foot.id}`),
    g: val(standardGravity, 'm/s2', 'free fall'),
  },
  result: foot.capacity * standardGravity,
  unit: 'N',
  source: gravitySource,
});

/** Loads on the feet, or why they cannot be told. */
interface Standing {
  readonly largest: number;
  readonly worst: Vec2;
  readonly stable: boolean;
  /** Load that each foot is chosen for when some do not touch. */
  readonly shared: number;
  readonly missing: number;
  readonly steps: readonly CalculationStep[];
  readonly sharedSteps: readonly CalculationStep[];
  /** Largest load with one foot off the floor, by statics; null when there are only three feet. */
  readonly withoutOne: number | null;
}

function standingOf(enclosure: DesignEnclosure, context: CheckContext): Standing | string {
  const { footPoints: feet, mass } = enclosure;
  const centre = plan(enclosure.centreOfMass);
  const loads = footLoads(feet, mass, centre);
  const plane = footPlane(feet, mass, centre);
  if (!loads.ok || !plane.ok) return (loads.ok ? [] : loads.problems).map((p) => p.message).join(' ');
  const worst = feet[loads.value.reactions.indexOf(loads.value.largest)]!;
  const missing = ruleNumber(context.rules, 'frame.feet-carrying');
  if (missing >= feet.length) return `The rule lets ${numberText(missing)} of ${feet.length} feet off the floor.`;
  const sharedSteps = sharedLoadSteps(mass, feet.length, missing, 'design');
  const without = footLoadsWithoutOne(feet, mass, centre);
  return {
    largest: loads.value.largest,
    worst,
    stable: loads.value.stable,
    shared: sharedSteps.at(-1)!.result,
    missing,
    steps: footLoadSteps(plane.value, feet.length, mass, worst, 'design'),
    sharedSteps,
    withoutOne: without.ok
      ? Math.max(...without.value.filter((w) => w.loads.stable).map((w) => w.loads.largest), 0)
      : null,
  };
}

const newtons = (value: number): string => `${numberText(value)} N`;

function levelLoad(subject: Subject, standing: Standing, foot: Foot, context: CheckContext): Finding {
  const capacity = capacityStep(foot);
  const use = utilisationStep(standing.steps.at(-1)!, capacity);
  const message = `The most loaded foot carries ${newtons(standing.largest)} on a level floor; ${foot.name} carries ${newtons(capacity.result)}.`;
  return judged(
    context,
    { ...subject, at: standing.worst },
    {
      message: standing.stable ? message : `${message} A foot lifts off: the centre of mass is not over the feet.`,
      ...(standing.stable ? {} : { verdict: 'fails' as const }),
      utilisation: use.result,
      demand: standing.largest,
      capacity: capacity.result,
      unit: 'N',
      steps: [...standing.steps, capacity, use],
      assumptions: standingAssumptions,
      source: frameSources.planeFit,
    },
  );
}

function unevenLoad(subject: Subject, standing: Standing, foot: Foot, context: CheckContext): Finding {
  const capacity = capacityStep(foot);
  const use = utilisationStep(standing.sharedSteps.at(-1)!, capacity);
  const exact = standing.withoutOne;
  const over = exact !== null && overLimit(exact / capacity.result) && !overLimit(use.result);
  const exactText =
    exact === null || exact === 0
      ? ''
      : ` By statics, with one foot off the floor, one foot can carry up to ${newtons(exact)}${over ? ', more than its capacity: level all feet and keep them so.' : '.'}`;
  return judged(context, subject, {
    message: `On an uneven floor each foot is chosen for ${newtons(standing.shared)} (${numberText(standing.missing)} of ${subject.enclosure.footPoints.length} feet not touching); ${foot.name} carries ${newtons(capacity.result)}.${exactText}`,
    ...(over ? { verdict: 'attention' as const } : {}),
    utilisation: use.result,
    demand: standing.shared,
    capacity: capacity.result,
    unit: 'N',
    steps: [...standing.sharedSteps, capacity, use],
    assumptions: ['The feet that touch share the mass evenly, which is a rule of the trade.'],
    rule: 'frame.feet-carrying',
  });
}

function checkFeet(enclosure: DesignEnclosure, standing: Standing | string, context: CheckContext): Finding[] {
  const cautions = cautionsOf(enclosure);
  const level: Subject = {
    enclosure,
    check: 'foot-load',
    requirement: 'Feet carry the frame on a level floor',
    cautions,
  };
  const uneven: Subject = {
    enclosure,
    check: 'foot-load-uneven',
    requirement: 'Feet carry the frame on an uneven floor',
    cautions,
  };
  const foot = footOf(enclosure, context);
  const why =
    typeof standing === 'string'
      ? standing
      : foot
        ? undefined
        : 'No foot of the catalogue is placed under this frame, so its capacity is unknown.';
  if (typeof standing === 'string' || !foot)
    return [level, uneven].map((s) =>
      notAssessed(s, `The load on the feet is not assessed. ${why}`, { required: true }),
    );
  return [levelLoad(level, standing, foot, context), unevenLoad(uneven, standing, foot, context)];
}

function checkFloor(enclosure: DesignEnclosure, standing: Standing | string, context: CheckContext): Finding {
  const subject: Subject = {
    enclosure,
    check: 'floor-point-load',
    requirement: 'Floor carries the feet',
    decider: 'facilities',
    cautions: cautionsOf(enclosure),
  };
  const allowed = context.brief.room.floor?.pointLoad;
  if (typeof standing === 'string')
    return notAssessed(subject, `The load on the floor is not assessed. ${standing}`, {
      required: allowed !== undefined,
    });
  const load = Math.max(standing.largest, standing.shared);
  if (allowed === undefined)
    return notAssessed(
      subject,
      `A foot presses on the floor with up to ${newtons(load)}; the brief does not say what point load the floor bears. Ask facilities.`,
    );
  const steps = standing.shared >= standing.largest ? standing.sharedSteps : standing.steps;
  const use = utilisationStep(steps.at(-1)!, val(allowed, 'N', 'point load of the floor', 'brief'));
  const alone = standing.withoutOne ?? 0;
  const doubtful = !overLimit(use.result) && overLimit(alone / allowed);
  const more =
    alone > load
      ? ` By statics, with one foot off the floor, one foot can press with up to ${newtons(alone)}${doubtful ? ', more than the floor bears: level all feet and keep them so, or spread the load.' : '.'}`
      : '';
  return judged(
    context,
    { ...subject, at: standing.worst },
    {
      message: `A foot presses on the floor with up to ${newtons(load)}; the floor bears a point load of ${newtons(allowed)}.${more}`,
      ...(doubtful ? { verdict: 'attention' as const } : {}),
      utilisation: use.result,
      demand: load,
      capacity: allowed,
      unit: 'N',
      steps: [...steps, use],
      assumptions: standingAssumptions,
      source: enteredByUser,
    },
  );
}

/** Tipping, foot loads and the load on the floor. */
export function checkStanding(enclosure: DesignEnclosure, context: CheckContext): Finding[] {
  const standing = standingOf(enclosure, context);
  return [
    checkPush(enclosure, context),
    ...checkTilt(enclosure, context),
    ...checkFeet(enclosure, standing, context),
    checkFloor(enclosure, standing, context),
  ];
}
