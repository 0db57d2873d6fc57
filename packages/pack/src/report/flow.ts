import type PDFDocument from 'pdfkit';
import type { OutlineItem } from 'pdfkit';
import { accent, hairline, ink, secondInk } from '../drawing/inks.js';
import { pointsPerMm } from '../drawing/pdf-sheet.js';
import { printable } from '../drawing/printable.js';
import type { Mark } from '../drawing/types.js';

/** A4 portrait in points. Source: ISO 216 with 72 points to the inch. */
export const a4 = { width: 210 * pointsPerMm, height: 297 * pointsPerMm } as const;
/** Margins [pt]: the filing margin of 20 mm left, room for the running head above. */
export const margins = {
  left: 20 * pointsPerMm,
  right: 15 * pointsPerMm,
  top: 26 * pointsPerMm,
  bottom: 16 * pointsPerMm,
} as const;
export const textWidth = a4.width - margins.left - margins.right;

export interface WordStyle {
  readonly size?: number;
  readonly medium?: boolean;
  readonly colour?: string;
  readonly align?: 'left' | 'right' | 'center';
  readonly indent?: number;
  /** Space after [pt]. */
  readonly after?: number;
  readonly width?: number;
}

export interface TableColumn<Row> {
  readonly head: string;
  /** Share of the text width. */
  readonly share: number;
  readonly align?: 'left' | 'right';
  readonly medium?: boolean;
  readonly of: (row: Row) => string;
  /** Drawn at the left of the cell, in points about its first line. */
  readonly mark?: (row: Row, at: readonly [number, number]) => readonly Mark[];
}

/** A line of the contents. */
export interface Entry {
  readonly title: string;
  readonly level: 1 | 2;
  /** Page, counted from nought. */
  readonly page: number;
  readonly destination: string;
}

/** A document that flows from page to page: headings, paragraphs, tables; sheets are pages of their own. */
export class Flow {
  readonly doc: PDFDocument;
  y: number = margins.top;
  /** Pages that carry the running head. */
  readonly textPages: number[] = [];
  readonly entries: Entry[] = [];
  #pages = 0;
  #open = false;
  #chapter: OutlineItem | null = null;

  constructor(doc: PDFDocument) {
    this.doc = doc;
  }

