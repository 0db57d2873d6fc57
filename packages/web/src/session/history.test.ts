import fc from 'fast-check';
import { expect, test } from 'vitest';

import { briefData, withEntry, withValue } from '../brief/document.js';
import { listAt } from '../brief/path.js';
import { emptyHistory, type History, redoStep, undoStep, withStep, withSteps } from './history.js';
import { carried, inverse, type NewStep, replayed, rewound, spliceBetween, spliced } from './steps.js';

const edit = (group: string, before: string, after: string): NewStep => ({
  window: 'w',
  group,
  kind: 'edit',
  splices: spliceBetween(before, after),
});

const undo = (text: string, history: History): { text: string; history: History } | null => {
  const step = undoStep(history);
  return step && { text: spliced(text, step.splices)!, history: withStep(history, step) };
};

test('undo goes back and redo forward to the same text', () => {
  const history = withSteps(emptyHistory, [edit('1', 'a', 'b'), edit('2', 'b', 'c')]);
  const back = undo('c', history)!;
  expect(back.text).toBe('b');
  expect(spliced('b', redoStep(back.history)!.splices)).toBe('c');
});

test('edits of one group are undone together', () => {
  const history = withSteps(emptyHistory, [edit('x', 'a', 'ab'), edit('x', 'ab', 'abc'), edit('x', 'abc', 'q')]);
  const back = undo('q', history)!;
  expect(back.text).toBe('a');
  expect(undoStep(back.history)).toBeNull();
});

test('an edit after undo forgets what was undone', () => {
  const back = undo('b', withSteps(emptyHistory, [edit('1', 'a', 'b')]))!;
  expect(redoStep(withStep(back.history, edit('2', 'a', 'z')))).toBeNull();
});

test('nothing to undo is told', () => {
  expect(undoStep(emptyHistory)).toBeNull();
  expect(redoStep(emptyHistory)).toBeNull();
});

test('far more than a few hundred edits can be undone', () => {
  let history = emptyHistory;
  for (let i = 0; i < 5000; i++) history = withStep(history, edit(String(i), `${i}`, `${i + 1}`));
  let text = '5000';
  for (let back = undo(text, history); back; back = undo(text, history)) ({ text, history } = back);
  expect(text).toBe('0');
});

test('a character of two units is never cut', () => {
  // The two signs share their first unit, the next two their second.
  for (const [a, b] of [
    ['x\u{1F600}y', 'x\u{1F601}y'],
    ['\u{1F600}', '\u{1FA00}'],
    ['a\u{1F600}', 'a\u{1F600}\u{1F600}'],
  ] as const)
    for (const { out, in: put } of spliceBetween(a, b)) {
      expect(out).not.toMatch(/\p{Surrogate}/u);
      expect(put).not.toMatch(/\p{Surrogate}/u);
    }
});

test('a splice leads from one text to the other and its inverse back', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), fc.string({ unit: 'grapheme' }), (a, b) => {
      const splices = spliceBetween(a, b);
      expect(spliced(a, splices)).toBe(b);
      expect(spliced(b, inverse(splices))).toBe(a);
    }),
  );
});

test('a caret stays between the same letters when the text changes elsewhere', () => {
  expect(carried(2, 'abc', 'abcd')).toBe(2);
  expect(carried(2, 'abc', 'xxabc')).toBe(4);
  expect(carried(2, 'abc', 'bc')).toBe(1);
  expect(carried(2, 'abcd', 'axyd')).toBe(3);
});

test('a splice that does not fit is refused', () => {
  expect(spliced('abc', [{ at: 1, out: 'x', in: 'y' }])).toBeNull();
  expect(spliced('abc', [{ at: 9, out: '', in: 'y' }])).toBeNull();
});

/** One random edit of a brief, of the kinds that the workbench makes. */
const anEdit = fc.oneof(
  fc.record({ do: fc.constant('value' as const), at: fc.nat(3), value: fc.string() }),
  fc.record({ do: fc.constant('entry' as const), id: fc.string({ minLength: 1, maxLength: 6 }) }),
  fc.record({ do: fc.constant('remove' as const), at: fc.nat(3) }),
  fc.record({ do: fc.constant('text' as const), at: fc.nat(), put: fc.string({ unit: 'grapheme', maxLength: 4 }) }),
);

const start = `# invented
tables:
  - { id: table-1, at: [2 m, 1.5 m] } # the long one
  - id: table-2
    length: 2.4 m
`;

function apply(text: string, change: typeof anEdit extends fc.Arbitrary<infer T> ? T : never): string {
  switch (change.do) {
    case 'value':
      return change.at < listAt(briefData(text), ['tables']).length
        ? withValue(text, ['tables', change.at, 'name'], change.value)
        : text;
    case 'entry':
      return withEntry(text, ['tables'], { id: change.id });
    case 'remove':
      return withValue(text, ['tables', change.at], undefined);
    case 'text': {
      // A comment, so that the text stays one that can be read.
      const at = text.indexOf('\n');
      return `# ${change.put.replace(/[\r\n\u2028\u2029\u0085]/g, '')}${text.slice(at)}`;
    }
  }
}

test('a hundred random edits: undo all is the start, redo all is the end, and the replay is the text', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(anEdit, fc.nat(4)), { minLength: 100, maxLength: 100 }), (changes) => {
      let text = start;
      const steps: NewStep[] = [];
      for (const [change, group] of changes) {
        const next = apply(text, change);
        if (next === text) continue;
        steps.push(edit(String(group), text, next));
        text = next;
      }
      expect(replayed(start, steps)).toBe(text);
      expect(rewound(text, steps)).toBe(start);
      const end = text;
      let history = withSteps(emptyHistory, steps);
      for (let back = undo(text, history); back; back = undo(text, history)) ({ text, history } = back);
      expect(text).toBe(start);
      for (let step = redoStep(history); step; step = redoStep(history)) {
        text = spliced(text, step.splices)!;
        history = withStep(history, step);
      }
      expect(text).toBe(end);
    }),
    { numRuns: 8 },
  );
}, 60_000);
