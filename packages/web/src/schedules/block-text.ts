/**
 * A block of cells as spreadsheets put it on the clipboard: tabs between cells, line breaks between rows, cells with either in
 * quotes. A lone trailing line break ends the last row.
 * Source: text/tab-separated-values (IANA) with the quoting of RFC 4180, as spreadsheets do it (common practice).
 */
export function readBlock(text: string): string[][] {
  const rows: string[][] = [[]];
  let at = 0;
  while (at <= text.length) {
    const cell = text[at] === '"' ? quoted(text, at) : plain(text, at);
    rows.at(-1)!.push(cell.text);
    at = cell.end;
    if (at >= text.length) break;
    const newLine = text[at] !== '\t';
    at += text.startsWith('\r\n', at) ? 2 : 1;
    if (newLine && at >= text.length) break;
    if (newLine) rows.push([]);
  }
  return rows;
}

interface Cell {
  readonly text: string;
  readonly end: number;
}

function plain(text: string, from: number): Cell {
  const rest = text.slice(from).search(/[\t\r\n]/);
  const end = rest < 0 ? text.length : from + rest;
  return { text: text.slice(from, end), end };
}

/** A quote that is not closed before its cell ends is a quote mark like any other: `2" pipe`. */
function quoted(text: string, from: number): Cell {
  const found = /^"((?:[^"]|"")*)"(?=[\t\r\n]|$)/.exec(text.slice(from));
  if (!found) return plain(text, from);
  return { text: found[1]!.replace(/""/g, '"'), end: from + found[0].length };
}

/** A cell on its way out: its text, and whether it is a number or quantity and so never a formula. */
export interface OutCell {
  readonly text: string;
  readonly figure: boolean;
}

/**
 * Text that a spreadsheet would run as a formula gets an apostrophe before it; a negative number stays a number.
 * Source: OWASP guidance on CSV injection (from memory): = + - @ tab and carriage return at the start.
 */
export function safeText({ text, figure }: OutCell): string {
  const number = figure && /^[-+]?[\d.,]/.test(text);
  return !number && /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
}

const inQuotes = (text: string): string => `"${text.replace(/"/g, '""')}"`;

/** What goes on the clipboard. */
export const blockText = (rows: readonly (readonly OutCell[])[]): string =>
  rows
    .map((row) =>
      row
        .map(safeText)
        .map((text) => (/[\t\r\n]/.test(text) || text.startsWith('"') ? inQuotes(text) : text))
        .join('\t'),
    )
    .join('\n');

/** A file for other programs. Source: RFC 4180 (from memory); byte-order mark so that µ and ² survive. */
export const csvFile = (rows: readonly (readonly OutCell[])[]): string =>
  `\uFEFF${rows
    .map((row) =>
      row
        .map(safeText)
        .map((text) => (/[",\r\n]/.test(text) || text !== text.trim() ? inQuotes(text) : text))
        .join(','),
    )
    .join('\r\n')}\r\n`;
