import type { DesignEnclosure } from '../design/types.js';
import { type CalculationStep, type CalculationValue, calculation, fromStep } from '../floor/calculation.js';
import { type Decider, type Finding, notJudged, type Verdict, verdictOf } from '../floor/finding.js';
import type { Vec2 } from '../floor/geometry/vec.js';
import { commonPractice, type Source, source } from '../floor/source.js';
import type { Rule } from '../rules/schema.js';
import { type CheckContext, ruleUsed } from './context.js';

/** What every frame finding says about its place. */
export interface Subject {
  readonly enclosure: DesignEnclosure;
  /** `roof-deflection`; the id becomes `frame/roof-deflection/<enclosure>`, with `piece` behind when there is one. */
  readonly check: string;
  readonly piece?: string;
  readonly requirement: string;
  readonly at?: Vec2;
  readonly decider?: Decider;
  readonly cautions: readonly string[];
}

const base = (s: Subject) => ({
  id: `frame/${s.check}/${s.enclosure.id}${s.piece === undefined ? '' : `/${s.piece}`}`,
  discipline: 'frame' as const,
  subject: s.enclosure.id,
  requirement: s.requirement,
  decider: s.decider ?? ('structural engineer' as const),
  cautions: s.cautions,
  asks: [],
  at: s.at ?? s.enclosure.centre,
});

/** Something that is there but not computed: said, never passed over. */
export const notAssessed = (
  s: Subject,
  message: string,
  extra: { readonly required?: boolean; readonly rule?: Rule; readonly context?: CheckContext } = {},
): Finding => ({
  ...base(s),
  ...notJudged,
  message,
  unit: '1',
  calculation: null,
  source: extra.rule?.source ?? commonPractice,
  ...(extra.rule && extra.context ? { rule: ruleUsed(extra.context.rules, extra.rule.id) } : {}),
  required: extra.required ?? false,
});

export interface Judged {
  readonly message: string;
  /** Demand over capacity; null when no ratio is possible, as for a frame that falls by itself. */
  readonly utilisation: number | null;
  readonly demand: number;
  readonly capacity: number;
  readonly unit: string;
  readonly steps: readonly CalculationStep[];
  readonly assumptions?: readonly string[];
  /** Rule behind the limit, or the source of a limit that is no rule. */
  readonly rule?: Rule['id'];
  readonly source?: Source;
  readonly required?: boolean;
  /** Only to be more careful than the utilisation alone would be. */
  readonly verdict?: Verdict;
}

export function judged(context: CheckContext, s: Subject, j: Judged): Finding {
  const rule = j.rule === undefined ? undefined : ruleUsed(context.rules, j.rule);
  return {
    ...base(s),
    verdict: j.verdict ?? (j.utilisation === null ? 'fails' : verdictOf(j.utilisation)),
    message: j.message,
    demand: j.demand,
    capacity: j.capacity,
    unit: j.unit,
    utilisation: j.utilisation,
    calculation: calculation(
      `${s.requirement}: ${s.enclosure.name}${s.piece === undefined ? '' : `, ${s.piece}`}`,
      j.steps,
      {
        assumptions: j.assumptions ?? [],
        cautions: s.cautions,
      },
    ),
    source: rule?.source ?? j.source ?? commonPractice,
    ...(rule ? { rule } : {}),
    required: j.required ?? true,
  };
}

/** Last step of a check: demand over capacity. */
export const utilisationStep = (
  demand: CalculationStep,
  capacity: CalculationStep | CalculationValue,
): CalculationStep => {
  const limit = 'result' in capacity ? fromStep(capacity) : capacity;
  return {
    symbol: 'u',
    name: 'utilisation',
    expression: 'abs(demand)/limit',
    values: { demand: fromStep(demand), limit },
    result: Math.abs(demand.result) / limit.value,
    unit: '1',
    source: source('definition of utilisation', 'derived'),
  };
};
