import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { valueOf } from '../floor/index.js';
import { bestClass, classLimit, classLimitUnrounded, classStateAllowed, sizesAllowed } from './class-limit.js';

const um = (size: number) => size * 1e-6;

// ISO 14644-1:2015, Table 1 (public reproduction). Columns 0.1, 0.2, 0.3, 0.5, 1, 5 um; null where the table sets no limit.
test.each([
  [1, [10, null, null, null, null, null]],
  [2, [100, 24, 10, null, null, null]],
  [3, [1000, 237, 102, 35, null, null]],
  [4, [10_000, 2370, 1020, 352, 83, null]],
  [5, [100_000, 23_700, 10_200, 3520, 832, null]],
  [6, [1_000_000, 237_000, 102_000, 35_200, 8320, 293]],
  [7, [null, null, null, 352_000, 83_200, 2930]],
  [8, [null, null, null, 3_520_000, 832_000, 29_300]],
  [9, [null, null, null, 35_200_000, 8_320_000, 293_000]],
] as const)('class %d reads as the table', (n, row) => {
  const found = [0.1, 0.2, 0.3, 0.5, 1, 5].map((size) => {
    const limit = classLimit(n, um(size));
    return limit.ok ? limit.value : null;
  });
  expect(found).toEqual(row);
});

// ISO 14644-1:2015, Table E.1 (values equal the formula; empty cells from memory).
test.each([
  [1.5, [32, null, null, null, null, null]],
  [2.5, [316, 75, 32, null, null, null]],
  [3.5, [3160, 748, 322, 111, null, null]],
  [4.5, [31_600, 7480, 3220, 1110, 263, null]],
  [5.5, [316_000, 74_800, 32_200, 11_100, 2630, null]],
  [6.5, [3_160_000, 748_000, 322_000, 111_000, 26_300, 925]],
  [7.5, [null, null, null, 1_110_000, 263_000, 9250]],
  [8.5, [null, null, null, 11_100_000, 2_630_000, 92_500]],
] as const)('class %d reads as the table of decimal classes', (n, row) => {
  const found = [0.1, 0.2, 0.3, 0.5, 1, 5].map((size) => {
    const limit = classLimit(n, um(size));
    return limit.ok ? limit.value : null;
  });
  expect(found).toEqual(row);
});

describe('what the tables do not decide is refused', () => {
  test.each([
    [12, 0.5, 'air/class-range'],
    [Number.NaN, 0.5, 'air/class-range'],
    [5.25, 0.5, 'air/class-step'],
    [5, 7, 'air/size-range'],
    [5, 0.05, 'air/size-range'],
    [5, 5, 'air/cell-empty'],
    [5, 2, 'air/cell-undecided'],
  ])('class %d at %d um', (n, size, code) => {
    const limit = classLimit(n, um(size));
    expect(limit.ok ? 'ok' : limit.problems[0]!.code).toBe(code);
  });
  test('class 9 is for the operational state only (Table 1, note g)', () => {
    const atRest = classStateAllowed(9, 'at-rest');
    expect(atRest.ok ? 'ok' : atRest.problems[0]!.code).toBe('air/class-state');
    expect(classStateAllowed(9, 'operational').ok).toBe(true);
    expect(classStateAllowed(8, 'at-rest').ok).toBe(true);
  });
  test('sizes stand 1.5 times apart or more (4.2)', () => {
    const close = sizesAllowed([um(0.7), um(0.5)]);
    expect(close.ok ? 'ok' : close.problems[0]!.code).toBe('air/sizes-too-close');
    expect(sizesAllowed([um(0.5), um(1)]).ok).toBe(true);
    expect(sizesAllowed([um(0.2), um(0.3)]).ok).toBe(true);
  });
  test('more than class 9 allows meets no class', () => {
    const best = bestClass(4e7, um(0.5));
    expect(best.ok ? 'ok' : best.problems[0]!.code).toBe('air/no-class');
  });
});

test('the best class allows the concentration and the next cleaner one does not', () => {
  fc.assert(
    fc.property(fc.double({ min: 40, max: 3.5e7, noNaN: true }), (concentration) => {
      const { decimal, whole } = valueOf(bestClass(concentration, um(0.5)));
      expect(valueOf(classLimit(decimal, um(0.5)))).toBeGreaterThanOrEqual(concentration);
      const cleaner = classLimit(Math.round(decimal * 10 - 1) / 10, um(0.5));
      if (cleaner.ok) expect(cleaner.value).toBeLessThan(concentration);
      expect(whole).toBe(Math.ceil(decimal));
    }),
    { seed: 1 },
  );
});

test('ten classes of a tenth are a factor of ten, and larger particles are fewer', () => {
  expect(classLimitUnrounded(6, um(0.5)) / classLimitUnrounded(5, um(0.5))).toBeCloseTo(10, 12);
  expect(classLimitUnrounded(5, um(0.1))).toBeCloseTo(1e5, 6);
  expect(classLimitUnrounded(5, um(1))).toBeLessThan(classLimitUnrounded(5, um(0.5)));
});
