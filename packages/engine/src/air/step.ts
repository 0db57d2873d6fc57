import type { CalculationStep, CalculationValue, Source } from '../floor/index.js';

/** One line of a calculation; `expression` says in arithmetic what the function that gave `result` computes. */
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
