import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { CheckCase } from './adapter.js';
import { adapters } from './adapters/index.js';
import { runCase } from './compare.js';

/**
 * Published check cases. Topics that the engine does not compute are `unsupported`; the count of those that agree may only
 * grow.
 */
test.each([
  ['laser', 137, 0],
  ['air', 86, 0],
  ['airflow', 6, 7],
  ['frame', 21, 64],
  ['curtain', 35, 0],
  ['cutting', 15, 0],
  ['room', 25, 0],
])('%s: %d cases agree and none differs', (name, agree, unsupported) => {
  const cases = JSON.parse(
    readFileSync(new URL(`./published/${name}.json`, import.meta.url), 'utf8'),
  ) as readonly CheckCase[];
  const results = cases.map((c) => runCase(c, adapters));
  expect(results.filter((r) => r.outcome === 'differs')).toEqual([]);
  expect(results.filter((r) => r.outcome === 'agrees')).toHaveLength(agree);
  expect(results.filter((r) => r.outcome === 'unsupported')).toHaveLength(unsupported);
});

const sum: CheckCase = { id: 'x', topic: 'sum', given: { a: 1, b: 2 }, expect: { c: 3 }, tolerance_rel: 1e-6 };

test('a result outside its tolerance differs', () => {
  const wrong = runCase(sum, { sum: (g) => ({ c: g.number('a') + g.number('b') + 1e-3 }) });
  expect(wrong.outcome).toBe('differs');
});

test('a given field that no adapter reads makes a case unsupported, even when the result is right', () => {
  const lucky = runCase(sum, { sum: (g) => ({ c: g.number('a') + 2 }) });
  expect(lucky).toMatchObject({ outcome: 'unsupported', reason: 'field not known: b' });
});

test('a topic without adapter, and an expected result that is not given, are unsupported', () => {
  expect(runCase(sum, {}).outcome).toBe('unsupported');
  expect(runCase(sum, { sum: (g) => ({ d: g.number('a') + g.number('b') }) }).outcome).toBe('unsupported');
});
