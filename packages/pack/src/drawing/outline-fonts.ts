import { create, type Font } from 'fontkit';
import { printable } from './printable.js';

/** A letter of a line of text: the glyph and where it begins, in units of the font. */
export interface SetLetter {
  readonly glyph: number;
  readonly x: number;
}

export interface SetLine {
  readonly letters: readonly SetLetter[];
  readonly width: number;
}

/** One weight, set letter by letter with tabular figures and without kerning, as in the report. */
export interface OutlineFont {
  readonly unitsPerEm: number;
  readonly set: (words: string) => SetLine;
  /** Outline of a glyph as path data, y upward; empty for a space. */
  readonly outline: (glyph: number) => string;
}

export interface OutlineFonts {
  readonly regular: OutlineFont;
  readonly medium: OutlineFont;
}

const digits = '0123456789';

function outlineFont(bytes: Uint8Array): OutlineFont {
  const font: Font = create(bytes);
  const tabular = new Map(font.layout(digits, ['tnum']).glyphs.map((glyph, i) => [digits.charCodeAt(i), glyph]));
  const set = (words: string): SetLine => {
    let x = 0;
    const letters = [...printable(words)].map((letter) => {
      const code = letter.codePointAt(0)!;
      const glyph = tabular.get(code) ?? font.glyphForCodePoint(code);
      const at = { glyph: glyph.id, x };
      x += glyph.advanceWidth;
      return at;
    });
    return { letters, width: x };
  };
  return { unitsPerEm: font.unitsPerEm, set, outline: (glyph) => font.getGlyph(glyph).path.toSVG() };
}

/** The shipped font read from its bytes, so that drawings carry their letters as outlines. */
export const outlineFonts = (fonts: { readonly regular: Uint8Array; readonly medium: Uint8Array }): OutlineFonts => ({
  regular: outlineFont(fonts.regular),
  medium: outlineFont(fonts.medium),
});
