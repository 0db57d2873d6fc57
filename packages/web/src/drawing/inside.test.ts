import { parseQuantity, type Vec2 } from '@cloche/engine';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { insideAt, isInside, writtenStretch } from './inside.js';
import { writtenLength } from './length-text.js';
import { boxAt } from './scene.js';

const foot = 0.3048;
const outline: Vec2[] = [
  [0, 0],
  [26 * foot, 0],
  [24 * foot, 20 * foot],
  [0, 20 * foot],
];
const read = (text: string): number => {
  const value = parseQuantity(text, 'length');
  if (!value.ok) throw new Error(text);
  return value.value;
};

test('what touches a wall is inside once it is written, in either system', () => {
  const size = fc.double({ min: 0.05, max: 1, noNaN: true });
  const along = fc.double({ min: 0.6, max: 5, noNaN: true });
  fc.assert(
    fc.property(size, along, fc.constantFrom('metric' as const, 'imperial' as const), (width, y, units) => {
      const ringAt = (at: Vec2) => boxAt(at, [width, width]);
      // Its north-east corner on the slanting wall from (26, 0) to (24, 20) ft.
      const wall = 26 * foot - (y + width / 2) / 10;
      const at = insideAt(outline, [wall - width / 2, y], ringAt, units);
      expect(at).not.toBeNull();
      const place = at!.map((v) => read(writtenLength(v, units))) as unknown as Vec2;
      expect(isInside(outline, ringAt(place))).toBe(true);
    }),
  );
});

test('what stands over by a millimetre is outside', () => {
  expect(insideAt(outline, [0.149, 1], (at) => boxAt(at, [0.3, 0.3]), 'metric')).toBeNull();
});

test('an opening at the end of a wall ends no later than the wall, as it is written', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1.2, max: 12, noNaN: true }),
      fc.double({ min: 0.3, max: 1.1, noNaN: true }),
      fc.constantFrom('metric' as const, 'imperial' as const),
      (length, width, units) => {
        const { at, width: wide } = writtenStretch(length - width, width, length, units);
        expect(read(at) + read(wide)).toBeLessThanOrEqual(length + 1e-7);
      },
    ),
  );
});
