import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { composedFrom, type DesignInput, designFrom, heavyFindings, lightFindings, revisionOf } from './design-from.js';
import { inOrder } from './floor/finding.js';
import { forgetRemembered } from './floor/remembered.js';

const root = new URL('../../../', import.meta.url);
const texts = (folder: string) =>
  readdirSync(new URL(folder, root))
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => ({ name, text: readFileSync(new URL(`${folder}${name}`, root), 'utf8') }));

const catalogueFiles = texts('catalogue/');
const ruleTexts = Object.fromEntries(texts('rules/').map(({ name, text }) => [name.replace('.yaml', ''), text]));
const input = (briefText: string): DesignInput => ({ briefText, catalogueFiles, ruleTexts });

/** What a person can see of a result, as letters. */
const seen = (result: ReturnType<typeof designFrom>): string =>
  JSON.stringify(
    result.ok
      ? [result.value.design, result.value.findings, result.value.revision, result.value.complete]
      : result.problems,
  );

const numbers = /(?<=[[\s,])\d+(?:\.\d+)?(?= (?:m|mm|kg|deg|W|mW|nm|lx)\b)/g;

/** The brief with one of its quantities made a little larger or smaller. */
function edited(text: string, [which, factor]: readonly [number, number]): string {
  const found = [...text.matchAll(numbers)];
  const one = found[which % found.length]!;
  const value = Number((Number(one[0]) * factor).toFixed(4));
  return text.slice(0, one.index) + value + text.slice(one.index + one[0].length);
}

describe('what is remembered from edit to edit', () => {
  test.each(texts('examples/').map(({ name, text }) => [name, text] as const))(
    '%s: after any edits, forth and back, everything is byte for byte what is computed with nothing remembered',
    (_, text) => {
      const edit = fc.tuple(fc.nat(10_000), fc.constantFrom(0.9, 0.99, 1.01, 1.1, 1.5));
      fc.assert(
        fc.property(fc.array(edit, { minLength: 2, maxLength: 4 }), (edits) => {
          const states = [text];
          for (const each of edits) states.push(edited(states.at(-1)!, each));
          const anew = states.map((state) => {
            forgetRemembered();
            return seen(designFrom(input(state)));
          });
          const back = [...states].reverse().map((state) => seen(designFrom(input(state))));
          expect(back.reverse()).toEqual(anew);
          expect(states.map((state) => seen(designFrom(input(state))))).toEqual(anew);
        }),
        { numRuns: 3 },
      );
    },
    120_000,
  );
});

test.each(texts('examples/').map(({ name, text }) => [name, text] as const))(
  '%s: the light and the heavy findings are all findings, none twice',
  (_, text) => {
    const whole = designFrom(input(text));
    const made = composedFrom(input(text));
    if (!whole.ok || !made.ok) throw new Error('the example cannot be read');
    expect(inOrder([...lightFindings(made.value), ...heavyFindings(made.value)])).toEqual(whole.value.findings);
    expect(heavyFindings(made.value).length).toBeGreaterThan(0);
    expect(revisionOf(made.value)).toBe(whole.value.revision);
  },
);