  newPage(): void {
    this.doc.addPage({ size: [a4.width, a4.height], margin: 0 });
    this.textPages.push(this.#pages++);
    this.y = margins.top;
    this.#open = true;
  }

  /** A page that something else fills: what flows next begins a page of its own. */
  foreignPage(draw: () => void): void {
    this.#pages++;
    draw();
    this.#open = false;
  }

  /** Makes sure that `height` points are left on the page; true when that took a new one. */
  need(height: number): boolean {
    if (this.#open && this.y + height <= a4.height - margins.bottom) return false;
    this.newPage();
    return true;
  }

  words(raw: string, style: WordStyle = {}): void {
    const size = style.size ?? 9;
    const indent = style.indent ?? 0;
    const width = style.width ?? textWidth - indent;
    const text = printable(raw);
    const options = { width, align: style.align ?? 'left', lineGap: size * 0.18 } as const;
    this.doc.font(style.medium ? 'medium' : 'regular').fontSize(size);
    const height = this.doc.heightOfString(text, options);
    this.need(height);
    this.doc
      .font(style.medium ? 'medium' : 'regular')
      .fontSize(size)
      .fillColor(style.colour ?? ink);
    this.doc.text(text, margins.left + indent, this.y, options);
    this.y += height + (style.after ?? 3);
  }

  heightOf(raw: string, size: number, width: number): number {
    this.doc.font('regular').fontSize(size);
    return this.doc.heightOfString(printable(raw), { width, lineGap: size * 0.18 });
  }

  /** Words on one line from `indent`, the place in the text left as it is; returns how wide they are. */
  span(raw: string, style: Omit<WordStyle, 'after'> = {}): number {
    const text = printable(raw);
    this.doc.font(style.medium ? 'medium' : 'regular').fontSize(style.size ?? 9);
    const width = this.doc.widthOfString(text);
    const room = style.width ?? width;
    const shift = style.align === 'right' ? room - width : style.align === 'center' ? (room - width) / 2 : 0;
    this.doc.fillColor(style.colour ?? ink);
    this.doc.text(text, margins.left + (style.indent ?? 0) + shift, this.y, { lineBreak: false });
    return width;
  }

  widthOf(raw: string, size: number, medium = false): number {
    this.doc.font(medium ? 'medium' : 'regular').fontSize(size);
    return this.doc.widthOfString(printable(raw));
  }

  /** One line of words, cut with an ellipsis where there is no room for all. */
  cut(raw: string, size: number, width: number): string {
    if (this.widthOf(raw, size) <= width) return raw;
    const letters = [...raw];
    while (letters.length > 0 && this.widthOf(`${letters.join('')}…`, size) > width) letters.pop();
    return `${letters.join('').trimEnd()}…`;
  }

  heading(title: string): void {
    if (this.#open && this.y > margins.top + 1) this.y += 14;
    this.need(110);
    this.enter(title, 1);
    this.words(title, { size: 15, medium: true, after: 3 });
    this.rule(accent, 0.9);
    this.y += 7;
  }

  /** A heading that stands in the contents under the last one. */
  chapter(title: string): void {
    this.y += 6;
    this.need(90);
    this.enter(title, 2);
    this.words(title, { size: 12.5, medium: true, colour: accent, after: 4 });
  }

  subheading(title: string): void {
    this.y += 5;
    this.need(48);
    this.words(title, { size: 10.5, medium: true, after: 3 });
  }

  /** Notes the current place in contents and bookmarks. */
  enter(title: string, level: 1 | 2): void {
    const destination = `part-${this.entries.length + 1}`;
    this.entries.push({ title, level, page: Math.max(0, this.#pages - 1), destination });
    this.doc.addNamedDestination(destination);
    const words = printable(title);
    if (level === 2 && this.#chapter) this.#chapter.addItem(words);
    else this.#chapter = this.doc.outline.addItem(words);
  }

  rule(colour = hairline, width = 0.5): void {
    this.doc
      .lineWidth(width)
      .undash()
      .moveTo(margins.left, this.y)
      .lineTo(margins.left + textWidth, this.y)
      .stroke(colour);
  }

  marks(marks: readonly Mark[]): void {
    for (const mark of marks) {
      if (mark.mark !== 'path') continue;
      if (mark.fill) this.doc.path(mark.d).fill(mark.fill);
      if (!mark.pen) continue;
      this.doc.lineWidth(mark.pen.width);
      if (mark.pen.dash) this.doc.dash(mark.pen.dash);
      else this.doc.undash();
      this.doc.path(mark.d).stroke(mark.pen.colour);
      this.doc.undash();
    }
  }

  /** A table whose head is repeated on every page; rows are not split. */
  table<Row>(columns: readonly TableColumn<Row>[], rows: readonly Row[], size = 8): void {
    const total = columns.reduce((sum, c) => sum + c.share, 0);
    const widths = columns.map((c) => (c.share / total) * textWidth);
    const head = () => {
      this.#tableRow(columns, widths, (c) => c.head, null, size, true);
      this.rule(ink, 0.6);
      this.y += 2.5;
    };
    const first = rows[0] ? this.#rowHeight(columns, widths, (c) => c.of(rows[0]!), size) : 0;
    this.need(26 + first);
    head();
    for (const row of rows) {
      const height = this.#rowHeight(columns, widths, (c) => c.of(row), size);
      if (this.y + height > a4.height - margins.bottom) {
        this.newPage();
        head();
      }
      this.#tableRow(columns, widths, (c) => c.of(row), row, size, false);
      this.y += 1.5;
      this.rule();
      this.y += 2.5;
    }
    this.y += 6;
  }

  #rowHeight<Row>(
    columns: readonly TableColumn<Row>[],
    widths: readonly number[],
    of: (c: TableColumn<Row>) => string,
    size: number,
  ): number {
    return Math.max(
      ...columns.map((column, i) => {
        this.doc.font(column.medium ? 'medium' : 'regular').fontSize(size);
        const width = widths[i]! - 6 - (column.mark ? 12 : 0);
        return this.doc.heightOfString(printable(of(column)) || ' ', {
          width,
          lineGap: size * 0.15,
        });
      }),
    );
  }

  #tableRow<Row>(
    columns: readonly TableColumn<Row>[],
    widths: readonly number[],
    of: (c: TableColumn<Row>) => string,
    row: Row | null,
    size: number,
    head: boolean,
  ): void {
    const height = this.#rowHeight(columns, widths, of, size);
    let x = margins.left;
    columns.forEach((column, i) => {
      const shift = column.mark ? 12 : 0;
      if (column.mark && row !== null) this.marks(column.mark(row, [x + 5, this.y + size * 0.62]));
      this.doc
        .font(column.medium || head ? 'medium' : 'regular')
        .fontSize(size)
        .fillColor(head ? secondInk : ink);
      this.doc.text(printable(of(column)), x + shift, this.y, {
        width: widths[i]! - 6 - shift,
        align: column.align ?? 'left',
        lineGap: size * 0.15,
      });
      x += widths[i]!;
    });
    this.y += height + 1;
  }
}
