import { type Calculation, type CalculationStep, sourceText } from '@cloche/engine';
import { valueText } from './words.js';

/** A value of a step as it is printed: one text a column, and what it is called there. */
export interface PrintedValue {
  readonly symbol: string;
  readonly unit: string;
  readonly texts: readonly string[];
  readonly names: readonly string[];
  readonly origins: readonly string[];
}

export interface PrintedStep {
  readonly symbol: string;
  readonly name: string;
  readonly expression: string;
  readonly unit: string;
  readonly source: string;
  readonly mark: string;
  /** Values that this step is the first to state: the others stand above, and hold until they are given again. */
  readonly given: readonly PrintedValue[];
  readonly results: readonly string[];
  readonly notes: readonly string[];
}

/** What two calculations must share to be printed as columns of one sheet. */
export const shapeOf = (calculation: Calculation): string =>
  JSON.stringify(
    calculation.steps.map((step) => [
      step.symbol,
      step.expression,
      step.name,
      step.unit,
      sourceText(step.source),
      Object.entries(step.values).map(([symbol, { unit }]) => [symbol, unit]),
    ]),
  );

interface Held {
  readonly text: string;
  readonly unit: string;
}

/**
 * Calculations of one shape as the columns of one sheet, as on paper: every number with six figures, and a symbol keeps its value until it
 * is given again, so that results of earlier steps and repeated values are not printed twice.
 */
export function worksheet(calculations: readonly Calculation[]): PrintedStep[] {
  const columns = calculations.map(() => new Map<string, Held>());
  return (calculations[0]?.steps ?? []).map((_, row) => {
    const steps = calculations.map((c) => c.steps[row]!);
    const given = newValues(steps, columns);
    const results = steps.map((step) => valueText(step.result));
    const first = steps[0]!;
    for (const [i, held] of columns.entries()) {
      for (const value of given) held.set(value.symbol, { text: value.texts[i]!, unit: value.unit });
      held.set(first.symbol, { text: results[i]!, unit: first.unit });
    }
    return {
      symbol: first.symbol,
      name: first.name,
      expression: first.expression,
      unit: first.unit,
      source: sourceText(first.source),
      mark: first.source.mark,
      given,
      results,
      notes: steps.map((step) => step.note ?? ''),
    };
  });
}

function newValues(steps: readonly CalculationStep[], columns: readonly ReadonlyMap<string, Held>[]): PrintedValue[] {
  return Object.entries(steps[0]!.values).flatMap(([symbol, { unit }]) => {
    const values = steps.map((step) => step.values[symbol]!);
    const texts = values.map((value) => valueText(value.value));
    const known = columns.every((held, i) => held.get(symbol)?.text === texts[i] && held.get(symbol)?.unit === unit);
    return known
      ? []
      : [{ symbol, unit, texts, names: values.map((v) => v.name ?? ''), origins: values.map((v) => v.origin ?? '') }];
  });
}

/** One text where all columns agree. */
export const agreed = (texts: readonly string[]): string | null =>
  texts.every((text) => text === texts[0]) ? (texts[0] ?? null) : null;
