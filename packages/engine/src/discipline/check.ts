import type { CheckContext } from '../check/context.js';
import { type Finding, inOrder } from '../floor/finding.js';
import type { Check, Discipline } from './discipline.js';
import { disciplines } from './list.js';

const by = (checksOf: (discipline: Discipline) => readonly Check[]) => (context: CheckContext) =>
  disciplines.flatMap((discipline) => checksOf(discipline).flatMap((check) => check(context)));

export const checkLight = by(({ light }) => light);
export const checkHeavy = by(({ heavy }) => heavy);

/** Every discipline's findings on a design, what needs a person first. Changes nothing. */
export const checkDesign = (context: CheckContext): Finding[] =>
  inOrder([...checkLight(context), ...checkHeavy(context)]);

/** True when nothing fails and nothing that is required stays open. */
export const isDone = (findings: readonly Finding[]): boolean =>
  !findings.some((f) => f.verdict === 'fails' || (f.required && f.verdict === 'not assessed'));
