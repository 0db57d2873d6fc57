import { readdirSync, readFileSync } from 'node:fs';
import { type Calculation, calculation, commonPractice, designFrom, type Finding, val } from '@cloche/engine';
import { evaluate } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { findings as invented } from '../../test/fixture.js';
import { type PrintedStep, shapeOf, worksheet } from './worksheet.js';

const root = new URL('../../../../', import.meta.url);
const read = (path: string) => readFileSync(new URL(path, root), 'utf8');
const yamlIn = (folder: string) => readdirSync(new URL(folder, root)).filter((name) => name.endsWith('.yaml'));

function findingsOf(example: string): readonly Finding[] {
  const catalogueFiles = yamlIn('catalogue').map((name) => ({ name, text: read(`catalogue/${name}`) }));
  const ruleTexts = Object.fromEntries(yamlIn('rules').map((n) => [n.replace('.yaml', ''), read(`rules/${n}`)]));
  const briefText = read(`examples/${example}`);
  const found = designFrom({ briefText, file: example, catalogueFiles, ruleTexts });
  if (!found.ok) throw new Error(`${example}: ${found.problems.map((p) => p.message).join(' ')}`);
  return found.value.findings;
}

const printedNumber = (text: string): number => Number(text.replace(/[\s\u00a0]/g, ''));

/** What a stranger gets who works down one column with nothing but what is printed. */
function workedDown(steps: readonly PrintedStep[], column: number): { got: number; printed: number; symbol: string }[] {
  const known: Record<string, number> = {};
  return steps.map((step) => {
    for (const value of step.given) known[value.symbol] = printedNumber(value.texts[column]!);
    const got = evaluate(step.expression, { ...known }) as number;
    const printed = printedNumber(step.results[column]!);
    known[step.symbol] = printed;
    return { got, printed, symbol: step.symbol };
  });
}

const byShape = (findings: readonly Finding[]): Calculation[][] => {
  const shapes = new Map<string, Calculation[]>();
  for (const { calculation: found } of findings)
    if (found) shapes.set(shapeOf(found), [...(shapes.get(shapeOf(found)) ?? []), found]);
  return [...shapes.values()];
};

describe('a stranger gets every printed result from what is printed above and beside it', () => {
  test.each([
    ['the hand-made findings', () => invented],
    ...yamlIn('examples').map((name) => [name, () => findingsOf(name)] as const),
  ] as const)('in %s', (_, find) => {
    const groups = byShape(find());
    expect(groups.length).toBeGreaterThan(1);
    for (const group of groups) {
      const steps = worksheet(group);
      group.forEach((_calculation, column) => {
        for (const { got, printed, symbol } of workedDown(steps, column))
          expect(Math.abs(got - printed), `${symbol} in ${group[column]!.title}`).toBeLessThanOrEqual(
            2e-5 * Math.max(Math.abs(printed), 1e-9),
          );
      });
    }
  });
});

describe('a worksheet', () => {
  const step = (symbol: string, expression: string, values: Record<string, number>, result: number) => ({
    symbol,
    name: symbol,
    expression,
    values: Object.fromEntries(Object.entries(values).map(([name, value]) => [name, val(value, 'm')])),
    result,
    unit: 'm',
    source: commonPractice,
  });
  const chained = (a: number) =>
    calculation('chain', [
      step('b', '2*a', { a }, 2 * a),
      step('c', 'a+b', { a, b: 2 * a }, 3 * a),
      step('d', 'a+c', { a: 5, c: 3 * a }, 5 + 3 * a),
    ]);
  const symbols = (steps: readonly PrintedStep[]) => steps.map((s) => s.given.map((v) => v.symbol));

  test('prints a value once, and again where it changes', () => {
    expect(symbols(worksheet([chained(1)]))).toEqual([['a'], [], ['a']]);
  });

  test('prints a value again where its unit changes', () => {
    const [first, second] = [step('b', '2*a', { a: 1 }, 2), step('c', '2*a', { a: 1 }, 2)];
    const inMillimetres = { ...second, values: { a: val(1, 'mm') } };
    expect(symbols(worksheet([calculation('units', [first, inMillimetres])]))).toEqual([['a'], ['a']]);
  });

  test('sets calculations of one shape side by side, each with its own numbers', () => {
    expect(shapeOf(chained(1))).toBe(shapeOf(chained(2)));
    const steps = worksheet([chained(1), chained(2)]);
    expect(steps.map((s) => s.results)).toEqual([
      ['2', '4'],
      ['3', '6'],
      ['8', '11'],
    ]);
  });

  test('does not set side by side what is computed otherwise', () => {
    const other = calculation('chain', [step('b', '3*a', { a: 1 }, 3)]);
    expect(shapeOf(other)).not.toBe(shapeOf(calculation('chain', [step('b', '2*a', { a: 1 }, 2)])));
  });
});
