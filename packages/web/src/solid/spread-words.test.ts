import fc from 'fast-check';
import { expect, test } from 'vitest';
import { spreadWords } from './spread-words.js';

const word = (x: number, y: number) => ({ x, y, width: 60, height: 18 });

test('words that do not touch stay where they are', () => {
  const words = [word(0, 0), word(61, 0), word(0, 19)];
  expect(spreadWords(words)).toEqual(words);
});

test('a word on another goes beside it, one that finds no place is left out', () => {
  const [first, second] = spreadWords([word(0, 0), word(10, 3)]);
  expect(first).toEqual(word(0, 0));
  expect(Math.abs(second!.y - first!.y)).toBeGreaterThanOrEqual(18);
  expect(spreadWords(Array.from({ length: 12 }, () => word(0, 0))).filter((w) => w === null).length).toBeGreaterThan(0);
});

test('no two words that are written lie on each other', () => {
  const coordinate = fc.integer({ min: 0, max: 300 });
  fc.assert(
    fc.property(fc.array(fc.tuple(coordinate, coordinate), { maxLength: 20 }), (places) => {
      const written = spreadWords(places.map(([x, y]) => word(x, y))).filter((w) => w !== null);
      for (const [i, a] of written.entries())
        for (const b of written.slice(i + 1)) expect(Math.abs(a.x - b.x) >= 60 || Math.abs(a.y - b.y) >= 18).toBe(true);
    }),
  );
});
