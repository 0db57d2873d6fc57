import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { dimensionChain, dimensionText, distinctStops } from './dimension.js';
import { textWidth } from './marks.js';

/** The numbers of a lying chain at 1:50, with where each begins, ends and stands above the line. */
const numbersOf = (stops: readonly number[]) =>
  dimensionChain({ stops, along: (m) => m * 20, across: 100, from: 110, upright: false }).flatMap((m) =>
    m.mark === 'text'
      ? [
          {
            words: m.text,
            from: m.at[0] - textWidth(m.text, dimensionText) / 2,
            to: m.at[0] + textWidth(m.text, dimensionText) / 2,
            line: m.at[1],
          },
        ]
      : [],
  );

const chains = fc
  .array(fc.integer({ min: 0, max: 12_000 }), { minLength: 2, maxLength: 14 })
  .map((mm) => distinctStops(mm.map((v) => v / 1000)))
  .filter((stops) => stops.length > 1);

test('no two numbers of a chain overlap, however short its pieces', () => {
  fc.assert(
    fc.property(chains, (stops) => {
      const numbers = numbersOf(stops);
      for (const [i, a] of numbers.entries())
        for (const b of numbers.slice(i + 1))
          if (Math.abs(a.line - b.line) < dimensionText)
            expect(Math.min(a.to, b.to) - Math.max(a.from, b.from)).toBeLessThan(1e-6);
    }),
  );
});

test('the pieces of a chain add up to its whole', () => {
  fc.assert(
    fc.property(chains, (stops) => {
      const sum = numbersOf(stops).reduce((all, n) => all + Number(n.words.replace(/\s/g, '')), 0);
      expect(sum).toBe(Math.round(stops[stops.length - 1]! * 1000) - Math.round(stops[0]! * 1000));
    }),
  );
});
