import {
  type AmendedFigure,
  type AmendedPrice,
  decimalText,
  millimetreText,
  numberText,
  type PartRow,
  type PartsList,
} from '@cloche/engine';
import { secondInk } from '../drawing/inks.js';
import type { CutList, CutRow, StockRow } from '../parts/cut-list.js';
import type { Flow, TableColumn } from './flow.js';

const unitWord: Readonly<Record<PartRow['unit'], string>> = { H87: 'pc', MTR: 'm', MTK: 'm²' };
const dimension = (row: PartRow) => [row.lengthMm, row.widthMm, row.thicknessMm].filter((v) => v !== null).join(' × ');

const partColumns: readonly TableColumn<PartRow>[] = [
  { head: 'item', share: 5, align: 'right', of: (r) => String(r.item) },
  { head: 'name', share: 25, of: (r) => r.name },
  { head: 'part number', share: 15, of: (r) => r.partNumber },
  { head: 'size mm', share: 14, of: dimension },
  { head: 'qty', share: 8, align: 'right', medium: true, of: (r) => decimalText(r.qty, 3) },
  { head: 'unit', share: 5, of: (r) => unitWord[r.unit] },
  { head: 'spare', share: 6, align: 'right', of: (r) => (r.spareQty > 0 ? String(r.spareQty) : '') },
  { head: 'order', share: 8, align: 'right', of: (r) => (r.orderQty === null ? '' : decimalText(r.orderQty, 3)) },
  { head: 'mass kg', share: 8, align: 'right', of: (r) => decimalText(r.massKg, 2) },
  { head: 'price', share: 11, align: 'right', of: (r) => r.linePrice ?? 'none' },
];

export function partsSection(flow: Flow, list: PartsList): void {
  flow.heading('Parts list');
  const origin = list.invented ? 'Invented demo prices. ' : '';
  flow.words(
    `${origin}Prices of ${list.priceDate}: ${list.priceBasis}. Line = order quantity × price, rounded half away from zero; the total is the sum of the rounded lines. Quantities are those of the model; spares stand apart and are added once, before rounding up to packs and bars.`,
    { size: 8, colour: secondInk, after: 6 },
  );
  flow.table(partColumns, list.rows, 7.5);
  amendmentTables(flow, list);
  flow.words(`Mass of all parts ${numberText(list.massKg, 4)} kg.`, { medium: true, after: 2 });
  if (list.total !== null)
    flow.words(`Total ${list.total} ${list.currency ?? ''} without the lines that have no price.`, {
      medium: true,
      after: 2,
    });
  if (list.unpriced > 0)
    flow.words(
      `${list.unpriced} ${list.unpriced === 1 ? 'line has' : 'lines have'} no price and ${list.unpriced === 1 ? 'is' : 'are'} missing from the total.`,
      { after: 2 },
    );
}

const ownPriceColumns: readonly TableColumn<AmendedPrice>[] = [
  { head: 'item', share: 24, of: (r) => r.item },
  { head: 'size', share: 12, of: (r) => (r.size === null ? '' : millimetreText(r.size)) },
  { head: 'price', share: 14, align: 'right', of: (r) => `${r.price.amount} ${r.price.currency}` },
  { head: 'of', share: 12, of: (r) => r.on },
  { head: 'from', share: 22, of: (r) => r.from },
  { head: 'because', share: 16, of: (r) => r.because ?? '' },
];
const figureColumns: readonly TableColumn<AmendedFigure>[] = [
  { head: 'item', share: 24, of: (r) => r.item },
  { head: 'figure', share: 20, of: (r) => r.field },
  { head: 'value in force', share: 18, align: 'right', of: (r) => r.written },
  { head: 'because', share: 38, of: (r) => r.because },
];

/** What the project put in place of the catalogue's data, with day, origin and reason. */
function amendmentTables(flow: Flow, { amendments }: PartsList): void {
  if (amendments.prices.length > 0) {
    flow.subheading('Prices entered for this project');
    flow.table(ownPriceColumns, amendments.prices, 7.5);
  }
  if (amendments.figures.length === 0) return;
  flow.subheading('Catalogue figures changed for this project');
  flow.words("Source of these figures: the brief (entered). Calculations use them in place of the catalogue's.", {
    size: 8,
    colour: secondInk,
    after: 4,
  });
  flow.table(figureColumns, amendments.figures, 7.5);
}

const cutColumns: readonly TableColumn<CutRow>[] = [
  { head: 'mark', share: 18, medium: true, of: (r) => r.mark },
  { head: 'name', share: 24, of: (r) => r.name },
  { head: 'length mm', share: 11, align: 'right', of: (r) => decimalText(r.lengthMm, 1) },
  { head: 'width mm', share: 10, align: 'right', of: (r) => (r.widthMm === null ? '' : decimalText(r.widthMm, 1)) },
  {
    head: '±',
    share: 7,
    align: 'right',
    of: (r) => (r.toleranceMm === null ? 'agree' : decimalText(r.toleranceMm, 1)),
  },
  { head: 'qty', share: 6, align: 'right', of: (r) => String(r.qty) },
  { head: 'from (pieces)', share: 24, of: (r) => r.from },
];
const stockColumns: readonly TableColumn<StockRow>[] = [
  { head: 'name', share: 24, of: (r) => r.name },
  { head: 'no.', share: 6, align: 'right', of: (r) => String(r.number) },
  {
    head: 'stock mm',
    share: 16,
    align: 'right',
    of: (r) =>
      r.widthMm === null ? decimalText(r.lengthMm, 1) : `${decimalText(r.lengthMm, 1)} × ${decimalText(r.widthMm, 1)}`,
  },
  { head: 'pieces in the order of the cuts', share: 40, of: (r) => r.pieces },
  {
    head: 'off-cut mm',
    share: 14,
    align: 'right',
    of: (r) => (r.offcutMm === null ? '' : `${decimalText(r.offcutMm, 1)}${r.keep ? ' keep' : ''}`),
  },
];

export function cutSection(flow: Flow, list: CutList): void {
  if (list.rows.length === 0) return;
  flow.heading('Cut list');
  flow.words(
    `Saw cut ${list.kerfMm} mm, ${list.trimMm} mm trimmed from each end of a bar. Tolerance ± by ISO 2768-m (ISO 2768-1:1989, Table 1); above 4000 mm it is to be agreed.`,
    { size: 8, colour: secondInk, after: 5 },
  );
  for (const { name, words } of list.summary) flow.words(`${name}: ${words}`, { size: 8.5, after: 2 });
  flow.y += 6;
  flow.table(cutColumns, list.rows, 7.5);
  flow.subheading('Bars and sheets');
  flow.table(stockColumns, list.stock, 7.5);
}
