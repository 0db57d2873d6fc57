import { describe, expect, test } from 'vitest';
import { LabelSpace } from './labels.js';
import { textWidth, wrapped } from './marks.js';
import type { Mark } from './types.js';

const textAt = (marks: readonly Mark[]) => marks.flatMap((m) => (m.mark === 'text' ? [m.at] : []))[0];
const label = (places: readonly (readonly [number, number])[]) => ({
  words: 'Table A',
  height: 2.5,
  places: places.map((at) => ({ at })),
});

describe('labels', () => {
  test('a label takes its first place when that is free', () => {
    expect(
      textAt(
        new LabelSpace().place(
          label([
            [10, 10],
            [10, 20],
          ]),
        ),
      ),
    ).toEqual([10, 10]);
  });

  test('a second label goes to its next place, off the first', () => {
    const space = new LabelSpace();
    space.place(label([[10, 10]]));
    expect(
      textAt(
        space.place(
          label([
            [12, 10.5],
            [12, 20],
          ]),
        ),
      ),
    ).toEqual([12, 20]);
  });

  test('where every place is taken, the least covered one is used: nothing is left out', () => {
    const space = new LabelSpace();
    space.take([10, 10], 30);
    space.take([60, 10], 3);
    expect(
      textAt(
        space.place(
          label([
            [10, 10],
            [58, 10],
          ]),
        ),
      ),
    ).toEqual([58, 10]);
  });

  test('a label without places is not drawn', () => {
    expect(new LabelSpace().place(label([]))).toEqual([]);
  });
});

// hmtx of the shipped font, regular: A 573, B 608 thousandths of the em; capitals are 689 high.
test('text is as wide as its letters', () => {
  expect(textWidth('AB', 6.89)).toBeCloseTo(5.73 + 6.08, 9);
});

test('broken lines hold every word and stay within the width', () => {
  const words = 'A proposal: laser safety officer, licensed engineer, electrician and fire authority decide.';
  const lines = wrapped(words, 2.5, 40);
  expect(lines.join(' ')).toBe(words);
  expect(Math.max(...lines.map((l) => textWidth(l, 2.5)))).toBeLessThanOrEqual(40);
});
