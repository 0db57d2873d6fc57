import type { Source } from './source.js';

/** Where in the text a problem stands; both counted from 1. */
export interface TextPlace {
  readonly line: number;
  readonly column: number;
}

/**
 * The brief, catalogue or rules (or the arguments of one calculation) cannot be used as they stand.
 * Problems are returned, all at once; they are never thrown.
 */
export interface Problem {
  /** Stable, a program may switch on it: `air/class-range`. */
  readonly code: string;
  /** Where in the document: `['room', 'doors', 0, 'width']`. */
  readonly path: readonly (string | number)[];
  /** What is wrong and why, with value, limit and unit. */
  readonly message: string;
  /** What to do about it. */
  readonly hint: string;
  readonly place?: TextPlace;
  readonly file?: string;
  readonly source?: Source;
}

export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export const ok = <T>(value: T): Outcome<T> => ({ ok: true, value });

export const refuse = (problems: readonly Problem[]): Outcome<never> => ({ ok: false, problems });

export const problem = (
  code: string,
  path: readonly (string | number)[],
  message: string,
  hint: string,
  source?: Source,
): Problem => (source ? { code, path, message, hint, source } : { code, path, message, hint });

/** A problem of one argument of a calculation: the path is the argument's name. */
export const argumentProblem = (
  code: string,
  argument: string,
  message: string,
  hint: string,
  source?: Source,
): Problem => problem(code, [argument], message, hint, source);

/** The value of an outcome that the caller knows to be good; anything else is a bug and is thrown. */
export function valueOf<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value;
  throw new Error(outcome.problems.map((p) => `${p.code}: ${p.message}`).join('\n'));
}

/** Collects the problems of a required, finite, positive number; empty when there is none. */
export function positive(code: string, argument: string, value: number, unit: string): Problem[] {
  if (Number.isFinite(value) && value > 0) return [];
  return [
    argumentProblem(
      code,
      argument,
      `${argument} is ${value} ${unit}; it must be above zero.`,
      `Give ${argument} above zero, in ${unit}.`,
    ),
  ];
}
