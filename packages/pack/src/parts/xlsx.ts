import writeXlsx from 'write-excel-file/universal';
import { type Column, cellText } from './columns.js';
import { withFixedTimes } from './zip-times.js';

/** One cell as the writing library takes it: text is always a string cell, never a formula. */
interface Cell {
  readonly value: string | number;
  readonly type: typeof String | typeof Number;
  readonly format?: string;
  readonly fontWeight?: 'bold';
  readonly wrap?: boolean;
  readonly align?: 'right';
}

export interface XlsxTable {
  readonly name: string;
  readonly widths: readonly number[];
  readonly rows: readonly (readonly (Cell | null)[])[];
  /** Rows that stay in view: 1 for a table with its head, 0 for running text. */
  readonly frozen: 0 | 1;
}

const textCell = (value: string, bold = false): Cell => ({
  value,
  type: String,
  ...(bold ? { fontWeight: 'bold' as const } : {}),
});

const formatOf = (places: number) => (places === 0 ? '0' : `0.${'0'.repeat(places)}`);

function cellOf<Row>(column: Column<Row>, row: Row): Cell | null {
  if (column.kind === 'number') {
    const value = column.of(row);
    return value === null ? null : { value, type: Number, format: formatOf(Math.min(column.places, 3)) };
  }
  const words = cellText(column, row);
  if (words === '') return null;
  // Money stays decimal text: a spreadsheet's binary fraction is not what was offered.
  return column.kind === 'money' ? { ...textCell(words), align: 'right' } : textCell(words);
}

export const tableOf = <Row>(name: string, columns: readonly Column<Row>[], rows: readonly Row[]): XlsxTable => ({
  name,
  widths: columns.map((c) => c.width),
  rows: [columns.map((c) => textCell(c.head, true)), ...rows.map((row) => columns.map((c) => cellOf(c, row)))],
  frozen: 1,
});

/** The same table with a last row of totals: texts and numbers by column head. */
export function withTotals<Row>(
  table: XlsxTable,
  columns: readonly Column<Row>[],
  totals: Readonly<Record<string, string | number>>,
): XlsxTable {
  const row = columns.map((column): Cell | null => {
    const value = totals[column.head];
    if (value === undefined) return null;
    if (typeof value === 'string')
      return { ...textCell(value, true), ...(column.kind === 'money' ? { align: 'right' as const } : {}) };
    return { value, type: Number, format: '0.000', fontWeight: 'bold' };
  });
  return { ...table, rows: [...table.rows, row] };
}

/** The first sheet of every workbook: where it comes from, its status and cautions. */
export const aboutTable = (lines: readonly (readonly [string, string])[]): XlsxTable => ({
  name: 'About',
  widths: [22, 90],
  rows: lines.map(([label, words]) => [textCell(label, true), { ...textCell(words), wrap: true }]),
  frozen: 0,
});

/** A workbook without formulas, links or macros; the same input gives the same bytes. */
export async function xlsxBytes(tables: readonly XlsxTable[]): Promise<Uint8Array> {
  const sheets = tables.map((table) => ({
    data: table.rows,
    sheet: table.name,
    columns: table.widths.map((width) => ({ width })),
    orientation: 'landscape' as const,
    ...(table.frozen ? { stickyRowsCount: table.frozen } : {}),
  }));
  const blob = await writeXlsx(sheets).toBlob();
  return withFixedTimes(new Uint8Array(await blob.arrayBuffer()));
}
