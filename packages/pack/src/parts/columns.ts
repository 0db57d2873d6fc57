import { decimalText, type PartRow } from '@cloche/engine';
import type { CutRow, StockRow } from './cut-list.js';

/** A column of a list, for every kind of file: text is guarded in spreadsheets, decimals stay numbers. */
export type Column<Row> =
  | { readonly head: string; readonly width: number; readonly kind: 'text'; readonly of: (row: Row) => string }
  | {
      readonly head: string;
      readonly width: number;
      readonly kind: 'number';
      readonly places: number;
      readonly of: (row: Row) => number | null;
    }
  /** Decimal text that must not pass through a binary fraction. */
  | { readonly head: string; readonly width: number; readonly kind: 'money'; readonly of: (row: Row) => string | null };

const text = <Row>(head: string, width: number, of: (row: Row) => string): Column<Row> => ({
  head,
  width,
  kind: 'text',
  of,
});
const number = <Row>(head: string, width: number, places: number, of: (row: Row) => number | null): Column<Row> => ({
  head,
  width,
  kind: 'number',
  places,
  of,
});
const money = <Row>(head: string, width: number, of: (row: Row) => string | null): Column<Row> => ({
  head,
  width,
  kind: 'money',
  of,
});

export const partColumns: readonly Column<PartRow>[] = [
  number('item', 6, 0, (r) => r.item),
  text('group', 16, (r) => r.group),
  number('qty', 10, 4, (r) => r.qty),
  text('unit', 6, (r) => r.unit),
  text('partNumber', 18, (r) => r.partNumber),
  text('name', 30, (r) => r.name),
  text('technicalData', 30, (r) => r.technicalData),
  text('material', 18, (r) => r.material),
  number('length_mm', 11, 1, (r) => r.lengthMm),
  number('width_mm', 10, 1, (r) => r.widthMm),
  number('thickness_mm', 12, 1, (r) => r.thicknessMm),
  number('mass_kg', 10, 3, (r) => r.massKg),
  text('pieceMark', 18, (r) => r.pieceMark),
  number('spareQty', 9, 0, (r) => r.spareQty),
  number('orderQty', 10, 4, (r) => r.orderQty),
  number('packSize', 9, 0, (r) => r.packSize),
  money('unitPrice', 11, (r) => r.unitPrice),
  money('linePrice', 12, (r) => r.linePrice),
  text('currency', 9, (r) => r.currency ?? ''),
  text('priceDate', 12, (r) => r.priceDate),
  text('priceFrom', 30, (r) => r.priceFrom),
  text('source', 34, (r) => r.source),
  text('remarks', 40, (r) => r.remarks),
];

export const cutColumns: readonly Column<CutRow>[] = [
  text('mark', 18, (r) => r.mark),
  text('partNumber', 18, (r) => r.partNumber),
  text('name', 28, (r) => r.name),
  text('material', 18, (r) => r.material),
  number('length_mm', 11, 1, (r) => r.lengthMm),
  number('width_mm', 10, 1, (r) => r.widthMm),
  number('thickness_mm', 12, 1, (r) => r.thicknessMm),
  number('tolerance_mm', 12, 1, (r) => r.toleranceMm),
  number('qty', 7, 0, (r) => r.qty),
  number('mass_kg', 10, 3, (r) => r.massKg),
  text('operations', 30, (r) => r.operations),
  text('stock', 26, (r) => r.from),
  text('of', 20, (r) => r.of),
];

export const stockColumns: readonly Column<StockRow>[] = [
  text('partNumber', 18, (r) => r.partNumber),
  text('name', 28, (r) => r.name),
  text('kind', 8, (r) => r.kind),
  number('number', 8, 0, (r) => r.number),
  number('length_mm', 11, 1, (r) => r.lengthMm),
  number('width_mm', 10, 1, (r) => r.widthMm),
  text('pieces', 60, (r) => r.pieces),
  number('offcut_mm', 11, 1, (r) => r.offcutMm),
  text('keep', 8, (r) => (r.keep === null ? '' : r.keep ? 'true' : 'false')),
];

/** What stands in a cell, as text. */
export function cellText<Row>(column: Column<Row>, row: Row): string {
  if (column.kind === 'text') return column.of(row);
  if (column.kind === 'money') return column.of(row) ?? '';
  const value = column.of(row);
  return value === null ? '' : decimalText(value, column.places);
}
