import { evaluate } from 'mathjs';
import { expect, test } from 'vitest';
import { valueOf } from '../floor/problem.js';
import type { TopicArguments } from '../floor/topic.js';
import { parseQuantity } from '../floor/units.js';
import { curtainTopics } from './topics.js';

const examples: Readonly<Record<string, TopicArguments>> = {
  'curtain-width': { length: 6.25 },
  'curtain-drop': { underside: 2.6, 'runner-drop': 0.055, 'hem-gap': 0.02, 'floor-fall': 0.012 },
  'curtain-stack': { width: 1.8, pitch: 0.125, 'runner-length': 0.028, thickness: 0.004, 'end-stop': 0.02 },
  'curtain-corner': { 'leg-a': 3, 'leg-b': 2, radius: 0.3 },
  'curtain-overlap': { overlap: 0.3, spacing: 0.1 },
  'curtain-mass': { track: 0.72, cloth: 0.78, drop: 2.5, hem: 0.25, runner: 0.014 },
  'curtain-supports': { length: 5 },
};

const withDefaults = (topic: (typeof curtainTopics)[number], given: TopicArguments): TopicArguments => ({
  ...Object.fromEntries(
    topic.inputs.flatMap((i) =>
      i.default !== undefined && 'dimension' in i.shape
        ? [[i.name, valueOf(parseQuantity(i.default, i.shape.dimension))]]
        : [],
    ),
  ),
  ...given,
});

// Every step is evaluated again by a general-purpose library from its values as printed (six significant digits).
test.each(curtainTopics.map((t) => [t.name, t] as const))(
  '%s can be re-computed from what it prints',
  (name, topic) => {
    const { steps } = valueOf(topic.run(withDefaults(topic, examples[name]!)));
    expect(steps.length).toBeGreaterThan(0);
    for (const step of steps) {
      const scope = Object.fromEntries(
        Object.entries(step.values).map(([k, v]) => [k, Number(v.value.toPrecision(6))]),
      );
      expect(Math.abs(evaluate(step.expression, scope) - step.result)).toBeLessThanOrEqual(
        2e-5 * Math.abs(step.result),
      );
    }
  },
);

test('a topic hands on the problems of its calculation', () => {
  for (const topic of curtainTopics) {
    const bad = Object.fromEntries(topic.inputs.map((i) => [i.name, -1]));
    expect(topic.run(bad).ok).toBe(false);
  }
});
