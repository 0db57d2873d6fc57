import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stringify } from 'yaml';
import { valueOf } from '../floor/problem.js';
import { largestText, readDocument } from './document.js';

const codes = (text: string) => {
  const read = readDocument(text, 'brief', 'a.yaml');
  return read.ok ? [] : read.problems.map(({ code }) => code);
};

describe('plain data', () => {
  test('every JSON text is read as the platform reads it', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string({ minLength: 1 }), fc.jsonValue({ maxDepth: 3 })), (record) => {
        const text = JSON.stringify(record);
        if (text === '{}' || text.includes('"__proto__"')) return;
        expect(valueOf(readDocument(text, 'brief')).data).toEqual(JSON.parse(text));
      }),
      { seed: 11, numRuns: 200 },
    );
  });

  test('YAML and JSON of the same data are the same', () => {
    const data = { cloche: 1, room: { outline: [['0 m', '1 m']], name: 'yes: no' } };
    expect(valueOf(readDocument(stringify(data), 'brief')).data).toEqual(data);
    expect(valueOf(readDocument(JSON.stringify(data, null, '\t'), 'brief')).data).toEqual(data);
  });

  test('words stay words: no date and no truth value is guessed from them', () => {
    const { data } = valueOf(readDocument('a: 2026-10-01\nb: yes\nc: off\n', 'brief'));
    expect(data).toEqual({ a: '2026-10-01', b: 'yes', c: 'off' });
  });

  test('a key called __proto__ is plain data', () => {
    const { data } = valueOf(readDocument('"__proto__": { x: 1 }\n', 'brief'));
    expect(Object.keys(data)).toEqual(['__proto__']);
    expect(({} as Record<string, unknown>).x).toBeUndefined();
  });
});

describe('places', () => {
  const { place } = valueOf(readDocument('room:\n  doors:\n    - id: a\n      width: 1 m\n    - { id: b }\n', 'brief'));

  test.each([
    [['room', 'doors', 0, 'width'], 4, 14],
    [['room', 'doors', 1, 'id'], 5, 13],
    [['room', 'doors', 1], 5, 7],
  ] as const)('of the value at %s', (path, line, column) => {
    expect(place(path)).toEqual({ line, column });
  });

  test('of a key', () => {
    expect(place(['room', 'doors', 0, 'width'], 'key')).toEqual({ line: 4, column: 7 });
  });

  test('of something that is missing: what is around it', () => {
    expect(place(['room', 'doors', 1, 'height'])).toEqual({ line: 5, column: 7 });
  });

  test('through an alias', () => {
    const { place: at } = valueOf(readDocument('a: &x { w: 1 }\nb: *x\n', 'brief'));
    expect(at(['b', 'w'])).toEqual({ line: 1, column: 12 });
  });
});

describe('refusals', () => {
  const bomb = Array.from({ length: 9 }, (_, i) => {
    const inner =
      i === 0
        ? '1, 1'
        : Array(9)
            .fill(`*a${i - 1}`)
            .join(', ');
    return `a${i}: &a${i} [${inner}]`;
  }).join('\n');

  test.each([
    ['nothing', '', ['brief/empty']],
    ['blanks', ' \n\t\n', ['brief/empty']],
    ['a text that is too large', 'a'.repeat(largestText + 1), ['brief/too-large']],
    ['brackets without end', '['.repeat(100_000), ['brief/too-deep']],
    ['lists without end', '- '.repeat(100_000), ['brief/too-deep']],
    ['a list', '- a\n', ['brief/not-a-record']],
    ['a word', 'hello\n', ['brief/not-a-record']],
    ['two documents', 'a: 1\n---\nb: 2\n', ['brief/several-documents']],
    ['a tag', 'a: !secret 1\n', ['brief/unknown-tag']],
    ['an alias bomb', bomb, ['brief/too-many-aliases']],
    ['an alias to nothing', 'a: *x\n', ['brief/alias']],
    ['an alias within itself', 'a: &x [*x]\n', ['brief/alias']],
    ['a field twice', 'a: 1\na: 2\n', ['brief/syntax']],
    ['several faults of syntax', 'a: 1\na: 2\nb: 1\nb: 2\n', ['brief/syntax', 'brief/syntax']],
  ])('%s', (_, text, expected) => {
    expect(codes(text)).toEqual(expected);
  });

  test('the largest text that is allowed is read', () => {
    expect(codes(`a: ${'b'.repeat(largestText - 3)}`)).toEqual([]);
  });

  test('a fault of syntax says where it is and in which file', () => {
    const read = readDocument('a: 1\nb: 2\na: 3\n', 'rules', 'eu.yaml');
    expect(read.ok ? [] : read.problems).toMatchObject([
      { code: 'rules/syntax', file: 'eu.yaml', place: { line: 3, column: 1 } },
    ]);
  });
});
