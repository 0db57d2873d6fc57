import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseDocument } from 'yaml';
import { readDocument } from './document.js';
import { sectionsOf } from './sections.js';

const folder = new URL('../../../../examples/', import.meta.url);
const examples = readdirSync(folder)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => readFileSync(new URL(name, folder), 'utf8'));

/** The text as the library reads it as a whole: its data, or null when it finds a fault. */
function asWhole(text: string): unknown {
  const document = parseDocument(text, { strict: true, version: '1.2' });
  if (document.errors.length > 0 || document.warnings.length > 0) return null;
  try {
    return document.toJS({ maxAliasCount: 100 });
  } catch {
    return null;
  }
}

const record = (data: unknown): boolean => typeof data === 'object' && data !== null && !Array.isArray(data);

describe('a text read by sections', () => {
  test.each(examples.map((text, i) => [i, text] as const))(
    'example %i is cut, and nothing of it is lost',
    (_, text) => {
      const sections = sectionsOf(text);
      expect(sections!.length).toBeGreaterThan(4);
      const start = text.slice(0, sections![0]!.at);
      expect(start + sections!.map((s) => s.text).join('')).toBe(text);
    },
  );

  test.each([
    ['an alias from one section to another', 'a: &x 1\nb: *x\n'],
    ['a name that stands twice', 'a: 1\nb: 2\na: 3\n'],
    ['quotes that reach over a name', 'a: "one\nb: two"\n'],
    ['brackets that reach over a name', 'a: [1,\nb: 2]\n'],
    ['several documents', 'a: 1\n---\nb: 2\n'],
    ['a directive', '%YAML 1.1\n---\na: yes\n'],
    ['a tag', 'a: !!str 1\nb: 2\n'],
    ['a list before the names', '- 1\na: 2\n'],
    ['a text that goes on at the edge', 'a: one\ntwo\nb: 3\n'],
    ['a text of several lines', 'a: |\n  one\n\n  two\n\nb: >-\n  three\n\n# end\nc: 4\n'],
    ['comments between', '# one\na: 1\n# two\n\nb: [1, 2]\n'],
    ['a name without value', 'a:\nb:\n  c: 1\n'],
    ['lists at the edge', 'a:\n- 1\n- 2\nb: 3\n'],
    ['a question mark', '? a\n: 1\nb: 2\n'],
    ['a tab', 'a:\n\tb: 1\nc: 2\n'],
  ])('%s: reads as the whole does', (_, text) => {
    const read = readDocument(text, 'brief');
    const whole = asWhole(text);
    expect(read.ok).toBe(record(whole));
    if (read.ok) expect(read.value.data).toEqual(whole);
  });

  test('letters put in or taken out anywhere: data and faults are those of the whole text', () => {
    const letters = fc.constantFrom(
      ...' \n:#-"\'[]{},&*!|>%?a1.m',
      '\nb: ',
      '\n- ',
      '---\n',
      ' #',
      ': ',
      '\ntables: []\n',
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...examples),
        fc.array(fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.nat(3), letters), { maxLength: 3 }),
        (example, edits) => {
          // Begun at a random place, so that the texts are short enough for many.
          let text = example.slice(0, 1500);
          for (const [share, out, put] of edits) {
            const at = Math.floor(share * text.length);
            text = text.slice(0, at) + put + text.slice(at + out);
          }
          const read = readDocument(text, 'brief');
          const whole = asWhole(text);
          expect(read.ok).toBe(record(whole));
          if (read.ok) expect(read.value.data).toEqual(whole);
        },
      ),
      { numRuns: 300 },
    );
  }, 60_000);

  test('places of problems are those of the whole text', () => {
    const read = readDocument('# first\na: 1\nb:\n  c: 2\n', 'brief');
    expect(read.ok && read.value.place(['b', 'c'])).toEqual({ line: 4, column: 6 });
  });
});
