import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fitted, fittedBetween, scaled, toPlan, toScreen } from './view.js';

const coordinate = fc.double({ min: -50, max: 50, noNaN: true });
const point = fc.tuple(coordinate, coordinate);
const view = fc.record({ middle: point, scale: fc.double({ min: 10, max: 500, noNaN: true }) });
const size = { width: 800, height: 600 };

test('screen and plan are each other turned back', () => {
  fc.assert(
    fc.property(view, point, (v, p) => {
      const back = toPlan(v, size, toScreen(v, size, p));
      expect(back[0]).toBeCloseTo(p[0], 8);
      expect(back[1]).toBeCloseTo(p[1], 8);
    }),
  );
});

test('scaling keeps the point under the pointer', () => {
  fc.assert(
    fc.property(view, point, fc.double({ min: 0.5, max: 2, noNaN: true }), (v, p, factor) => {
      const fixed = toScreen(v, size, p);
      const after = toScreen(scaled(v, size, fixed, factor), size, p);
      expect(after[0]).toBeCloseTo(fixed[0], 5);
      expect(after[1]).toBeCloseTo(fixed[1], 5);
    }),
  );
});

test('a fitted box lies inside its margins', () => {
  const box = { min: [1, 2] as const, max: [9, 5] as const };
  const v = fitted(box, size, 50);
  const [left, bottom] = toScreen(v, size, box.min);
  const [right, top] = toScreen(v, size, box.max);
  expect(Math.min(left, size.width - right)).toBeGreaterThanOrEqual(50 - 1e-9);
  expect(Math.min(top, size.height - bottom)).toBeGreaterThanOrEqual(50 - 1e-9);
});

test('a box fitted between edges stands in the middle of what they leave', () => {
  const box = { min: [1, 2] as const, max: [5, 9] as const };
  const v = fittedBetween(box, size, { side: 60, top: 80, bottom: 200 });
  const [, bottom] = toScreen(v, size, box.min);
  const [, top] = toScreen(v, size, box.max);
  expect(top).toBeCloseTo(80, 9);
  expect(bottom).toBeCloseTo(600 - 200, 9);
});
