import fc from 'fast-check';
import { evaluate as mathEvaluate } from 'mathjs';
import { describe, expect, test } from 'vitest';
import type { CalculationStep } from '../floor/calculation.js';
import { valueOf } from '../floor/problem.js';
import type { TopicArguments } from '../floor/topic.js';
import { parseQuantity } from '../floor/units.js';
import { sumOfExposures } from './additivity.js';
import { extendedDiffuseHazardDistance } from './diffuse.js';
import { laserTopics } from './topics.js';

const printed = (value: number): number => Number(value.toPrecision(6));

/** Re-computes each step from its printed values, as a stranger with the sheet would; names log for the natural logarithm. */
function expectRecomputable(steps: readonly CalculationStep[]): void {
  for (const s of steps) {
    const scope = Object.fromEntries(Object.entries(s.values).map(([name, v]) => [name, printed(v.value)]));
    const evaluate = (values: Readonly<Record<string, number>>) => Number(mathEvaluate(s.expression, { ...values }));
    const got = evaluate(scope);
    // What the sixth figure of each printed value can change: differences close to zero (a beam just above its limit) magnify it.
    const moved = (name: string, share: number) =>
      Math.abs(evaluate({ ...scope, [name]: scope[name]! * (1 + share) }) - got);
    const spread = Object.keys(scope).reduce((sum, name) => sum + Math.max(moved(name, 1e-5), moved(name, -1e-5)), 0);
    const allowed = spread + 1e-5 * Math.abs(s.result);
    expect(Math.abs(got - s.result), `${s.symbol} = ${s.expression} ${JSON.stringify(scope)}`).toBeLessThanOrEqual(
      allowed,
    );
    for (const name of Object.keys(s.values)) expect(s.expression).toMatch(new RegExp(`\\b${name}\\b`));
  }
}

const log = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((x) => 10 ** x);
const argumentsOf: Readonly<Record<string, fc.Arbitrary<number>>> = {
  wavelength: log(Math.log10(181e-9), -3.01),
  duration: log(-14, 4.6),
  'source-angle': log(-4, 0.4),
  area: log(-3, 0.5),
  pulse: log(-13, -5),
  rate: log(0, 4.9),
  diameter: log(-3.5, -1.5),
  divergence: log(-4, -1.5),
  distance: log(-1, 1),
  aperture: log(-3, -2),
  power: log(-3, 2),
  energy: log(-6, 0),
  limit: log(-3, 3),
  'pulse-limit': log(-4, 0),
  reflectance: log(-1, 0),
  angle: fc.double({ min: 0, max: 1.5, noNaN: true }),
  exposure: log(0, 6),
  irradiance: log(0, 6),
  'optical-density': log(0, 1),
  'count-time': log(0, 2),
  number: fc.integer({ min: 1, max: 10 }),
};

describe('every step of every topic can be re-computed from what is printed', () => {
  test.each(laserTopics.map((t) => [t.name, t] as const))('%s', (_name, topic) => {
    const inputs = Object.fromEntries(
      topic.inputs.map(({ name, shape, optional }) => {
        const some: fc.Arbitrary<number | string> =
          'choice' in shape ? fc.constantFrom(...shape.choice) : argumentsOf[name]!;
        return [name, optional ? fc.option(some, { nil: undefined }) : some];
      }),
    ) as Record<string, fc.Arbitrary<number | string | undefined>>;
    let answered = 0;
    fc.assert(
      fc.property(fc.record(inputs), (given) => {
        const outcome = topic.run(given as TopicArguments);
        if (!outcome.ok) {
          expect(outcome.problems.every((p) => p.code.startsWith('laser/'))).toBe(true);
          return;
        }
        answered++;
        expect(outcome.value.cautions.length).toBeGreaterThan(0);
        expectRecomputable(outcome.value.steps);
      }),
      { numRuns: 150, seed: 7 },
    );
    expect(answered).toBeGreaterThan(10);
  });
});

test('defaults of the topics can be read', () => {
  for (const topic of laserTopics)
    for (const { shape, default: text } of topic.inputs)
      if (text !== undefined && 'dimension' in shape) expect(parseQuantity(text, shape.dimension).ok).toBe(true);
});

test('sums over several wavelengths and extended sources can be re-computed too', () => {
  const beams = [450e-9, 532e-9, 1310e-9, 355e-9, 10.6e-6].map((wavelength) => ({ wavelength, irradiance: 3 }));
  for (const organ of ['eye', 'skin'] as const)
    expectRecomputable(valueOf(sumOfExposures({ edition: 'EU2006', organ, duration: 100, beams })).steps);
  const spot = { power: 300, reflectance: 0.9, angle: 0.4, spotDiameter: 0.02 };
  for (const edition of ['EU2006', 'IEC2014'] as const)
    expectRecomputable(
      valueOf(extendedDiffuseHazardDistance({ ...spot, edition, wavelength: 1064e-9, duration: 100 })).steps,
    );
});
