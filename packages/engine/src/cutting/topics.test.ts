import { evaluate } from 'mathjs';
import { describe, expect, test } from 'vitest';
import type { Calculation } from '../floor/calculation.js';
import { valueOf } from '../floor/problem.js';
import { cuttingTopics } from './topics.js';

const topic = (name: string) => cuttingTopics.find((t) => t.name === name)!;

/** Each step from its values as printed, by a general-purpose evaluator. */
function expectRecomputed(c: Calculation): void {
  for (const step of c.steps) {
    const scope = Object.fromEntries(
      Object.entries(step.values).map(([name, v]) => [name, Number(v.value.toPrecision(6))]),
    );
    const got = Number(evaluate(step.expression, scope));
    expect(Math.abs(got - step.result), `${c.title}: ${step.symbol}`).toBeLessThanOrEqual(1e-5 * Math.abs(step.result));
  }
}

describe('calculations a stranger can re-compute', () => {
  test('cut-bars', () => {
    const inputs = { bar: 3, 'length-1': 1.73, 'count-1': 3, 'length-2': 0.64, 'count-2': 5, kerf: 0.003, trim: 0.005 };
    const c = valueOf(topic('cut-bars').run(inputs));
    expectRecomputed(c);
    // By hand: a long and a short piece make 2.373 m, so each long piece needs a bar; the two shorts left over need another.
    expect(c.steps.find((s) => s.symbol === 'N')!.result).toBe(4);
  });

  test('cut-bars with two stock lengths counts metres', () => {
    const inputs = { bar: 3, 'bar-2': 6, 'length-1': 2.9, 'count-1': 3, kerf: 0.004, trim: 0 };
    const c = valueOf(topic('cut-bars').run(inputs));
    expectRecomputed(c);
    // By hand: 2.9 m three times is 8.7 m: one long and one short bar.
    expect(c.steps.find((s) => s.symbol === 'Lb')!.result).toBe(9000);
  });

  test('cut-sheets', () => {
    const inputs = {
      'sheet-width': 2.44,
      'sheet-height': 1.22,
      'width-1': 1.2,
      'height-1': 0.6,
      'count-1': 4,
      turning: 'no',
      kerf: 0.004,
      trim: 0,
    };
    const c = valueOf(topic('cut-sheets').run(inputs));
    expectRecomputed(c);
    expect(c.steps.find((s) => s.symbol === 'Ab')!.values.N!.value).toBe(1);
  });

  test('a piece that is too long is refused', () => {
    const outcome = topic('cut-bars').run({ bar: 3, 'length-1': 3.5, 'count-1': 1, kerf: 0.004, trim: 0 });
    expect(outcome.ok).toBe(false);
    const sheet = topic('cut-sheets').run({
      'sheet-width': 1,
      'sheet-height': 1,
      'width-1': 2,
      'height-1': 1,
      kerf: 0,
      trim: 0,
    });
    expect(sheet.ok).toBe(false);
  });
});
