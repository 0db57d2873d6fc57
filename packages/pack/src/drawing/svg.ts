import { capRatio } from './font-metrics.js';
import { paper } from './inks.js';
import { coordinate, pointText, textWidth } from './marks.js';
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

function markText(mark: Mark): string {
  if (mark.mark === 'path') {
    const data = mark.data ? ` data-mark="${xmlText(mark.data)}"` : '';
    return `<path d="${mark.d}" fill="${mark.fill ?? 'none'}"${penText(mark.pen)}${data}/>`;
  }
  const place =
    mark.turn === 0
      ? `x="${coordinate(mark.at[0])}" y="${coordinate(mark.at[1])}"`
      : `transform="translate(${pointText(mark.at)}) rotate(${coordinate((-mark.turn * 180) / Math.PI)})"`;
  const anchor = mark.anchor === 'start' ? '' : ` text-anchor="${mark.anchor}"`;
  // Whatever font stands in for ours, the words keep the width that they were placed with.
  const fitted = ` textLength="${coordinate(textWidth(mark.text, mark.height, mark.medium))}" lengthAdjust="spacingAndGlyphs"`;
  const weight = mark.medium ? ' font-weight="500"' : '';
  return `<text ${place} font-size="${coordinate(mark.height / capRatio)}"${anchor}${fitted}${weight} fill="${mark.colour}">${xmlText(mark.text)}</text>`;
}

/**
 * The sheet as SVG: one user unit is one millimetre on paper, so that it prints at its scale.
 * Text stays text and asks for the font of the workbench by name, with the usual sans serif behind it.
 * Source: SVG 1.1 (W3C); the millimetre viewBox as in the handbook of deliverables 3.6.
 */
export function sheetSvg(sheet: Sheet): string {
  const size = `width="${sheet.width}mm" height="${sheet.height}mm" viewBox="0 0 ${sheet.width} ${sheet.height}"`;
  const layers = sheet.layers.map(
    (layer) =>
      `<g id="${xmlText(layer.id)}" data-title="${xmlText(layer.title)}">\n${layer.marks.map(markText).join('\n')}\n</g>`,
  );
  return `${[
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} role="img" font-family="'Fira Sans', 'Noto Sans', 'DejaVu Sans', sans-serif" style="font-variant-numeric: tabular-nums" stroke-linecap="butt" stroke-linejoin="miter">`,
    `<title>${xmlText(sheet.title)}</title>`,
    `<desc>${xmlText(sheet.description)}</desc>`,
    `<rect width="${sheet.width}" height="${sheet.height}" fill="${paper}"/>`,
    ...layers,
    '</svg>',
  ].join('\n')}\n`;
}
