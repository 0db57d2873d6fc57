import { signedArea } from '@cloche/engine';
import { expect, test } from 'vitest';
import { hatchBand, outset } from './room.js';

test('hatching stays between the rings', () => {
  const outer = [
    [0, 0],
    [100, 0],
    [100, 60],
    [0, 60],
  ] as const;
  const inner = [
    [10, 10],
    [90, 10],
    [90, 50],
    [10, 50],
  ] as const;
  const marks = hatchBand(outer, inner, 2);
  expect(marks.length).toBeGreaterThan(50);
  const total = marks.reduce((sum, mark) => {
    const [x1, y1, x2, y2] = mark.mark === 'path' ? mark.d.match(/-?[\d.]+/g)!.map(Number) : [];
    const [mx, my] = [(x1! + x2!) / 2, (y1! + y2!) / 2];
    expect(mx > 10 && mx < 90 && my > 10 && my < 50).toBe(false);
    return sum + Math.hypot(x2! - x1!, y2! - y1!);
  }, 0);
  // Lines 2 mm apart cover an area of 2 mm times their length: the band has 100 * 60 - 80 * 40 mm2.
  expect((total * 2) / 2800).toBeCloseTo(1, 1);
});

test('a rectangle moved outward grows by twice the distance on each side', () => {
  const grown = outset(
    [
      [0, 0],
      [4, 0],
      [4, 3],
      [0, 3],
    ],
    0.2,
  );
  expect(signedArea(grown)).toBeCloseTo(4.4 * 3.4, 12);
});
