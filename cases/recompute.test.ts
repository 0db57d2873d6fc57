import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type CalculationStep, calculate, designFrom, numberText, topics } from '@cloche/engine';
import { evaluate } from 'mathjs';
import { describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
const texts = (folder: string) =>
  readdirSync(join(root, folder))
    .filter((f) => f.endsWith('.yaml'))
    .sort()
    .map((name) => ({ name, text: readFileSync(join(root, folder, name), 'utf8') }));

/** As printed on sheets: six significant figures. */
const printed = (value: number): number => Number(numberText(value, 6));

/**
 * What a stranger gets who computes a step from the sheet alone, with a general-purpose expression evaluator (mathjs), which
 * shares no code with the engine.
 */
function recomputed(step: CalculationStep): number {
  const scope = Object.fromEntries(Object.entries(step.values).map(([name, v]) => [name, printed(v.value)]));
  return evaluate(step.expression, scope) as number;
}

const differs = (step: CalculationStep): boolean => {
  if (!Number.isFinite(step.result)) return true;
  const own = recomputed(step);
  return !(Math.abs(own - step.result) <= 2e-4 * Math.abs(step.result) + 1e-12);
};

const catalogueFiles = texts('catalogue');
const ruleTexts = Object.fromEntries(texts('rules').map(({ name, text }) => [name.replace('.yaml', ''), text]));

describe.each(texts('examples'))('every printed calculation of $name', ({ name, text }) => {
  const result = designFrom({ briefText: text, file: name, catalogueFiles, ruleTexts });

  test('the example composes without a problem', () => {
    expect(result.ok ? [] : result.problems).toEqual([]);
  });

  test('gives its printed result again', () => {
    const findings = result.ok ? result.value.findings : [];
    const steps = findings.flatMap((f) => (f.calculation?.steps ?? []).map((step) => ({ finding: f.id, step })));
    expect(steps.length).toBeGreaterThan(50);
    const wrong = steps
      .filter(({ step }) => differs(step))
      .map(
        ({ finding, step }) =>
          `${finding} ${step.symbol} = ${step.expression}: printed ${step.result}, computed ${recomputed(step)}`,
      );
    expect(wrong).toEqual([]);
  });

  test('stands behind every assessed finding', () => {
    const findings = result.ok ? result.value.findings : [];
    const bare = findings.filter(
      (f) => f.verdict !== 'not assessed' && f.utilisation !== null && (f.calculation?.steps.length ?? 0) === 0,
    );
    expect(bare.map((f) => f.id)).toEqual([]);
  });
});

/** An input for every topic, by dimension: values inside every range that a topic with defaults of its own does not need. */
test('every topic refuses to run without its required inputs, and says which', () => {
  const silent = topics
    .filter((topic) => topic.inputs.some((i) => i.default === undefined && !i.optional))
    .flatMap((topic) => {
      const outcome = calculate(topic.name, {});
      const named = outcome.ok ? [] : outcome.problems.filter((p) => p.code === 'calc/missing-input');
      return named.length > 0 ? [] : [topic.name];
    });
  expect(silent).toEqual([]);
});
