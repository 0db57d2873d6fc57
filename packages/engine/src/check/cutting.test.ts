import { evaluate } from 'mathjs';
import { expect, test } from 'vitest';
import { planBars } from '../cutting/index.js';
import { barJobs, sheetJobs } from '../design/cut-jobs.js';
import { valueOf } from '../floor/problem.js';
import { source } from '../floor/source.js';
import type { CheckContext } from './context.js';
import { checkCutting } from './cutting.js';

const invented = source('invented for this test', 'invented');
const rule = (id: string, value: number) => ({
  id,
  meaning: id,
  value,
  written: `${value * 1000} mm`,
  source: invented,
});
const items = [
  { id: 'bar-40', kind: 'profile', name: 'Profile, 40 x 40', stockLengths: [3, 6] },
  { id: 'clear-5', kind: 'sheet', name: 'Sheet, clear', sheetSize: [2.44, 1.22] },
  { id: 'cover', kind: 'slot cover', name: 'Slot cover', stockLengths: [2] },
  { id: 'odd', kind: 'cloth', name: 'Cloth' },
];

const context = (parts: readonly object[]): CheckContext =>
  ({
    design: { parts },
    catalogue: { byId: new Map(items.map((i) => [i.id, i])) },
    rules: { byId: { 'cutting.kerf': rule('cutting.kerf', 0.004), 'cutting.trim': rule('cutting.trim', 0.01) } },
  }) as unknown as CheckContext;

const bar = (mark: string, length: number, count: number) => ({
  id: mark,
  item: 'bar-40',
  group: 'profiles',
  mark,
  length,
  count,
});
const panel = (mark: string, length: number, width: number, count: number) => ({
  id: mark,
  item: 'clear-5',
  group: 'panels',
  mark,
  length,
  width,
  count,
});

test('bars and panels are planned by item, with steps that a stranger re-computes', () => {
  const findings = checkCutting(context([bar('P1', 2.3, 4), bar('B1', 1.4, 6), panel('S1', 1.2, 0.6, 3)]));
  expect(findings.map((f) => f.id)).toEqual(['cutting/bars/bar-40', 'cutting/sheets/clear-5']);
  for (const f of findings) {
    expect(f.verdict).toBe('meets');
    expect(f.utilisation).toBe(1);
    for (const step of f.calculation!.steps) {
      const scope = Object.fromEntries(
        Object.entries(step.values).map(([n, v]) => [n, Number(v.value.toPrecision(6))]),
      );
      expect(Math.abs(Number(evaluate(step.expression, scope)) - step.result)).toBeLessThanOrEqual(
        1e-5 * Math.abs(step.result),
      );
    }
  }
  // By hand: no bar is filled better than 5.6 m of 6 m (four short ones) or 2.8 m of 3 m, so 4 x 2.3 + 6 x 1.4 = 17.6 m ask for
  // 17.6 / 0.9333 = 18.9 m at least, and the next sum of 3 m and 6 m bars is 21 m.
  expect(findings[0]!.demand).toBe(21);
});

test('the job of an item gives the cut list with its marks', () => {
  const [job] = barJobs(context([bar('P1', 2.3, 1), bar('P2', 2.3, 1)]));
  expect(
    valueOf(planBars(job!.request))
      .bars.flatMap((b) => b.pieces)
      .sort(),
  ).toEqual(['P1', 'P2']);
  expect(sheetJobs(context([bar('P1', 2.3, 1)]))).toEqual([]);
});

test('a piece longer than the longest bar fails and says so', () => {
  const [finding] = checkCutting(context([bar('P1', 5.99, 1)]));
  expect(finding).toMatchObject({ verdict: 'fails', required: true, demand: 5.99, capacity: expect.closeTo(5.98, 9) });
  expect(finding!.message).toContain('P1');
});

test('a panel larger than the sheet fails', () => {
  expect(checkCutting(context([panel('S1', 2.5, 0.5, 1)]))[0]!.verdict).toBe('fails');
});

test('a panel that only its shorter side makes too large is over the sheet on that side', () => {
  // 1.3 m on 1.22 m; the longer side, 2 m on 2.44 m, would fit.
  const [finding] = checkCutting(context([panel('S1', 2, 1.3, 1)]));
  expect(finding).toMatchObject({ verdict: 'fails', demand: 1.3, capacity: 1.22 });
  expect(finding!.utilisation).toBeCloseTo(1.3 / 1.22, 12);
});

test('strips longer than their stock are laid end to end', () => {
  const strip = { id: 'c', item: 'cover', group: 'strips', mark: 'C1', length: 4.5, count: 2 };
  const [job] = barJobs(context([strip]));
  expect(job!.request.pieces).toEqual([
    { mark: 'C1 whole', length: 2, count: 4 },
    { mark: 'C1 rest', length: 0.5, count: 2 },
  ]);
});

test('cut parts without stock in the catalogue are not assessed', () => {
  const [finding] = checkCutting(context([{ id: 'x', item: 'odd', group: 'strips', length: 1, count: 1 }]));
  expect(finding).toMatchObject({ id: 'cutting/stock/odd', verdict: 'not assessed', calculation: null });
});

test('parts that are not cut are left alone', () => {
  expect(checkCutting(context([{ id: 'f', item: 'foot', group: 'feet', count: 4 }]))).toEqual([]);
});
