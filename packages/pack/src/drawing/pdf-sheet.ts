import type PDFDocument from 'pdfkit';
import { capRatio } from './font-metrics.js';
import { printable } from './printable.js';
import type { Mark, Pen, Sheet } from './types.js';

/** Points in a millimetre. */
export const pointsPerMm = 72 / 25.4;

function applyPen(doc: PDFDocument, pen: Pen): void {
  doc.lineWidth(pen.width).lineCap('butt');
  if (pen.dash) doc.dash(pen.dash);
  else doc.undash();
}

function drawPath(doc: PDFDocument, mark: Extract<Mark, { mark: 'path' }>): void {
  if (mark.fill) {
    doc.path(mark.d).fill(mark.fill);
  }
  if (mark.pen) {
    applyPen(doc, mark.pen);
    doc.path(mark.d).stroke(mark.pen.colour);
  }
}

const oneLine = { lineBreak: false } as const;

function drawText(doc: PDFDocument, mark: Extract<Mark, { mark: 'text' }>): void {
  const size = mark.height / capRatio;
  const words = printable(mark.text);
  doc
    .font(mark.medium ? 'medium' : 'regular')
    .fontSize(size)
    .fillColor(mark.colour);
  const width = doc.widthOfString(words, oneLine);
  const left = mark.anchor === 'end' ? -width : mark.anchor === 'middle' ? -width / 2 : 0;
  doc
    .save()
    .translate(mark.at[0], mark.at[1])
    .rotate((-mark.turn * 180) / Math.PI);
  // The library places text by the top of its line; the ascent of the shipped font is 0.935 em.
  doc.text(words, left, -0.935 * size, oneLine);
  doc.restore();
}

/** Puts a sheet on its own page in true size. */
export function drawSheet(doc: PDFDocument, sheet: Sheet): void {
  doc.addPage({ size: [sheet.width * pointsPerMm, sheet.height * pointsPerMm], margin: 0 });
  doc.save().scale(pointsPerMm);
  for (const layer of sheet.layers)
    for (const mark of layer.marks) {
      if (mark.mark === 'path') drawPath(doc, mark);
      else drawText(doc, mark);
    }
  doc.undash().restore();
}
