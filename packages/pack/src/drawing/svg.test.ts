import { describe, expect, test } from 'vitest';
import { catalogue, design, issued, revision } from '../../test/fixture.js';
import { fonts } from '../../test/fonts.js';
import { sheetFacts } from '../make-pack.js';
import { outlineFonts } from './outline-fonts.js';
import { planDrawing } from './plan/plan-drawing.js';
import { sheetSvg } from './svg.js';
import type { Mark, Sheet } from './types.js';

const plan = planDrawing(design, { catalogue, facts: sheetFacts({ design, revision, issued }, 1) });
const outlines = outlineFonts(fonts);
const svg = sheetSvg(plan, outlines);
const words = plan.layers.flatMap((l) => l.marks.flatMap((m: Mark) => (m.mark === 'text' ? [m.text] : [])));

describe('a sheet with letters as outlines', () => {
  test('needs no font: it holds no text element and names none', () => {
    expect(svg).not.toContain('<text');
    expect(svg).not.toContain('font-');
  });

  test('defines each glyph once, and every one that it uses', () => {
    const defined = [...svg.matchAll(/<path id="([rm]\d+)"/g)].map((m) => m[1]!);
    const used = [...svg.matchAll(/xlink:href="#([rm]\d+)"/g)].map((m) => m[1]!);
    expect(new Set(defined).size).toBe(defined.length);
    expect(new Set(used)).toEqual(new Set(defined));
  });

  test('keeps every word findable as the name of its letters', () => {
    const named = [...svg.matchAll(/aria-label="([^"]*)"/g)].map((m) =>
      m[1]!.replace(/&lt;/g, '<').replace(/&gt;/g, '>').replace(/&amp;/g, '&'),
    );
    expect(named).toEqual(words);
  });

  test('stays small enough to send', () => {
    expect(svg.length).toBeLessThan(400_000);
  });

  test('is text without fonts, for a page that has ours', () => {
    expect(sheetSvg(plan)).toContain('<text');
  });

  // hmtx of the shipped font, regular: A 573, B 608 thousandths of the em; the last letter ends at the point.
  test('sets words to end at their point', () => {
    const mark: Mark = {
      mark: 'text',
      at: [50, 20],
      text: 'AB',
      height: 2.5,
      anchor: 'end',
      colour: '#000000',
      medium: false,
      turn: 0,
    };
    const one = sheetSvg({ ...plan, layers: [{ id: 'a', title: 'a', marks: [mark] }] } as Sheet, outlines);
    expect(one).toContain('translate(-1181 0)');
    expect([...one.matchAll(/<use [^>]* x="(\d+)"/g)].map((m) => Number(m[1]))).toEqual([0, 573]);
  });

  // OS/2 and hmtx of the shipped font: every tabular figure is 560 thousandths of the em wide.
  test('sets figures in columns: each is as wide as the others', () => {
    expect(outlines.regular.set('1117').width).toBe(4 * 560);
    expect(outlines.medium.set('1').width).toBe(outlines.medium.set('8').width);
  });
});
