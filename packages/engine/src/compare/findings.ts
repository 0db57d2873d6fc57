import type { Decider, DisciplineId, Finding, Verdict } from '../floor/finding.js';
import { compareText } from '../floor/text-order.js';
import { sameCalculation } from './calculations.js';
import { sameNumber } from './quantities.js';

/**
 * A utilisation counts as changed from half of the last place that sheets print, two decimals; above 1 from the same share of it, so
 * that a hazard a hundred times over its limit is not told anew with every centimetre.
 */
export const utilisationTolerance = 0.005;

const sameUtilisation = (a: number | null, b: number | null): boolean =>
  a === null || b === null
    ? a === b
    : sameNumber(a, b, utilisationTolerance * Math.max(1, Math.min(Math.abs(a), Math.abs(b))));

/** What a finding said in one of the two states. */
export type FindingState = Pick<
  Finding,
  'verdict' | 'message' | 'demand' | 'capacity' | 'unit' | 'utilisation' | 'required'
>;

/**
 * `basis`: verdict and utilisation stand, but demand, capacity, calculation, rule or wording are other ones.
 */
export type FindingChangeKind = 'appeared' | 'gone' | 'verdict' | 'utilisation' | 'basis';
export type Direction = 'worse' | 'better' | 'other';

/** One requirement on one thing, as it was found before and after. */
export interface FindingChange {
  readonly id: string;
  readonly discipline: DisciplineId;
  readonly decider: Decider;
  readonly subject: string;
  readonly requirement: string;
  readonly change: FindingChangeKind;
  readonly direction: Direction;
  /** True when a calculation on both sides has other values, steps or sources. */
  readonly recalculated: boolean;
  readonly before: FindingState | null;
  readonly after: FindingState | null;
}

/** A result that no longer stands as it was told: whoever decided on it has to look again. */
export interface Falls {
  readonly decider: Decider;
  /** Ids of findings that are gone, or whose verdict, numbers or basis changed. */
  readonly findings: readonly string[];
}

const directions: readonly Direction[] = ['worse', 'better', 'other'];

/** Findings that differ, by direction, then discipline and id. */
export function compareFindings(before: readonly Finding[], after: readonly Finding[]): FindingChange[] {
  const was = new Map(before.map((f) => [f.id, f]));
  const is = new Map(after.map((f) => [f.id, f]));
  return [...new Set([...was.keys(), ...is.keys()])]
    .flatMap((id) => changeOf(was.get(id) ?? null, is.get(id) ?? null))
    .sort(
      (a, b) =>
        directions.indexOf(a.direction) - directions.indexOf(b.direction) ||
        compareText(a.discipline, b.discipline) ||
        compareText(a.id, b.id),
    );
}

function changeOf(before: Finding | null, after: Finding | null): FindingChange[] {
  const one = after ?? before;
  const change = kindOf(before, after);
  if (!one || !change) return [];
  return [
    {
      id: one.id,
      discipline: one.discipline,
      decider: one.decider,
      subject: one.subject,
      requirement: one.requirement,
      change,
      direction: directionOf(before, after),
      recalculated: recalculated(before, after),
      before: before && stateOf(before),
      after: after && stateOf(after),
    },
  ];
}

const stateOf = ({ verdict, message, demand, capacity, unit, utilisation, required }: Finding): FindingState => ({
  verdict,
  message,
  demand,
  capacity,
  unit,
  utilisation,
  required,
});

function kindOf(before: Finding | null, after: Finding | null): FindingChangeKind | null {
  if (!before) return 'appeared';
  if (!after) return 'gone';
  if (before.verdict !== after.verdict) return 'verdict';
  if (!sameUtilisation(before.utilisation, after.utilisation)) return 'utilisation';
  const same =
    sameValue(before.demand, after.demand) &&
    sameValue(before.capacity, after.capacity) &&
    before.unit === after.unit &&
    before.required === after.required &&
    before.message === after.message &&
    before.rule?.text === after.rule?.text &&
    !recalculated(before, after);
  return same ? null : 'basis';
}

const sameValue = (a: number | null, b: number | null): boolean =>
  a === null || b === null ? a === b : sameNumber(a, b);

const recalculated = (before: Finding | null, after: Finding | null): boolean =>
  before?.calculation && after?.calculation ? !sameCalculation(before.calculation, after.calculation) : false;

/** What needs a person less stands lower. */
const gravity: Readonly<Record<Verdict, number>> = { meets: 0, attention: 1, 'not assessed': 2, fails: 3 };

/** A finding that is not there asks for nothing, and neither does one that nobody asked for and nobody assessed. */
const gravityOf = (f: Finding | null): number =>
  !f || (f.verdict === 'not assessed' && !f.required) ? 0 : gravity[f.verdict];

/**
 * Whether a change is for the worse. What failed and is now not assessed is not better: nobody knows. Between two states that both meet,
 * a utilisation that comes nearer to its limit is told as a change and not as worse.
 */
export function directionOf(before: Finding | null, after: Finding | null): Direction {
  if (before?.verdict === 'fails' && after?.verdict === 'not assessed') return 'other';
  const [a, b] = [gravityOf(before), gravityOf(after)];
  if (a !== b) return b > a ? 'worse' : 'better';
  if (a === 0 || before?.utilisation == null || after?.utilisation == null) return 'other';
  if (sameUtilisation(before.utilisation, after.utilisation)) return 'other';
  return after.utilisation > before.utilisation ? 'worse' : 'better';
}

/** True when something stands in the way that did not before: it fails, or is asked for and not assessed. */
export const standsInTheWay = ({ before, after }: FindingChange): boolean => open(after) && !open(before);

const open = (state: FindingState | null): boolean =>
  state !== null && (state.verdict === 'fails' || (state.required && state.verdict === 'not assessed'));

/** Results that fall, by who decides on them. */
export function fallsOf(changes: readonly FindingChange[]): Falls[] {
  const byDecider = new Map<Decider, string[]>();
  for (const { decider, before, id } of changes)
    if (before) byDecider.set(decider, [...(byDecider.get(decider) ?? []), id]);
  return [...byDecider]
    .map(([decider, findings]) => ({ decider, findings: findings.sort(compareText) }))
    .sort((a, b) => compareText(a.decider, b.decider));
}
