import { completeBrief } from '../brief/complete.js';
import type { Brief } from '../brief/schema.js';
import type { Catalogue } from '../catalogue/schema.js';
import { composeDesign } from '../compose/index.js';
import type { Design } from '../design/types.js';
import { checkDesign } from '../discipline/check.js';
import { type Finding, type Verdict, verdictOrder } from '../floor/finding.js';
import { contentHash } from '../floor/hash.js';
import type { SiteRules } from '../rules/schema.js';
import { type CureEdit, edited } from './edit.js';
import { type Lever, leversFor } from './levers.js';

/** One change that cures a finding, and what else it does. */
export interface Cure {
  /** `Moving Chiller 240 mm south`. */
  readonly change: string;
  readonly edits: readonly CureEdit[];
  /** The verdict of the finding afterwards; null when there is no longer anything to judge. */
  readonly verdict: Verdict | null;
  /** Requirements whose verdict gets worse by it; none for a clean cure. */
  readonly worse: readonly string[];
}

export interface CureSearch {
  readonly cures: readonly Cure[];
  /** Changes of the brief that were tried. */
  readonly tried: number;
}

export interface CureInput {
  readonly brief: Brief;
  readonly catalogue: Catalogue;
  readonly rules: SiteRules;
}

/** Told between two tries. */
export interface CureProgress {
  readonly done: number;
  readonly of: number;
}

interface State {
  readonly design: Design;
  readonly findings: readonly Finding[];
}

/** Lengths are found to this step, and no cure is finer: nobody moves a table by less [m]. */
const step = 0.01;
/** Cures that are told: more would be no help. */
const mostCures = 3;

/**
 * Single changes of the brief that cure one finding: moves of what it names, sizes, counts and other items of the catalogue. Of each
 * lever the least that cures is searched (lengths to 10 mm). Every try is composed and checked as a whole, so that a cure tells what
 * else gets worse. That none is found does not prove that there is none: two changes at once are not tried, and a length that cures
 * only between two tries can be missed.
 * @param input what the design was made from; the brief in SI
 * @param id    of the finding
 * @returns     the cures, those that make nothing worse first, then the smaller changes; yields after each lever
 * Source: bounded search over the design itself (own method).
 */
export function* searchCures(input: CureInput, id: string): Generator<CureProgress, CureSearch> {
  const before = stateOf(input, input.brief);
  const finding = before?.findings.find((f) => f.id === id);
  if (!before || !finding || finding.verdict === 'meets') return { cures: [], tried: 0 };
  const levers = leversFor({ ...input, design: before.design }, finding);
  const found: { readonly cure: Cure; readonly size: number }[] = [];
  let tried = 0;
  for (const [done, lever] of levers.entries()) {
    const attempt = (amount: number): Cure | null => {
      tried++;
      return cureBy(input, before, finding, lever, amount);
    };
    const best = leastCure(lever, firstGuess(finding), attempt);
    if (best) found.push(best);
    yield { done: done + 1, of: levers.length };
  }
  const cures = found
    .sort((a, b) => a.cure.worse.length - b.cure.worse.length || a.size - b.size || order(a.cure.change, b.cure.change))
    .slice(0, mostCures)
    .map(({ cure }) => cure);
  return { cures, tried };
}

const order = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** What is missing, where that is a length; else a step that a person would try. */
function firstGuess({ demand, capacity, unit }: Finding): number {
  const missing = unit === 'm' && demand !== null && capacity !== null ? Math.abs(demand - capacity) : 0;
  return Math.max(step, Math.ceil(missing / step - 1e-9) * step) || step;
}

type Attempt = (amount: number) => Cure | null;

/** The least of a lever that cures. */
function leastCure(
  lever: Lever,
  guess: number,
  attempt: Attempt,
): { readonly cure: Cure; readonly size: number } | null {
  if (lever.by !== 'length') {
    for (let n = 1; n <= lever.most; n++) {
      const cure = attempt(n);
      // A choice is a change of its own kind: after every move that is shorter than a metre.
      if (cure) return { cure, size: lever.by === 'count' ? n / 10 : 1 };
    }
    return null;
  }
  let low = 0;
  for (let high = Math.min(guess, lever.most); high <= lever.most + 1e-9; high *= 2) {
    const cure = attempt(high);
    if (cure) return refined(low, { cure, size: high }, attempt);
    low = high;
  }
  return null;
}

/** Halves the way between what does not cure and what does, in whole steps. */
function refined(low: number, high: { readonly cure: Cure; readonly size: number }, attempt: Attempt) {
  let [from, best] = [Math.floor(low / step + 1e-9), high];
  while (Math.ceil(best.size / step - 1e-9) - from > 1) {
    const middle = Math.round((from + Math.ceil(best.size / step - 1e-9)) / 2);
    const cure = attempt(middle * step);
    if (cure) best = { cure, size: middle * step };
    else from = middle;
  }
  return best;
}

function cureBy(input: CureInput, before: State, finding: Finding, lever: Lever, amount: number): Cure | null {
  const edits = lever.edits(amount);
  const after = stateOf(input, edited(input.brief, edits));
  if (!after) return null;
  const now = after.findings.find((f) => f.id === finding.id);
  // A finding that is gone is cured only when its thing is still there to be judged.
  const better = now ? verdictOrder.indexOf(now.verdict) > verdictOrder.indexOf(finding.verdict) : isGap(finding);
  if (!better || now?.verdict === 'not assessed') return null;
  const worse = worseIn(before, after, finding.id);
  // What makes something else fail is no cure.
  if (worse.some((f) => f.verdict === 'fails')) return null;
  return { change: lever.say(amount), edits, verdict: now?.verdict ?? null, worse: worse.map((f) => f.requirement) };
}

/** Gaps between things are found only where they are too narrow: one that is wide enough is no longer there. */
const isGap = (finding: Finding): boolean => finding.id.startsWith('room/gap/');

/** Requirements whose verdict went down, and new ones that do not hold. */
function worseIn(before: State, after: State, cured: string): readonly Finding[] {
  const was = new Map(before.findings.map((f) => [f.id, f]));
  return after.findings
    .filter((f) => f.id !== cured)
    .filter((f) => {
      const old = was.get(f.id);
      if (!old)
        return f.verdict === 'fails' || f.verdict === 'attention' || (f.required && f.verdict === 'not assessed');
      return verdictOrder.indexOf(f.verdict) < verdictOrder.indexOf(old.verdict);
    });
}

function stateOf({ catalogue, rules }: CureInput, asked: Brief): State | null {
  const brief = completeBrief(asked, rules);
  const design = composeDesign(brief, catalogue, rules, contentHash(asked));
  if (!design.ok) return null;
  return { design: design.value, findings: checkDesign({ brief, design: design.value, catalogue, rules }) };
}
