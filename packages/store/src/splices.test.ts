import { valueOf } from '@cloche/engine';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { openStore } from './index.js';
import { applySplices, longestText, replay, textProblems } from './splices.js';
import type { NewStep, Splice } from './types.js';

/** A change by rough places: brought to a splice that fits the text it meets. */
interface Wish {
  readonly at: number;
  readonly out: number;
  readonly put: string;
}

const wish: fc.Arbitrary<Wish> = fc.record({
  at: fc.nat(400),
  out: fc.nat(12),
  put: fc.oneof(fc.string({ maxLength: 12 }), fc.constantFrom('\n', 'ü', 'width: 2 m\n', '\u{1F9EA}')),
});

/** Splices for a text, and the text after them, by a list of its characters: another way than the one that is tested. */
function fitted(text: string, wishes: readonly Wish[]): { readonly splices: Splice[]; readonly after: string } {
  const characters = [...text];
  const splices = wishes.map((w): Splice => {
    const from = characters.length === 0 ? 0 : w.at % (characters.length + 1);
    const at = characters.slice(0, from).join('').length;
    const out = characters.splice(from, w.out, ...w.put).join('');
    return { at, out, in: w.put };
  });
  return { splices, after: characters.join('') };
}

const step = (splices: readonly Splice[]): NewStep => ({ window: 'w', group: 'g', kind: 'edit', splices });

test('whatever is spliced in any order, the head, the replay and an independent list of characters agree', async () => {
  const store = valueOf(await openStore(null));
  await fc.assert(
    fc.asyncProperty(
      fc.string({ maxLength: 40 }),
      fc.array(fc.array(fc.array(wish, { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 3 }), {
        maxLength: 6,
      }),
      async (start, appends) => {
        const id = await store.projects.create({ text: start, name: '', at: '2026-10-01T12:00:00.000Z' });
        let now = start;
        let base = 0;
        for (const wishes of appends) {
          const steps = wishes.map((each) => {
            const { splices, after } = fitted(now, each);
            now = after;
            return step(splices);
          });
          const made = await store.steps.append(id, { base, steps, at: '2026-10-01T12:00:01.000Z' });
          base += steps.length;
          expect(made).toMatchObject({ outcome: 'appended', seq: base });
        }
        expect((await store.projects.get(id))!.text).toBe(now);
        const { seq, steps } = (await store.steps.since(id, 0))!;
        expect(seq).toBe(base);
        expect(valueOf(replay(start, steps))).toBe(now);
      },
    ),
    { seed: 11, numRuns: 60 },
  );
  await store.close();
});

describe('a splice that does not fit is refused with its index', () => {
  test.each<[string, Splice]>([
    ['another text stands there', { at: 0, out: 'x', in: '' }],
    ['it starts after the end', { at: 4, out: '', in: 'x' }],
    ['it takes out more than there is', { at: 2, out: 'cd', in: '' }],
  ])('%s', (_, bad) => {
    const result = applySplices('abc', [{ at: 3, out: '', in: '' }, bad]);
    expect(result.ok ? [] : result.problems.map(({ code, path }) => [code, ...path])).toEqual([
      ['steps/does-not-fit', 'splices', 1],
    ]);
  });

  test('an offset counts in the text that the splices before it have left', () => {
    expect(
      valueOf(
        applySplices('abc', [
          { at: 0, out: 'ab', in: '' },
          { at: 1, out: '', in: 'd' },
        ]),
      ),
    ).toBe('cd');
  });
});

describe('a text that would come back changed is refused', () => {
  test.each([
    ['half of a pair', 'a\ud83d', 'text/broken-character'],
    ['a NUL', 'a\0b', 'text/nul'],
    ['more than is read', 'a'.repeat(longestText + 1), 'text/too-long'],
  ])('%s', (_, text, code) => {
    expect(textProblems(text).map((p) => p.code)).toEqual([code]);
  });

  test('after any step of several, though halves may pass between the splices of one', () => {
    const whole = '\u{1F9EA}';
    const halves: Splice[] = [
      { at: 1, out: whole[1]!, in: '' },
      { at: 0, out: whole[0]!, in: '' },
    ];
    expect(valueOf(replay(whole, [step(halves)]))).toBe('');
    const apart = replay(whole, [step([halves[0]!]), step([halves[1]!])]);
    expect(apart.ok ? [] : apart.problems.map((p) => p.path)).toEqual([['steps', 0]]);
  });
});
