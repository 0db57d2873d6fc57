import { type CalculationStep, calculation } from '../floor/calculation.js';
import { type Decider, type Finding, notJudged, type Verdict, verdictOf } from '../floor/finding.js';
import type { Vec2 } from '../floor/geometry/vec.js';
import { commonPractice, type Source } from '../floor/source.js';
import type { RuleId } from '../rules/known.js';
import { type CheckContext, ruleUsed } from './context.js';

/** What every air finding says about itself, assessed or not. */
export interface AirSubject {
  /** The whole id: `air/class/enclosure-1`. */
  readonly id: string;
  readonly subject: string;
  readonly requirement: string;
  readonly decider?: Decider;
  readonly cautions?: readonly string[];
  readonly asks?: readonly string[];
  readonly required?: boolean;
  readonly rule?: RuleId;
  /** Of the requirement, when it is no site rule. */
  readonly source?: Source;
  readonly at?: Vec2;
}

const base = (context: CheckContext, s: AirSubject) => {
  const rule = s.rule === undefined ? undefined : ruleUsed(context.rules, s.rule);
  return {
    id: s.id,
    discipline: 'air' as const,
    subject: s.subject,
    requirement: s.requirement,
    source: s.source ?? rule?.source ?? commonPractice,
    ...(rule ? { rule } : {}),
    decider: s.decider ?? ('facilities' as const),
    required: s.required ?? false,
    cautions: s.cautions ?? [],
    asks: s.asks ?? [],
    ...(s.at ? { at: s.at } : {}),
  };
};

/** Something that is there but not judged: said, never passed over. Steps may show what was found all the same. */
export const airOpen = (
  context: CheckContext,
  s: AirSubject,
  message: string,
  found?: { readonly steps: readonly CalculationStep[]; readonly assumptions?: readonly string[] },
): Finding => ({
  ...base(context, s),
  ...notJudged,
  message,
  unit: '1',
  calculation: found
    ? calculation(s.requirement, found.steps, { assumptions: found.assumptions ?? [], cautions: s.cautions ?? [] })
    : null,
});

export interface AirJudged {
  readonly message: string;
  readonly demand: number;
  readonly capacity: number | null;
  readonly unit: string;
  /** Demand over capacity, or its inverse where more is better; null where there is no capacity. */
  readonly utilisation: number | null;
  readonly steps: readonly CalculationStep[];
  readonly assumptions?: readonly string[];
  /** Only to be more careful than the utilisation alone would be. */
  readonly verdict?: Verdict;
}

export const airJudged = (context: CheckContext, s: AirSubject, j: AirJudged): Finding => ({
  ...base(context, s),
  verdict: j.verdict ?? verdictOf(j.utilisation ?? Number.NaN),
  message: j.message,
  demand: j.demand,
  capacity: j.capacity,
  unit: j.unit,
  utilisation: j.utilisation,
  calculation: calculation(s.requirement, j.steps, {
    assumptions: j.assumptions ?? [],
    cautions: s.cautions ?? [],
  }),
});

/** Takes a verdict back from `meets` to `attention` when something it rests on was assumed. */
export const atMostAttention = (verdict: Verdict, because: boolean): Verdict =>
  because && verdict === 'meets' ? 'attention' : verdict;
