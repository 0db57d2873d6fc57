import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { byLikeness, editDistance, meantHint, nearest } from './nearest.js';

describe('edit distance', () => {
  // kitten/sitting is the example of most textbooks; the swapped pair counts once in the optimal alignment.
  test.each([
    ['kitten', 'sitting', 3],
    ['saturday', 'sunday', 3],
    ['widht', 'width', 1],
    ['', 'abc', 3],
  ])('%s to %s', (a, b, expected) => {
    expect(editDistance(a, b)).toBe(expected);
  });

  test('is the same both ways, zero only for equal words, and never above the longer word', () => {
    const word = fc.string({ maxLength: 8 });
    fc.assert(
      fc.property(word, word, (a, b) => {
        expect(editDistance(a, b)).toBe(editDistance(b, a));
        expect(editDistance(a, b) === 0).toBe(a === b);
        expect(editDistance(a, b)).toBeLessThanOrEqual(Math.max(a.length, b.length));
      }),
      { seed: 3 },
    );
  });
});

describe('what someone may have meant', () => {
  const fields = ['beamHeight', 'direction', 'wavelength', 'width', 'height'];

  test.each([
    ['widht', ['width']],
    ['beam_height', ['beamHeight']],
    ['WAVELENGTH', ['wavelength']],
    ['zzzzzz', []],
  ])('%s', (word, expected) => {
    expect(nearest(word, fields).slice(0, 1)).toEqual(expected);
  });

  test('all words are kept in order of likeness', () => {
    expect(byLikeness('hight', fields)[0]).toBe('height');
    expect([...byLikeness('hight', fields)].sort()).toEqual([...fields].sort());
  });

  test('a hint lists what is known when nothing is alike', () => {
    expect(meantHint('zzzzzz', fields)).toContain('beamHeight, direction, height');
    expect(meantHint('zzzzzz', [])).toBe('There is none of these yet.');
  });
});
