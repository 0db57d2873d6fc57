import { type Column, cellText } from './columns.js';

/** What makes a spreadsheet read a cell as a formula when it stands first, in half and full width. */
const opener = '[=+\\-@\uff1d\uff0b\uff0d\uff20]';
const opensLine = new RegExp(`^(\\t|[ \\u00a0]*(${opener}|\\t))`);
const opensCell = new RegExp(`([;\\t][ \\u00a0]*)(?=${opener})`, 'g');

/**
 * Text that a spreadsheet would run as a formula gets an apostrophe before it; tested after leading spaces and after each line break.
 * A program that parts cells at semicolons or tabs would make a cell of its own of what follows one: there it gets one, too.
 * Source: OWASP guidance on CSV injection as quoted in the handbook of deliverables 2.6 (published); separators and full-width
 * signs from the same guidance (from memory).
 */
export function guardedText(raw: string): string {
  const inside = raw.replace(opensCell, "$1'");
  const risky = raw.split(/\r\n|\r|\n/).some((line) => opensLine.test(line)) || raw.startsWith('\r');
  return risky ? `'${inside}` : inside;
}

/** Quoted where the field holds a comma, quote, line break or outer space. Source: RFC 4180 (published); outer space is ours. */
export const csvField = (raw: string): string =>
  /[",\r\n]/.test(raw) || /^\s|\s$/.test(raw) ? `"${raw.replace(/"/g, '""')}"` : raw;

/** One header record, CRLF after every record, decimal points, no byte-order mark. */
export function csvText<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string {
  const record = (fields: readonly string[]) => `${fields.map(csvField).join(',')}\r\n`;
  const cell = (column: Column<Row>, row: Row) =>
    column.kind === 'text' ? guardedText(cellText(column, row)) : cellText(column, row);
  return record(columns.map((c) => c.head)) + rows.map((row) => record(columns.map((c) => cell(c, row)))).join('');
}
