import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cardCorner, gap } from './card-corner.js';

const sheet = { width: 800, height: 600 };
const card = { width: 270, height: 300 };

test('the card stands right of a thing that leaves room there', () => {
  expect(cardCorner({ min: [100, 100], max: [200, 200] }, card, sheet)).toEqual([200 + gap, 100]);
});

test('the card goes left, or under, where only there is room', () => {
  expect(cardCorner({ min: [500, 100], max: [780, 200] }, card, sheet)).toEqual([500 - gap - 270, 100]);
  expect(cardCorner({ min: [100, 50], max: [700, 150] }, card, sheet)).toEqual([100, 150 + gap]);
});

test('the card is always whole on the sheet', () => {
  const x = fc.integer({ min: -200, max: 1000 });
  const extent = fc.integer({ min: 0, max: 900 });
  fc.assert(
    fc.property(x, x, extent, extent, (left, top, width, height) => {
      const [cx, cy] = cardCorner({ min: [left, top], max: [left + width, top + height] }, card, sheet);
      expect(cx).toBeGreaterThanOrEqual(gap);
      expect(cy).toBeGreaterThanOrEqual(gap);
      expect(cx + card.width).toBeLessThanOrEqual(sheet.width - gap);
      expect(cy + card.height).toBeLessThanOrEqual(sheet.height - gap);
    }),
  );
});
