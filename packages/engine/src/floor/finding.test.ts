import fc from 'fast-check';
import { expect, test } from 'vitest';
import { overLimit, verdictOf } from './finding.js';

test('a limit that is met exactly does not fail by the noise of a sum', () => {
  // 0.1 + 0.2 is 0.30000000000000004 in binary: 0.3 m were allowed.
  expect((0.1 + 0.2) / 0.3).toBeGreaterThan(1);
  expect(verdictOf((0.1 + 0.2) / 0.3)).toBe('attention');
  fc.assert(
    fc.property(
      fc.double({ min: 0.01, max: 20, noNaN: true }),
      fc.double({ min: -7, max: 7, noNaN: true }),
      (d, turn) => {
        const across = Math.hypot(d * Math.cos(turn), d * Math.sin(turn));
        expect(overLimit(across / d)).toBe(false);
      },
    ),
  );
});

test('what is over by anything that can be measured fails', () => {
  // A tenth of a micrometre in ten metres is a share of 1e-8.
  expect(verdictOf(1 + 1e-8)).toBe('fails');
  expect(verdictOf(0.9)).toBe('meets');
  expect(verdictOf(0.9 * (1 + 1e-12))).toBe('meets');
  expect(verdictOf(0.91)).toBe('attention');
  expect(verdictOf(Number.NaN)).toBe('not assessed');
});
