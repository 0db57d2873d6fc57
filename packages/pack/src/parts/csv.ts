import { type Column, cellText } from './columns.js';

/**
 * Text that a spreadsheet would run as a formula gets an apostrophe before it; tested after leading spaces and after each line break.
 * Source: OWASP guidance on CSV injection as quoted in the handbook of deliverables 2.6 (published).
 */
export function guardedText(raw: string): string {
  const risky = raw
    .split(/\r\n|\r|\n/)
    .some((part) => /^[=+\-@\t]/.test(part.replace(/^[ \u00a0]+/, '')) || part.startsWith('\t'));
  return risky || /^[\t\r]/.test(raw) ? `'${raw}` : raw;
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
