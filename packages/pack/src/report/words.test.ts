import PDFDocument from 'pdfkit';
import { describe, expect, test } from 'vitest';
import { findings } from '../../test/fixture.js';
import { fonts } from '../../test/fonts.js';
import { printable } from '../drawing/printable.js';
import { allCautions, allSources } from './words.js';

describe('letters that the shipped font lacks are replaced, the others kept', () => {
  // Glyph 0 is the box for a missing letter (OpenType specification, cmap table).
  test.each(['regular', 'medium'] as const)('every letter of a technical text is in the %s weight', (weight) => {
    const doc = new PDFDocument({
      autoFirstPage: false,
      bufferPages: false,
      font: null,
      size: [10, 10],
      margin: 0,
      info: {},
    });
    const { font } = doc.registerFont(weight, fonts[weight]).font(weight)._font;
    const letters = printable('µ² ³ ⁴ Ø ± ≤ ≥ → × · ° α β λ δ η ρ σ φ ω Δ Ω √ − – … 11\u2009000 \u2300');
    const missing = [...letters].filter((letter) => font.glyphForCodePoint(letter.codePointAt(0)!).id === 0);
    expect(missing).toEqual([]);
  });
});

test('each source and each caution stands once', () => {
  const sources = allSources([...findings, ...findings], []);
  expect(new Set(sources).size).toBe(sources.length);
  expect(sources).toContain('ISO 14644-1:2015, Table 1 (published)');
  expect(allCautions([...findings, ...findings])).toEqual([...new Set(allCautions(findings))]);
});
