import { describe, expect, test } from 'vitest';
import { findings } from '../../test/fixture.js';
import { fonts } from '../../test/fonts.js';
import { printable } from './printable.js';
import { shortened } from './report.js';
import { allCautions, allSources } from './words.js';

describe('letters that the shipped font lacks are replaced, the others kept', () => {
  // Format 4 or 12 of the cmap table would tell; here the font's own reader is asked.
  test.each(['regular', 'medium'] as const)('every letter of a technical text is in the %s weight', async (weight) => {
    const { create } = (await import('fontkit')) as unknown as {
      create(bytes: Uint8Array): { hasGlyphForCodePoint(code: number): boolean };
    };
    const font = create(fonts[weight]);
    const letters = printable('µ² ³ ⁴ Ø ± ≤ ≥ → × · ° α β λ δ η ρ σ φ ω Δ Ω √ − – … 11\u2009000 \u2300');
    const missing = [...letters].filter((letter) => !font.hasGlyphForCodePoint(letter.codePointAt(0)!));
    expect(missing).toEqual([]);
  });
});

describe('the summary of a long message', () => {
  test('ends with a whole sentence and says where the rest is', () => {
    const message = `${'The bay is too close. '.repeat(20)}Done.`;
    const words = shortened(message);
    expect(words.length).toBeLessThan(300);
    expect(words).toMatch(/The bay is too close\. In full under Calculations\.$/);
  });

  test('a short message is printed whole', () => {
    expect(shortened('It fits.')).toBe('It fits.');
  });
});

test('each source and each caution stands once', () => {
  const sources = allSources([...findings, ...findings], []);
  expect(new Set(sources).size).toBe(sources.length);
  expect(sources).toContain('ISO 14644-1:2015, Table 1 (published)');
  expect(allCautions([...findings, ...findings])).toEqual([...new Set(allCautions(findings))]);
});
