import type { Calculation, CalculationStep, CalculationValue } from '../floor/calculation.js';
import { sourceText } from '../floor/source.js';
import { sameNumber } from './quantities.js';

/** True when a stranger would compute the same numbers by the same steps from the same sources. */
export const sameCalculation = (a: Calculation, b: Calculation): boolean =>
  a.steps.length === b.steps.length &&
  a.steps.every((step, i) => sameStep(step, b.steps[i]!)) &&
  sameTexts(a.assumptions, b.assumptions) &&
  sameTexts(a.cautions, b.cautions);

const sameStep = (a: CalculationStep, b: CalculationStep): boolean =>
  a.symbol === b.symbol &&
  a.expression === b.expression &&
  a.unit === b.unit &&
  a.note === b.note &&
  sourceText(a.source) === sourceText(b.source) &&
  sameNumber(a.result, b.result) &&
  sameTexts(Object.keys(a.values), Object.keys(b.values)) &&
  Object.entries(a.values).every(([name, value]) => sameCalculationValue(value, b.values[name]!));

const sameCalculationValue = (a: CalculationValue, b: CalculationValue): boolean =>
  a.unit === b.unit && a.origin === b.origin && sameNumber(a.value, b.value);

const sameTexts = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((text, i) => text === b[i]);
