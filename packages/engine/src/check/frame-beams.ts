import type { Item, Profile } from '../catalogue/schema.js';
import { profileSection } from '../design/profile-section.js';
import type { DesignEnclosure, RoofBeam } from '../design/types.js';
import { type CalculationStep, fromStep, val } from '../floor/calculation.js';
import type { Finding } from '../floor/finding.js';
import { between2, plan, type Vec2 } from '../floor/geometry/vec.js';
import { millimetreText, numberText } from '../floor/number-text.js';
import type { Outcome } from '../floor/problem.js';
import { source } from '../floor/source.js';
import {
  aluminium,
  frameCautions,
  frameSources,
  type SectionProperties,
  type SingleSpanResult,
  singleSpan,
  singleSpanAssumptions,
  singleSpanSteps,
} from '../frame/index.js';
import { type Rule, ruleNumber } from '../rules/schema.js';
import { type CheckContext, ruleValue } from './context.js';
import { judged, notAssessed, type Subject, utilisationStep } from './frame-finding.js';

/** A roof beam with what is needed to judge it. */
interface Bent {
  readonly beam: RoofBeam;
  readonly profile: Profile;
  readonly section: SectionProperties;
  readonly found: SingleSpanResult;
  readonly steps: ReturnType<typeof singleSpanSteps>;
}

const isProfile = (item: Item | undefined): item is Profile => item?.kind === 'profile';

const reasonsOf = (outcome: Outcome<unknown>): string =>
  outcome.ok ? '' : outcome.problems.map((p) => p.message).join(' ');

type Section = { readonly profile: Profile; readonly properties: SectionProperties } | string;

/** Section of a profile from its drawn outline, or why there is none. */
function sectionOf(id: string, { catalogue }: CheckContext): Section {
  const profile = catalogue.byId.get(id);
  if (!isProfile(profile)) return `The catalogue has no profile ${id}.`;
  const properties = profileSection(profile);
  return properties.ok
    ? { profile, properties: properties.value }
    : `The outline of profile ${id} cannot be used. ${reasonsOf(properties)}`;
}

function bend(beam: RoofBeam, section: Section): Bent | string {
  if (typeof section === 'string') return section;
  const { profile, properties } = section;
  const span = {
    ends: 'simple' as const,
    span: beam.span,
    uniform: beam.uniform,
    points: beam.points,
    elasticity: aluminium.elasticity,
    secondMoment: properties.ix,
  };
  const found = singleSpan(span);
  if (!found.ok) return reasonsOf(found);
  const steps = singleSpanSteps(span, found.value, {
    loads: `beam ${beam.mark}`,
    section: `catalogue ${profile.id}, drawn outline`,
    elasticity: aluminium.source.work,
  });
  return { beam, profile, section: properties, found: found.value, steps };
}

/** Every beam bent once, its section computed once a profile. */
function bendAll(beams: readonly RoofBeam[], context: CheckContext): ReadonlyMap<RoofBeam, Bent | string> {
  const sections = new Map([...new Set(beams.map((b) => b.profile))].map((id) => [id, sectionOf(id, context)]));
  return new Map(beams.map((b) => [b, bend(b, sections.get(b.profile)!)]));
}

const cautions = [frameCautions.engineer, frameCautions.climbing];
const assumptions = Object.values(singleSpanAssumptions);
const upright = 'The bar stands with its height upright; loads are characteristic, without load factors.';

function placeOf(beam: RoofBeam, context: CheckContext, enclosure: DesignEnclosure): Vec2 {
  const shape = context.design.parts.find((p) => p.id === beam.part)?.shape;
  return shape?.shape === 'bar' ? between2(plan(shape.from), plan(shape.to), 0.5) : enclosure.centre;
}

interface Check {
  readonly check: string;
  readonly requirement: string;
  readonly rule: Rule['id'];
  readonly applies: (beam: RoofBeam) => boolean;
  readonly judge: (bent: Bent, context: CheckContext) => Verdicts;
}

interface Verdicts {
  readonly utilisation: number;
  readonly demand: number;
  readonly capacity: number;
  readonly unit: string;
  readonly message: string;
  readonly steps: readonly CalculationStep[];
}

const sagText = ({ beam, found }: Bent): string =>
  `Beam ${beam.mark} sags ${numberText(Math.abs(found.deflection.value) * 1000)} mm over a span of ${millimetreText(beam.span)}`;

/** Deflection against the span divided by a number. */
const sagBySpan =
  (rule: Rule['id']) =>
  (bent: Bent, context: CheckContext): Verdicts => {
    const share = ruleNumber(context.rules, rule);
    const limit: CalculationStep = {
      symbol: 'dmax',
      name: 'allowed deflection',
      expression: 'L/n',
      values: {
        L: val(bent.beam.span * 1000, 'mm', 'span', `beam ${bent.beam.mark}`),
        n: ruleValue(context, rule, '1'),
      },
      result: (bent.beam.span * 1000) / share,
      unit: 'mm',
      source: context.rules.byId[rule].source,
    };
    const sag = bent.steps.deflection.at(-1)!;
    const use = utilisationStep(sag, limit);
    return {
      utilisation: use.result,
      demand: Math.abs(sag.result),
      capacity: limit.result,
      unit: 'mm',
      message: `${sagText(bent)}; ${numberText(limit.result)} mm are allowed (span divided by ${numberText(share)}).`,
      steps: [...bent.steps.deflection, limit, use],
    };
  };

