import { describe, expect, test } from 'vitest';
import { calculation, step, val } from '../floor/calculation.js';
import type { Finding, Verdict } from '../floor/finding.js';
import { source } from '../floor/source.js';
import { compareFindings, directionOf, fallsOf, standsInTheWay, utilisationTolerance } from './findings.js';

const invented = source('invented for this test', 'invented');
const finding = (verdict: Verdict, over: Partial<Finding> = {}): Finding => ({
  id: 'room/way/1',
  discipline: 'room',
  subject: 'way-1',
  requirement: 'Way wide enough',
  verdict,
  message: 'As it is.',
  demand: null,
  capacity: null,
  unit: 'm',
  utilisation: null,
  calculation: null,
  source: invented,
  decider: 'facilities',
  required: true,
  cautions: [],
  asks: [],
  ...over,
});
const share = (need: number, free: number) =>
  calculation('Share', [
    step('u', 'utilisation', 'a/b', { a: val(need, 'm'), b: val(free, 'm') }, need / free, '1', invented),
  ]);

describe('the direction of a change', () => {
  test.each<[Finding | null, Finding | null, string]>([
    [finding('meets'), finding('attention'), 'worse'],
    [finding('meets'), finding('not assessed'), 'worse'],
    [finding('attention'), finding('fails'), 'worse'],
    [finding('not assessed'), finding('fails'), 'worse'],
    [finding('fails'), finding('meets'), 'better'],
    [finding('not assessed'), finding('meets'), 'better'],
    [null, finding('fails'), 'worse'],
    [null, finding('meets'), 'other'],
    [finding('fails'), null, 'better'],
    [finding('meets'), null, 'other'],
    [null, finding('not assessed', { required: false }), 'other'],
    [null, finding('not assessed'), 'worse'],
  ])('case %#', (before, after, direction) => {
    expect(directionOf(before, after)).toBe(direction);
  });

  test('what failed and is now not assessed is not better: nobody knows', () => {
    expect(directionOf(finding('fails'), finding('not assessed'))).toBe('other');
  });

  test('follows the utilisation where a verdict stays that needs a person', () => {
    const at = (verdict: Verdict, utilisation: number) => finding(verdict, { utilisation });
    expect(directionOf(at('fails', 1.2), at('fails', 3))).toBe('worse');
    expect(directionOf(at('attention', 0.98), at('attention', 0.92))).toBe('better');
    expect(directionOf(at('meets', 0.2), at('meets', 0.6))).toBe('other');
  });
});

describe('findings laid beside each other', () => {
  test('equal ones are not told', () => {
    const same = finding('meets', { utilisation: 0.5, calculation: share(0.9, 1.8) });
    expect(compareFindings([same], [{ ...same, calculation: share(0.9, 1.8) }])).toEqual([]);
  });

  test('appear, go, and change their verdict, each with what was and what is', () => {
    const changes = compareFindings(
      [finding('meets', { id: 'a' }), finding('fails', { id: 'b' })],
      [finding('fails', { id: 'a', message: 'Too narrow.' }), finding('meets', { id: 'c' })],
    );
    expect(changes.map(({ id, change, direction }) => [id, change, direction])).toEqual([
      ['a', 'verdict', 'worse'],
      ['b', 'gone', 'better'],
      ['c', 'appeared', 'other'],
    ]);
    expect([changes[0]!.before!.verdict, changes[0]!.after!.message]).toEqual(['meets', 'Too narrow.']);
    expect([changes[1]!.after, changes[2]!.before]).toEqual([null, null]);
  });

  test('a utilisation within its tolerance is no change of utilisation', () => {
    const from = finding('meets', { utilisation: 0.5 });
    const kind = (utilisation: number) => compareFindings([from], [{ ...from, utilisation }]).map((c) => c.change);
    expect(kind(0.5 + utilisationTolerance * 0.9)).toEqual([]);
    expect(kind(0.5 + utilisationTolerance * 1.1)).toEqual(['utilisation']);
    const far = finding('fails', { utilisation: 400 });
    expect(compareFindings([far], [{ ...far, utilisation: 401 }])).toEqual([]);
    expect(compareFindings([far], [{ ...far, utilisation: 410 }]).map((c) => c.direction)).toEqual(['worse']);
  });

  test('other numbers behind the same verdict are told as another basis', () => {
    const before = finding('meets', { utilisation: 0.5, calculation: share(0.9, 1.8) });
    const [change] = compareFindings([before], [{ ...before, calculation: share(0.901, 1.802) }]);
    expect([change!.change, change!.recalculated, change!.direction]).toEqual(['basis', true, 'other']);
  });

  test('noise of arithmetic in a calculation is no other basis', () => {
    const before = finding('meets', { utilisation: 0.3, calculation: share(0.3, 1) });
    expect(compareFindings([before], [{ ...before, calculation: share(0.1 + 0.2, 1) }])).toEqual([]);
  });

  test('another rule behind the same numbers is another basis', () => {
    const rule = (text: string) => ({ id: 'way.clear-width', text, source: invented });
    const change = compareFindings(
      [finding('meets', { rule: rule('0.90 m') })],
      [finding('meets', { rule: rule('0.80 m') })],
    );
    expect(change.map((c) => c.change)).toEqual(['basis']);
  });
});

test('only what is new in the way counts as in the way', () => {
  const stands = (before: Finding | null, after: Finding | null) =>
    compareFindings(before ? [before] : [], after ? [after] : []).some(standsInTheWay);
  expect(stands(finding('meets'), finding('fails'))).toBe(true);
  expect(stands(finding('meets'), finding('not assessed'))).toBe(true);
  expect(stands(null, finding('fails'))).toBe(true);
  expect(stands(finding('meets'), finding('attention'))).toBe(false);
  expect(stands(finding('fails', { utilisation: 1.1 }), finding('fails', { utilisation: 4 }))).toBe(false);
  expect(stands(finding('meets'), finding('not assessed', { required: false }))).toBe(false);
});

test('results fall by who decides on them; what only appeared has nothing to fall', () => {
  const changes = compareFindings(
    [
      finding('meets', { id: 'b', decider: 'fire authority' }),
      finding('meets', { id: 'a', decider: 'fire authority' }),
    ],
    [finding('fails', { id: 'b', decider: 'fire authority' }), finding('meets', { id: 'c', decider: 'electrician' })],
  );
  expect(fallsOf(changes)).toEqual([{ decider: 'fire authority', findings: ['a', 'b'] }]);
});
