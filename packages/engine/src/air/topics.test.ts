import { evaluate } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { type Calculation, parseQuantity, type Topic, type TopicArguments, valueOf } from '../floor/index.js';
import { airTopics } from './topics.js';

/** Values for inputs that have no default. */
const samples: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  'class-limit': { class: '5.5' },
  'sampling-locations': { area: '1500 m2' },
  'sample-volume': { class: '6', size: '5 um', flow: '28.3 L/s' },
  recovery: { first: '1.2e6 /m3', last: '3e4 /m3', interval: '240 s' },
  'clean-air-flow': { class: '7', people: '2' },
  filter: { class: 'H14' },
  'particle-count': { counts: '7', volume: '0.17 m3' },
  coincidence: { concentration: '3e7 /m3', flow: '28.3 L/s' },
  'federal-class': { class: '100', size: '0.3 um' },
  'over-pressure': { flow: '0.8 m3/s', gap: '0.36 m2' },
  'gap-flow': { pressure: '5 Pa', gap: '0.09 m2' },
  'unidirectional-flow': { area: '2.88 m2', 'unit-flow': '0.3 m3/s' },
  'air-changes': { flow: '0.9 m3/s', volume: '6.5 m3' },
  'fan-point': { 'shut-off': '240 Pa', fall: '900', filter: '320', openings: '150' },
  'well-mixed': { volume: '12 m3', supply: '0.5 m3/s', leak: '0.001 m3/s', target: '352000 /m3' },
  'age-of-air': { volume: '9.6 m3', flow: '0.32 m3/s', 'room-age': '21 s' },
  'sound-level': { power: '63 dB', count: '4', distance: '1.5 m', surface: '120 m2' },
  'temperature-rise': { heat: '350 W', flow: '0.9 m3/s' },
  'expansion-drift': { length: '1.2 m', change: '0.5 K' },
  'air-index': { wavelength: '633 nm' },
  'beam-bending': { path: '2 m', gradient: '1.5' },
  illuminance: { flux: '2400 lm', strips: '4', area: '3.6 m2' },
  'strip-light': { flux: '1800 lm', length: '1.2 m', height: '0.9 m', lateral: '0.2 m', along: '0.1 m' },
  'light-tightness': { outside: '400 lx', allowed: '0.01 lx', gap: '0.003 m2', surface: '60 m2' },
};

function given(topic: Topic): TopicArguments {
  return Object.fromEntries(
    topic.inputs.map((input) => {
      const text = samples[topic.name]?.[input.name] ?? input.default;
      if (text === undefined) return [input.name, undefined];
      if ('dimension' in input.shape) return [input.name, valueOf(parseQuantity(text, input.shape.dimension))];
      return [input.name, 'number' in input.shape ? Number(text) : text];
    }),
  );
}

/** What a stranger gets from the printed values (six figures) and the printed formula. */
function recompute(calculation: Calculation): { symbol: string; got: number; printed: number }[] {
  return calculation.steps.map((s) => {
    const scope = Object.fromEntries(Object.entries(s.values).map(([k, v]) => [k, Number(v.value.toPrecision(6))]));
    return { symbol: s.symbol, got: evaluate(s.expression, scope) as number, printed: s.result };
  });
}

describe.each(airTopics.map((topic) => [topic.name, topic] as const))('%s', (_, topic) => {
  test('is re-computed from what is printed', () => {
    const calculation = valueOf(topic.run(given(topic)));
    expect(calculation.steps.length).toBeGreaterThan(0);
    for (const { got, printed } of recompute(calculation))
      expect(Math.abs(got - printed)).toBeLessThanOrEqual(2e-5 * Math.abs(printed));
  });
  test('refuses what makes no sense instead of giving a number', () => {
    const first = topic.inputs.find((input) => !('choice' in input.shape))!;
    const outcome = topic.run({ ...given(topic), [first.name]: Number.NaN });
    expect(outcome.ok).toBe(false);
  });
});

// Worked in the handbook of air: the topics give the same as its worked examples.
test.each([
  ['class-limit', 11_100],
  ['over-pressure', 8.23045],
  ['temperature-rise', 0.322462],
  ['air-changes', 498.462],
] as const)('%s gives its worked example', (name, expected) => {
  const topic = airTopics.find((t) => t.name === name)!;
  expect(valueOf(topic.run(given(topic))).steps[0]!.result / expected).toBeCloseTo(1, 5);
});

test('names are unique and every input has a sample or a default', () => {
  expect(new Set(airTopics.map((t) => t.name)).size).toBe(airTopics.length);
  expect(airTopics.map((t) => t.name).filter((name) => !(name in samples))).toEqual([]);
});
