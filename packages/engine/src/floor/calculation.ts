import type { Source } from './source.js';

/** One named number that goes into a step, in the unit that the step's formula wants. */
export interface CalculationValue {
  readonly value: number;
  /** `m`, `nm`, `W/m2`, `1` for a pure number. */
  readonly unit: string;
  /** What it is, in words. */
  readonly name?: string;
  /** Where it comes from: `brief`, `catalogue fan-400`, `rule way.width`, `step E0`. */
  readonly origin?: string;
}

/**
 * One line of a calculation.
 *
 * `expression` is plain arithmetic over the names in `values`: numbers, + - * / ^, parentheses, `pi`, and the functions
 * sqrt exp log (natural) log10 sin cos tan asin acos atan abs min max floor ceil round. A stranger with a pocket
 * calculator, or a general-purpose expression evaluator, gets `result` from what is printed.
 */
export interface CalculationStep {
  readonly symbol: string;
  readonly name: string;
  readonly expression: string;
  readonly values: Readonly<Record<string, CalculationValue>>;
  readonly result: number;
  readonly unit: string;
  readonly source: Source;
  readonly note?: string;
}

export interface Calculation {
  readonly title: string;
  readonly steps: readonly CalculationStep[];
  readonly assumptions: readonly string[];
  /** Cautions that must stand with this result wherever it is shown. */
  readonly cautions: readonly string[];
}

/** One line of a calculation, its parts in the order in which they are read; `expression` says in arithmetic what gave `result`. */
export const step = (
  symbol: string,
  name: string,
  expression: string,
  values: Readonly<Record<string, CalculationValue>>,
  result: number,
  unit: string,
  source: Source,
  note?: string,
): CalculationStep => ({
  symbol,
  name,
  expression,
  values,
  result,
  unit,
  source,
  ...(note === undefined ? {} : { note }),
});

export const calculation = (
  title: string,
  steps: readonly CalculationStep[],
  extra: { readonly assumptions?: readonly string[]; readonly cautions?: readonly string[] } = {},
): Calculation => ({ title, steps, assumptions: extra.assumptions ?? [], cautions: extra.cautions ?? [] });

/** Short form for a value of a step. */
export const val = (value: number, unit: string, name?: string, origin?: string): CalculationValue => ({
  value,
  unit,
  ...(name === undefined ? {} : { name }),
  ...(origin === undefined ? {} : { origin }),
});

/** The result of an earlier step as a value of a later one. */
export const fromStep = (step: CalculationStep): CalculationValue =>
  val(step.result, step.unit, step.name, `step ${step.symbol}`);
