import { csvFile, type OutCell } from '../schedules/block-text.js';
import { priceTexts as say } from '../texts/shelf.js';
import type { PriceReport } from './price-list.js';

const cells = (row: number, text: string, price: string, result: string, reason: string): readonly OutCell[] => [
  { text: String(row), figure: true },
  { text, figure: false },
  { text: price, figure: true },
  { text: result, figure: false },
  { text: reason, figure: false },
];

/** Every row of a price list with what became of it, in the order of the list. */
export function reportCsv({ taken, unchanged, refused }: PriceReport): string {
  const rows = [
    ...taken.map(({ row, entry }) => ({ row, out: cells(row, entry.item, entry.price, say.results.taken, '') })),
    ...unchanged.map(({ row, entry }) => ({
      row,
      out: cells(row, entry.item, entry.price, say.results.unchanged, ''),
    })),
    ...refused.map(({ row, text, reason }) => ({ row, out: cells(row, text, '', say.results.refused, reason) })),
  ].sort((a, b) => a.row - b.row);
  const head = [say.row, say.item, say.priceHead, say.result, say.reason].map((text) => ({ text, figure: false }));
  return csvFile([head, ...rows.map(({ out }) => out)]);
}
