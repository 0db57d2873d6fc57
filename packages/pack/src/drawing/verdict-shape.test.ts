import { type Verdict, verdictOrder } from '@cloche/engine';
import { expect, test } from 'vitest';
import { verdictInk } from './inks.js';
import { verdictShape } from './verdict-shape.js';

/** WCAG 2.2 definition of relative luminance and contrast ratio. */
function contrastOnWhite(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((i) => {
    const c = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 1.05 / (0.2126 * r + 0.7152 * g + 0.0722 * b + 0.05);
}

// Handbook of deliverables 7.2 (computed there with the same definition).
test.each([
  ['meets', 7.39],
  ['attention', 2.25],
  ['fails', 8.15],
  ['not assessed', 5.33],
] as const)('the ink of "%s" has a contrast of %d on white', (verdict, ratio) => {
  expect(contrastOnWhite(verdictInk[verdict])).toBeCloseTo(ratio, 2);
});

test('no two verdicts share a shape', () => {
  const outlines = verdictOrder.map((verdict: Verdict) =>
    verdictShape(verdict, [0, 0], 10)
      .map((m) => (m.mark === 'path' ? m.d : ''))
      .join(),
  );
  expect(new Set(outlines).size).toBe(verdictOrder.length);
});
