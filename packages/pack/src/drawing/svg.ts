import { capRatio } from './font-metrics.js';
import { paper } from './inks.js';
import { coordinate, pointText, textWidth } from './marks.js';
import type { OutlineFont, OutlineFonts } from './outline-fonts.js';
import type { Mark, Pen, Sheet } from './types.js';

/** Text as it may stand in XML; control characters, which XML 1.0 forbids, become spaces. */
export const xmlText = (raw: string): string =>
  raw
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must go
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, ' ')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;');

const penText = (pen: Pen | undefined): string =>
  pen
    ? ` stroke="${pen.colour}" stroke-width="${coordinate(pen.width)}"${
        pen.dash ? ` stroke-dasharray="${pen.dash.map(coordinate).join(' ')}"` : ''
      }`
    : '';

type PathMark = Extract<Mark, { mark: 'path' }>;
type TextMark = Extract<Mark, { mark: 'text' }>;

function pathText(mark: PathMark): string {
  const data = mark.data ? ` data-mark="${xmlText(mark.data)}"` : '';
  return `<path d="${mark.d}" fill="${mark.fill ?? 'none'}"${penText(mark.pen)}${data}/>`;
}

const degrees = (turn: number): string => coordinate((-turn * 180) / Math.PI);

/** Words as text that asks for the font of the workbench by name. */
function writtenText(mark: TextMark): string {
  const place =
    mark.turn === 0
      ? `x="${coordinate(mark.at[0])}" y="${coordinate(mark.at[1])}"`
      : `transform="translate(${pointText(mark.at)}) rotate(${degrees(mark.turn)})"`;
  const anchor = mark.anchor === 'start' ? '' : ` text-anchor="${mark.anchor}"`;
  // Whatever font stands in for ours, the words keep the width that they were placed with.
  const fitted = ` textLength="${coordinate(textWidth(mark.text, mark.height, mark.medium))}" lengthAdjust="spacingAndGlyphs"`;
  const weight = mark.medium ? ' font-weight="500"' : '';
  return `<text ${place} font-size="${coordinate(mark.height / capRatio)}"${anchor}${fitted}${weight} fill="${mark.colour}">${xmlText(mark.text)}</text>`;
}

/** Writes words as outlines and keeps the glyphs that were used, each to be defined once. */
class Letters {
  readonly #fonts: OutlineFonts;
  readonly #used = new Map<string, string>();

  constructor(fonts: OutlineFonts) {
    this.#fonts = fonts;
  }

  /** The words stay findable: the group is named by them. */
  write(mark: TextMark): string {
    const font = mark.medium ? this.#fonts.medium : this.#fonts.regular;
    const line = font.set(mark.text);
    const start = mark.anchor === 'end' ? -line.width : mark.anchor === 'middle' ? -line.width / 2 : 0;
    const uses = line.letters.flatMap(({ glyph, x }) => {
      const id = this.#define(mark.medium ? 'm' : 'r', glyph, font);
      return id === null ? [] : [`<use xlink:href="#${id}" x="${coordinate(x)}"/>`];
    });
    const scale = coordinateOfScale(mark.height / capRatio / font.unitsPerEm);
    const turn = mark.turn === 0 ? '' : ` rotate(${degrees(mark.turn)})`;
    const begin = start === 0 ? '' : ` translate(${coordinate(start)} 0)`;
    const place = `translate(${pointText(mark.at)})${turn} scale(${scale} -${scale})${begin}`;
    return `<g role="img" aria-label="${xmlText(mark.text)}" fill="${mark.colour}" transform="${place}">${uses.join('')}</g>`;
  }

  #define(weight: string, glyph: number, font: OutlineFont): string | null {
    const id = `${weight}${glyph}`;
    if (!this.#used.has(id)) this.#used.set(id, font.outline(glyph));
    return this.#used.get(id) === '' ? null : id;
  }

  definitions(): string {
    const glyphs = [...this.#used].filter(([, d]) => d !== '').sort(([a], [b]) => (a < b ? -1 : 1));
    return `<defs>\n${glyphs.map(([id, d]) => `<path id="${id}" d="${d}"/>`).join('\n')}\n</defs>`;
  }
}

/** Six figures: a scale of letters is a few thousandths. */
const coordinateOfScale = (value: number): string => String(Number(value.toPrecision(6)));

/**
 * The sheet as SVG: one user unit is one millimetre on paper, so that it prints at its scale.
 *
 * With fonts the letters are outlines, alike in every viewer, and the file needs no font; without them text stays text, asks for the
 * font of the workbench by name, with the usual sans serif behind it: good on a page that has that font.
 * Source: SVG 1.1 (W3C); the millimetre viewBox as in the handbook of deliverables 3.6.
 */
export function sheetSvg(sheet: Sheet, fonts?: OutlineFonts): string {
  const size = `width="${sheet.width}mm" height="${sheet.height}mm" viewBox="0 0 ${sheet.width} ${sheet.height}"`;
  const letters = fonts ? new Letters(fonts) : null;
  const written = (mark: Mark) =>
    mark.mark === 'path' ? pathText(mark) : letters ? letters.write(mark) : writtenText(mark);
  const layers = sheet.layers.map(
    (layer) =>
      `<g id="${xmlText(layer.id)}" data-title="${xmlText(layer.title)}">\n${layer.marks.map(written).join('\n')}\n</g>`,
  );
  // A picture hides its parts from readers of screens, a document does not: the words of outlines are names of parts.
  const kind = letters
    ? `xmlns:xlink="http://www.w3.org/1999/xlink" ${size} role="graphics-document"`
    : `${size} role="img" font-family="'Fira Sans', 'Noto Sans', 'DejaVu Sans', sans-serif" style="font-variant-numeric: tabular-nums"`;
  return `${[
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" ${kind} stroke-linecap="butt" stroke-linejoin="miter">`,
    `<title>${xmlText(sheet.title)}</title>`,
    `<desc>${xmlText(sheet.description)}</desc>`,
    ...(letters ? [letters.definitions()] : []),
    `<rect width="${sheet.width}" height="${sheet.height}" fill="${paper}"/>`,
    ...layers,
    '</svg>',
  ].join('\n')}\n`;
}
