import { type Calculation, calculation, val } from '../floor/calculation.js';
import { type Decider, type Finding, notJudged, type RuleUsed, type Verdict, verdictOf } from '../floor/finding.js';
import type { Vec2 } from '../floor/geometry/vec.js';
import { geometrySource, type Source } from '../floor/source.js';
import { roomCautions } from '../room/index.js';

interface Common {
  readonly id: string;
  readonly subject: string;
  readonly requirement: string;
  readonly message: string;
  readonly decider: Decider;
  readonly required?: boolean;
  readonly rule?: RuleUsed;
  readonly at?: Vec2;
  readonly source?: Source;
  readonly cautions?: readonly string[];
}

const base = (f: Common) => ({
  id: f.id,
  discipline: 'room' as const,
  subject: f.subject,
  requirement: f.requirement,
  message: f.message,
  decider: f.decider,
  required: f.required ?? false,
  cautions: f.cautions ?? [roomCautions.plan],
  asks: [],
  source: f.source ?? f.rule?.source ?? geometrySource,
  ...(f.rule ? { rule: f.rule } : {}),
  ...(f.at ? { at: f.at } : {}),
});

/** What is there but not computed, with the reason. */
export const openFinding = (f: Common): Finding => ({
  ...base(f),
  ...notJudged,
  unit: 'm',
  calculation: null,
});

export interface Measured extends Common {
  /** Length needed and length there [m]. */
  readonly need: number;
  readonly free: number;
  /** Says in words where the free length was taken. */
  readonly measured: string;
  /** Replaces the verdict of the numbers where the numbers are not the last word. */
  readonly verdict?: Verdict;
  readonly assumptions?: readonly string[];
}

const mm = (metres: number): number => Math.round(metres * 1e6) / 1e3;

/** A needed length against the length that is there. */
export function lengthFinding(f: Measured): Finding {
  // Without any room the ratio has no value: it fails by itself.
  const utilisation = f.free > 0 ? f.need / f.free : f.need > 0 ? null : 0;
  return {
    ...base(f),
    verdict: f.verdict ?? (utilisation === null ? 'fails' : verdictOf(utilisation)),
    demand: f.need,
    capacity: f.free,
    unit: 'm',
    utilisation,
    calculation: lengthCalculation(f),
  };
}

function lengthCalculation(f: Measured): Calculation {
  const need = val(mm(f.need), 'mm', 'needed', f.rule ? `rule ${f.rule.id}` : 'brief');
  const free = val(mm(f.free), 'mm', f.measured, 'design');
  const divided = f.free > 0;
  return calculation(
    f.requirement,
    [
      {
        symbol: divided ? 'u' : 'missing',
        name: divided ? 'needed over free' : 'what is missing',
        expression: divided ? 'need/free' : 'need - free',
        values: { need, free },
        result: divided ? need.value / free.value : need.value - free.value,
        unit: divided ? '1' : 'mm',
        source: f.source ?? geometrySource,
      },
    ],
    { assumptions: f.assumptions ?? [], cautions: f.cautions ?? [roomCautions.plan] },
  );
}

/** Nothing may be where something is: how much is, in m2 or m. */
export function noneFinding(
  f: Common & { readonly amount: number; readonly unit: string; readonly amountName: string },
): Finding {
  return {
    ...base(f),
    verdict: f.amount > 0 ? 'fails' : 'meets',
    demand: f.amount,
    capacity: 0,
    unit: f.unit,
    utilisation: f.amount > 0 ? null : 0,
    calculation: calculation(
      f.requirement,
      [
        {
          symbol: 'over',
          name: f.amountName,
          expression: 'amount - allowed',
          values: { amount: val(f.amount, f.unit, f.amountName, 'design'), allowed: val(0, f.unit, 'allowed') },
          result: f.amount,
          unit: f.unit,
          source: geometrySource,
        },
      ],
      { cautions: f.cautions ?? [roomCautions.plan] },
    ),
  };
}
