import { evaluate } from 'mathjs';
import { describe, expect, test } from 'vitest';
import type { CalculationStep } from '../floor/calculation.js';
import { valueOf } from '../floor/problem.js';
import { parseQuantity } from '../floor/units.js';
import { frameTopics } from './index.js';

const printed = (value: number): number => Number(value.toPrecision(6));

/** What a stranger gets from the printed values, by a general-purpose evaluator. */
function recomputed(step: CalculationStep): number {
  const scope = Object.fromEntries(Object.entries(step.values).map(([name, v]) => [name, printed(v.value)]));
  return evaluate(step.expression, scope) as number;
}

const examples: Readonly<Record<string, readonly Readonly<Record<string, string>>[]>> = {
  beam: [
    { span: '2.4 m', uniform: '60 N/m', 'second-moment-cm4': '13.4' },
    { span: '2.4 m', uniform: '60 N/m', load: '180 N', 'load-at': '0.9 m', 'second-moment-cm4': '13.4' },
    { ends: 'fixed', span: '1.8 m', load: '180 N', 'load-at': '1.3 m', 'second-moment-cm4': '13.4' },
    {
      ends: 'fixed and simple',
      span: '1.8 m',
      uniform: '20 N/m',
      load: '90 N',
      'load-at': '0.4 m',
      'second-moment-cm4': '9',
    },
    {
      ends: 'cantilever',
      span: '1.2 m',
      uniform: '20 N/m',
      load: '90 N',
      'load-at': '0.4 m',
      'second-moment-cm4': '9',
    },
  ],
  'hollow-section': [
    { width: '40 mm', height: '80 mm', thickness: '3 mm' },
    { width: '100 mm', height: '100 mm', thickness: '5 mm', finish: 'hot finished' },
  ],
  'tip-over': [{ mass: '180 kg', lever: '600 mm', height: '1350 mm', 'push-height': '1.8 m' }],
  'foot-load': [{ mass: '210 kg', length: '2 m', width: '1.2 m', x: '1.1 m', y: '0.52 m' }],
  'member-buckling': [
    { 'buckling-length': '2 m', 'second-moment-cm4': '9', area: '750 mm2', 'proof-strength': '150 MPa', class: 'A' },
    { 'buckling-length': '2 cm', 'second-moment-cm4': '9', area: '750 mm2', 'proof-strength': '150 MPa', class: 'A' },
  ],
  'bolt-preload': [{ diameter: '8 mm', torque: '14 N m' }],
  'groove-panel': [{ opening: '920 mm', groove: '10 mm', clearance: '2.5 mm' }],
  'thermal-growth': [{ length: '4 m', change: '10 K' }],
  transmissibility: [{ frequency: '25 Hz', 'natural-frequency': '9 Hz' }],
};

function run(name: string, texts: Readonly<Record<string, string>>) {
  const topic = frameTopics.find((t) => t.name === name)!;
  const inputs = topic.inputs.map((input) => {
    const text = texts[input.name] ?? input.default;
    if (text === undefined) return [input.name, undefined];
    if ('dimension' in input.shape) return [input.name, valueOf(parseQuantity(text, input.shape.dimension))];
    return [input.name, 'number' in input.shape ? Number(text) : text];
  });
  return topic.run(Object.fromEntries(inputs));
}

test('every topic has an example here', () => {
  expect(frameTopics.map((t) => t.name).sort()).toEqual(Object.keys(examples).sort());
});

describe.each(Object.entries(examples))('%s', (name, list) => {
  test.each(list)('a stranger gets the printed results: %o', (texts) => {
    const { steps } = valueOf(run(name, texts));
    expect(steps.length).toBeGreaterThan(0);
    for (const step of steps) {
      const got = recomputed(step);
      expect(Math.abs(got - printed(step.result)), `${step.symbol} = ${step.expression}`).toBeLessThanOrEqual(
        2e-5 * Math.abs(step.result) + 1e-12,
      );
    }
  });

  test('refuses when an input is missing', () => {
    expect(run(name, {}).ok).toBe(false);
  });
});

const resultOf = (name: string, texts: Readonly<Record<string, string>>, symbol: string): number =>
  valueOf(run(name, texts)).steps.find((s) => s.symbol === symbol)!.result;

describe('results in the units of the trade', () => {
  // 5 q L^4/(384 E I) and q L^2/8; beam tables, Roark (from memory).
  test('beam', () => {
    const texts = examples.beam![0]!;
    expect(resultOf('beam', texts, 'd')).toBeCloseTo((5 * 0.06 * 2400 ** 4) / (384 * 70000 * 134000), 6);
    expect(resultOf('beam', texts, 'M')).toBeCloseTo((60 * 2.4 ** 2) / 8, 9);
  });

  // EN 10210-2, 100 x 100 x 5 hot finished: It 439 cm4 (from memory).
  test('hollow section', () => {
    expect(Math.round(resultOf('hollow-section', examples['hollow-section']![1]!, 'It') / 1e4)).toBe(439);
  });

  // Rigid-body statics: m g b / (F h).
  test('tip-over', () => {
    expect(resultOf('tip-over', examples['tip-over']![0]!, 'f')).toBeCloseTo((180 * 9.80665 * 0.6) / (250 * 1.8), 9);
  });

  test('bolt', () => {
    expect(resultOf('bolt-preload', examples['bolt-preload']![0]!, 'F')).toBeCloseTo(8750, 6);
  });
});
