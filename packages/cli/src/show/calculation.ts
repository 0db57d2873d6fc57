import { type Calculation, type CalculationStep, numberText, sourceText } from '@cloche/engine';
import pc from 'picocolors';

/** Six figures: enough for anyone to compute the printed result from the printed values. */
const figures = 6;
const printed = (value: number): string => numberText(value, figures);

const stepText = (step: CalculationStep): string => {
  const values = Object.entries(step.values).map(
    ([symbol, v]) =>
      `      ${symbol} = ${printed(v.value)} ${v.unit === '1' ? '' : v.unit}${v.name ? `  ${v.name}` : ''}${v.origin ? ` (${v.origin})` : ''}`,
  );
  const result = `    ${step.symbol} = ${pc.bold(printed(step.result))}${step.unit === '1' ? '' : ` ${step.unit}`}`;
  return [
    `  ${pc.bold(step.name)}`,
    // A step without inputs is its own value: once is enough.
    ...(values.length > 0 ? [`    ${step.symbol} = ${step.expression}`, ...values] : []),
    result,
    pc.dim(`    ${sourceText(step.source)}${step.note ? `. ${step.note}` : ''}`),
  ].join('\n');
};

/** A calculation as on a hand-written sheet. */
export const calculationText = (c: Calculation): string =>
  [
    pc.bold(c.title),
    ...c.steps.map(stepText),
    ...c.assumptions.map((a) => `  Assumed: ${a}`),
    ...c.cautions.map((a) => `  ${pc.yellow('Caution:')} ${a}`),
  ].join('\n');
