import { expect, test } from 'vitest';
import type { Finding, Verdict } from '../engine/contract.js';
import { foldedAtFirst, verdictsInOrder } from './verdict-groups.js';

const found = (...verdicts: Verdict[]): Finding[] => verdicts.map((verdict) => ({ verdict }) as Finding);

test('what is not assessed is folded beside anything else to look at, never when it stands alone', () => {
  expect(foldedAtFirst('not assessed', found('not assessed', 'attention'))).toBe(true);
  expect(foldedAtFirst('not assessed', found('not assessed', 'fails'))).toBe(true);
  expect(foldedAtFirst('not assessed', found('not assessed', 'meets'))).toBe(false);
});

test('what fails or wants attention is never folded, what is met always', () => {
  const all = found(...verdictsInOrder);
  expect(verdictsInOrder.map((verdict) => foldedAtFirst(verdict, all))).toEqual([false, false, true, true]);
});
