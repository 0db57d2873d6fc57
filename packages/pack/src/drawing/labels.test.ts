import { describe, expect, test } from 'vitest';
import { LabelSpace } from './labels.js';
import { box, fittedText, line, textWidth, wrapped } from './marks.js';
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

  test('lines stay in sight: a free place is better than one on a line', () => {
    const space = new LabelSpace();
    space.keepClear([line([0, 9], [60, 9], { width: 0.5, colour: '#000000' })]);
    expect(
      textAt(
        space.place(
          label([
            [10, 10],
            [10, 20],
          ]),
        ),
      ),
    ).toEqual([10, 20]);
  });

  test('what a white rectangle hides need not stay in sight', () => {
    const space = new LabelSpace();
    space.keepClear([
      line([10, 9], [20, 9], { width: 0.5, colour: '#000000' }),
      box(0, 0, 60, 30, undefined, '#FFFFFF'),
    ]);
    expect(
      textAt(
        space.place(
          label([
            [10, 10],
            [10, 20],
          ]),
        ),
      ),
    ).toEqual([10, 10]);
  });

  test('in a crowd a label stands aside with a leader to its point', () => {
    const space = new LabelSpace();
    space.take([20, 20], 8);
    const marks = space.place({ ...label([[18, 20]]), leaderTo: [[20, 20]] });
    const [at] = [textAt(marks)!];
    expect(Math.hypot(at[0] - 20, at[1] - 20)).toBeGreaterThan(8);
    expect(marks.some((m) => m.mark === 'path' && m.d.startsWith('M20 20 L'))).toBe(true);
  });

  test('no label leaves the part of the sheet that it may use', () => {
    const space = new LabelSpace({ left: 0, right: 40, top: 0, bottom: 30 });
    expect(
      textAt(
        space.place(
          label([
            [35, 10],
            [10, 10],
          ]),
        ),
      ),
    ).toEqual([10, 10]);
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

describe('words in a cell', () => {
  const fitted = (words: string, room: number) => fittedText([0, 0], words, 3, room) as Extract<Mark, { mark: 'text' }>;

  test('stand as they are where there is room', () => {
    expect(fitted('Plan', 40)).toMatchObject({ text: 'Plan', height: 3 });
  });

  test('are set smaller first, and whole', () => {
    const mark = fitted('European Union, start values', 40);
    expect(mark.text).toBe('European Union, start values');
    expect(mark.height).toBeLessThan(3);
    expect(textWidth(mark.text, mark.height)).toBeLessThanOrEqual(40 + 1e-9);
  });

  // ISO 3098 has no lettering under 1.8 mm (handbook of deliverables 1.4, published).
  test.each([5, 20, 45])('never leave a cell of %d mm and never go below 1.8 mm', (room) => {
    const mark = fitted('Institute for the long names of invented institutes, department two', room);
    expect(textWidth(mark.text, mark.height)).toBeLessThanOrEqual(room + 1e-9);
    expect(mark.height).toBeGreaterThanOrEqual(1.8);
    expect(mark.text.endsWith('…')).toBe(true);
  });
});
