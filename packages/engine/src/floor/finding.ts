import type { Calculation } from './calculation.js';
import type { Source } from './source.js';

export type Verdict = 'meets' | 'attention' | 'fails' | 'not assessed';

/** Name of a discipline, stable: `laser`. The list of disciplines says which there are. */
export type DisciplineId = string;

/** Who decides on a finding in the end; the tool only assists. */
export type Decider =
  | 'laser safety officer'
  | 'facilities'
  | 'structural engineer'
  | 'fire authority'
  | 'electrician'
  | 'group'
  | 'purchasing'
  | 'testing organisation';

/** The rule of the site rules that a finding was checked against. */
export interface RuleUsed {
  readonly id: string;
  readonly text: string;
  readonly source: Source;
  /** Why the project overrides the profile's value, when it does. */
  readonly overriddenBecause?: string;
}

/** The outcome of checking one requirement on one thing of the design. */
export interface Finding {
  /** Stable over edits that leave the subject in place: `laser/barrier-irradiance/run-1/laser-a`. */
  readonly id: string;
  readonly discipline: DisciplineId;
  /** Id of the object of the design. */
  readonly subject: string;
  /** What is asked, short: `Irradiance on the barrier within its rating`. */
  readonly requirement: string;
  readonly verdict: Verdict;
  /** Plain sentence for a person, with numbers: what was found and what it means. */
  readonly message: string;
  readonly demand: number | null;
  readonly capacity: number | null;
  readonly unit: string;
  /** demand/capacity, or its inverse where more is better, so that above 1 never meets; null when not assessed. */
  readonly utilisation: number | null;
  readonly calculation: Calculation | null;
  readonly source: Source;
  readonly rule?: RuleUsed;
  readonly decider: Decider;
  /** True when a need of the brief or a rule asks for it: a required finding that is not assessed is not done. */
  readonly required: boolean;
  readonly cautions: readonly string[];
  /** Ids of questions whose answer this finding waits for or rests on. */
  readonly asks: readonly string[];
  /** Where to look, plan coordinates in metres [x, y]. */
  readonly at?: readonly [number, number];
}

/** Numbers of what was not judged: none; unknown is never zero. */
export const notJudged = {
  verdict: 'not assessed',
  demand: null,
  capacity: null,
  utilisation: null,
} as const satisfies Partial<Finding>;

/** A missing fact, the value assumed meanwhile and what it could change. */
export interface Question {
  readonly id: string;
  /** Path in the brief where the answer belongs. */
  readonly path: readonly (string | number)[];
  readonly question: string;
  readonly assumed: string;
  readonly reason: string;
  /** Findings that rest on it, in words: what could change and by how much. */
  readonly effect: string;
  /** 0 to 1: how much the answer could change the outcome; questions are listed by it. */
  readonly weight: number;
}

/** A result close to its limit is called to attention: within the last tenth. Source: common practice (handbook of deliverables, status table). */
const ATTENTION_FROM = 0.9;

/**
 * A limit that is met exactly must not fail by the last binary digits of coordinates added up and turned: a share of 1e-9 is far
 * more than those digits (some 1e-15 each) and far less than anything that is built or measured.
 */
export const limitTolerance = 1e-9;

/** True when a utilisation is over its limit by more than the noise of arithmetic. */
export const overLimit = (utilisation: number): boolean => utilisation > 1 + limitTolerance;

/** The verdict of an assessed utilisation; from unrounded numbers, so that only noise is forgiven, never a rounding. */
export function verdictOf(utilisation: number): Verdict {
  if (Number.isNaN(utilisation)) return 'not assessed';
  if (overLimit(utilisation)) return 'fails';
  return utilisation > ATTENTION_FROM * (1 + limitTolerance) ? 'attention' : 'meets';
}

/** Order in which verdicts are listed: what needs a person first. */
export const verdictOrder: readonly Verdict[] = ['fails', 'not assessed', 'attention', 'meets'];

/** Findings as they are listed, each name once: what needs a person first, then by name. */
export function inOrder(findings: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  for (const { id } of findings) {
    if (seen.has(id)) throw new Error(`two findings are named ${id}`);
    seen.add(id);
  }
  return [...findings].sort(
    (a, b) => verdictOrder.indexOf(a.verdict) - verdictOrder.indexOf(b.verdict) || (a.id < b.id ? -1 : 1),
  );
}