/** Deflection against a length, whatever the span. */
const sagAtMost =
  (rule: Rule['id']) =>
  (bent: Bent, context: CheckContext): Verdicts => {
    const limit = ruleValue(context, rule, 'mm', 1000);
    const sag = bent.steps.deflection.at(-1)!;
    const use = utilisationStep(sag, limit);
    return {
      utilisation: use.result,
      demand: Math.abs(sag.result),
      capacity: limit.value,
      unit: 'mm',
      message: `${sagText(bent)}; ${numberText(limit.value)} mm are allowed at most.`,
      steps: [...bent.steps.deflection, use],
    };
  };

function bendingStress(bent: Bent, context: CheckContext): Verdicts {
  const { beam, profile, section } = bent;
  const given = profile.proofStrengthSource;
  const moment = bent.steps.moment.at(-1)!;
  const stress: CalculationStep = {
    symbol: 'sigma',
    name: 'bending stress',
    expression: 'abs(M)*1000/W',
    values: {
      M: fromStep(moment),
      W: val(section.wx * 1e9, 'mm3', 'elastic modulus', `catalogue ${profile.id}, drawn outline`),
    },
    result: Math.abs(bent.found.moment.value) / section.wx / 1e6,
    unit: 'N/mm2',
    source: frameSources.bending,
  };
  const factor = ruleNumber(context.rules, 'frame.strength-factor');
  const limit: CalculationStep = {
    symbol: 'allowed',
    name: 'allowed stress',
    expression: 'f0/k',
    values: {
      f0: val(
        profile.proofStrength / 1e6,
        'N/mm2',
        `0.2 % proof strength, ${profile.alloy}`,
        `catalogue ${profile.id}`,
      ),
      k: ruleValue(context, 'frame.strength-factor', '1'),
    },
    result: profile.proofStrength / 1e6 / factor,
    unit: 'N/mm2',
    source: source(given.work, given.mark, given.clause),
  };
  const use = utilisationStep(stress, limit);
  return {
    utilisation: use.result,
    demand: stress.result,
    capacity: limit.result,
    unit: 'N/mm2',
    message: `Beam ${beam.mark} is bent to ${numberText(stress.result)} N/mm²; ${numberText(limit.result)} N/mm² are allowed (proof strength divided by ${numberText(factor)}). Joints and torsion are not in this number.`,
    steps: [...bent.steps.moment, stress, limit, use],
  };
}

const always = () => true;
const checks: readonly Check[] = [
  {
    check: 'roof-deflection',
    requirement: 'Roof beam sags little for its span',
    rule: 'frame.roof-deflection',
    applies: always,
    judge: sagBySpan('frame.roof-deflection'),
  },
  {
    check: 'roof-deflection-most',
    requirement: 'Roof beam sags no more than the largest deflection',
    rule: 'frame.roof-deflection-most',
    applies: always,
    judge: sagAtMost('frame.roof-deflection-most'),
  },
  {
    check: 'track-deflection',
    requirement: 'Beam with track or door sags little for its span',
    rule: 'frame.track-deflection',
    applies: (beam) => beam.carriesTrack,
    judge: sagBySpan('frame.track-deflection'),
  },
  {
    check: 'roof-stress',
    requirement: 'Roof beam is strong enough in bending',
    rule: 'frame.strength-factor',
    applies: always,
    judge: bendingStress,
  },
];

const byMark = (beams: readonly RoofBeam[]): ReadonlyMap<string, RoofBeam[]> => {
  const groups = new Map<string, RoofBeam[]>();
  for (const beam of beams) groups.set(beam.mark, [...(groups.get(beam.mark) ?? []), beam]);
  return new Map([...groups].sort(([a], [b]) => (a < b ? -1 : 1)));
};

interface Candidate {
  readonly beam: RoofBeam;
  readonly verdicts: Verdicts;
}

const worse = (a: Candidate, b: Candidate): Candidate => (b.verdicts.utilisation > a.verdicts.utilisation ? b : a);

function findingOf(
  check: Check,
  mark: string,
  beams: readonly RoofBeam[],
  bentBeams: ReadonlyMap<RoofBeam, Bent | string>,
  enclosure: DesignEnclosure,
  context: CheckContext,
): Finding[] {
  const concerned = beams.filter(check.applies);
  if (concerned.length === 0) return [];
  const subject = (beam: RoofBeam): Subject => ({
    enclosure,
    check: check.check,
    piece: mark,
    requirement: check.requirement,
    at: placeOf(beam, context, enclosure),
    cautions,
  });
  const candidates: Candidate[] = [];
  for (const beam of concerned) {
    const bent = bentBeams.get(beam)!;
    // One beam that cannot be computed leaves the whole mark open: its neighbours could not speak for it.
    if (typeof bent === 'string')
      return [
        notAssessed(subject(beam), `Beam ${mark} is not assessed. ${bent}`, {
          required: true,
          rule: context.rules.byId[check.rule],
          context,
        }),
      ];
    candidates.push({ beam, verdicts: check.judge(bent, context) });
  }
  const { beam, verdicts } = candidates.reduce(worse);
  const others = concerned.length > 1 ? ` It is the most loaded of ${concerned.length} with this mark.` : '';
  return [
    judged(context, subject(beam), {
      ...verdicts,
      message: verdicts.message + others,
      rule: check.rule,
      assumptions: [...assumptions, upright],
    }),
  ];
}

/** Deflection and bending stress of the roof beams: one finding for each mark and requirement, on the beam that governs. */
export function checkRoofBeams(enclosure: DesignEnclosure, context: CheckContext): Finding[] {
  const bent = bendAll(enclosure.roofBeams, context);
  return [...byMark(enclosure.roofBeams)].flatMap(([mark, beams]) =>
    checks.flatMap((check) => findingOf(check, mark, beams, bent, enclosure, context)),
  );
}
