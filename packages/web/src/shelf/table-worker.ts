import '../engine/no-eval.js';
import { expose } from 'comlink';
import type { Separator } from './list-limits.js';
import { type ListSettings, readPriceList, type Shop } from './price-list.js';
import { readTable, type TableRead, type TableSheet } from './read-table.js';

let sheets: readonly TableSheet[] = [];

/** Reads price lists off the page's own thread: a list of 50,000 rows must not hold up the drawing. */
const tables = {
  async open(bytes: Uint8Array, separator?: Separator) {
    const read: TableRead = await readTable(bytes, separator);
    sheets = read.ok ? read.sheets : [];
    if (!read.ok) return read;
    // Only what is shown goes to the page.
    return {
      ...read,
      sheets: sheets.map(({ name, rows }) => ({ name, rows: rows.slice(0, 200), count: rows.length })),
    };
  },
  report: (sheet: number, settings: ListSettings, shop: Shop) =>
    readPriceList(sheets[sheet]?.rows ?? [], settings, shop),
  /** All cells of one column, for what they say about decimals and days. */
  column: (sheet: number, column: number) => (sheets[sheet]?.rows ?? []).map((row) => row[column] ?? null),
};

export type Tables = typeof tables;
expose(tables);
