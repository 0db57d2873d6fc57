import type { AmendedPrice, Amendments } from '../catalogue/amend.js';
import type { Catalogue, Item } from '../catalogue/schema.js';
import type { Design, Part, PartGroup } from '../design/types.js';
import { millimetreText, numberText } from '../floor/number-text.js';
import { compareText } from '../floor/text-order.js';
import { ruleNumber, type SiteRules } from '../rules/schema.js';
import type { Cuts } from './cut-plans.js';
import { decimalText, linePrice, totalPrice } from './money.js';
import { leastSpare, partGroups, type UnitCode, unitCodes } from './tables.js';

/** One line of the parts list. Field names after ISO 7573:2008 and the handbook of deliverables 2.1. */
export interface PartRow {
  readonly item: number;
  /** Id of the item in the catalogue. */
  readonly itemId: string;
  readonly group: PartGroup;
  /** Exact quantity of the model. */
  readonly qty: number;
  readonly unit: UnitCode;
  readonly partNumber: string;
  readonly name: string;
  readonly technicalData: string;
  readonly material: string;
  readonly lengthMm: number | null;
  readonly widthMm: number | null;
  readonly thicknessMm: number | null;
  /** Mass of the whole line [kg], spares not counted. */
  readonly massKg: number;
  readonly pieceMark: string;
  readonly spareQty: number;
  /** To order, in `unit`, packs and bars rounded up. */
  readonly orderQty: number | null;
  readonly packSize: number | null;
  readonly unitPrice: string | null;
  readonly currency: string | null;
  readonly linePrice: string | null;
  /** Day and origin of the price; empty where there is none. */
  readonly priceDate: string;
  readonly priceFrom: string;
  readonly source: string;
  readonly remarks: string;
}

export interface PartsList {
  readonly rows: readonly PartRow[];
  readonly massKg: number;
  readonly currency: string | null;
  /** Sum of the priced lines; null when nothing has a price. */
  readonly total: string | null;
  /** Lines without a price: they are missing from the total. */
  readonly unpriced: number;
  readonly priceDate: string;
  readonly priceBasis: string;
  readonly invented: boolean;
  /** Prices and figures that the project put in place of the catalogue's; only those of items in the list. */
  readonly amendments: Amendments;
}

const mm = (metres: number) => Number((metres * 1000).toFixed(1));

/** Parts of one row: equal item, and equal size where the size decides what is bought. */
function rowKey(part: Part, item: Item | undefined): string {
  const size = [part.length, part.width, part.thickness].map((v) => (v === undefined ? '' : v.toFixed(4))).join('|');
  if (item?.kind === 'cloth' || item?.kind === 'cover') return `${part.item}|${size}`;
  return part.item;
}

const soldByMetre = (item: Item): boolean => 'stockLengths' in item;

function technicalData(item: Item): string {
  if (item.kind === 'profile')
    return `${item.size.map((s) => mm(s)).join(' × ')} mm, slot ${mm(item.slot?.width ?? 0)} mm`;
  if (item.kind === 'fan filter unit')
    return `filter ${item.filterClass}, ${item.size.map((s) => mm(s)).join(' × ')} mm`;
  if (item.kind === 'cloth') return `${item.purpose}, ${numberText(item.massPerArea)} kg/m²`;
  if (item.kind === 'interlock part') return item.role;
  if (item.kind === 'track') return `system ${item.system}`;
  if (item.kind === 'sign') return item.lit ? 'lit' : 'not lit';
  return '';
}
const materialOf = (item: Item): string =>
  item.kind === 'profile' ? item.alloy : item.kind === 'sheet' ? item.material : '';

interface Order {
  readonly qty: number;
  readonly unit: UnitCode;
  readonly spare: number;
  readonly order: number | null;
  readonly pack: number | null;
  readonly price: string | null;
  /** Line price where it is a sum over stock pieces. */
  readonly line?: string | null;
  readonly remarks: readonly string[];
}

const sum = (parts: readonly Part[], of: (part: Part) => number) => parts.reduce((all, part) => all + of(part), 0);

/** Metres cut, ordered as whole bars. */
function byTheMetre(parts: readonly Part[], item: Item, cuts: Cuts | undefined, currency: string): Order {
  const qty = sum(parts, (p) => (p.length ?? 0) * p.count);
  const price = 'price' in item && item.price ? item.price.amount : null;
  const base = { qty, unit: unitCodes.metre, spare: 0, pack: null, price } as const;
  if (cuts?.kind !== 'bars') return { ...base, order: null, remarks: ['not cut from bars: length to be agreed'] };
  if (!cuts.plan.ok) return { ...base, order: null, remarks: cuts.plan.problems.map((p) => p.message) };
  const { bars } = cuts.plan.value;
  const counted = new Map<number, number>();
  for (const bar of bars) counted.set(bar.stock, (counted.get(bar.stock) ?? 0) + 1);
  const words = [...counted]
    .map(([stock, n]) => `${n} × ${millimetreText(cuts.request.stock[stock]!.length)}`)
    .join(', ');
  const order = total(bars.map((bar) => bar.length));
  if (item.kind !== 'track') return { ...base, order, remarks: [`bars: ${words}`] };
  const lines = [...counted].map(([stock, n]) => {
    const each = item.stock[stock]?.price;
    return each ? linePrice(String(n), each.amount, currency) : null;
  });
  const line = lines.every((l) => l !== null) ? totalPrice(lines as string[], currency) : null;
  return { ...base, order, price: null, line, remarks: [`stock pieces: ${words}`] };
}
const total = (values: readonly number[]) => values.reduce((all, value) => all + value, 0);

/** Standard panels: the catalogue prices each width. */
function byPanel(parts: readonly Part[], item: Extract<Item, { kind: 'cloth' }>): Order {
  const qty = sum(parts, (p) => p.count);
  const stock = item.widths.find((w) => Math.abs(w.width - (parts[0]!.width ?? 0)) < 5e-4);
  const remarks = stock ? [] : ['no standard width of the catalogue: ask for a price'];
  return { qty, unit: unitCodes.piece, spare: 0, order: qty, pack: null, price: stock?.price?.amount ?? null, remarks };
}

/** Net area of the pieces, ordered as whole sheets. */
function bySheet(parts: readonly Part[], item: Extract<Item, { kind: 'sheet' }>, cuts: Cuts | undefined): Order {
  const qty = sum(parts, (p) => (p.length ?? 0) * (p.width ?? 0) * p.count);
  const base = { qty, unit: unitCodes.squareMetre, spare: 0, pack: null, price: item.price?.amount ?? null } as const;
  if (cuts?.kind !== 'sheets') return { ...base, order: null, remarks: ['not cut from sheets: size to be agreed'] };
  if (!cuts.plan.ok) return { ...base, order: null, remarks: cuts.plan.problems.map((p) => p.message) };
  const count = cuts.plan.value.sheets.length;
  const [length, width] = item.sheetSize;
  return { ...base, order: count * length * width, remarks: [`sheets: ${count} × ${mm(length)} × ${mm(width)} mm`] };
}

/** Round up once, at ordering. Source: handbook of deliverables 2.2. */
export const packsFor = (pieces: number, pack: number): number => Math.max(0, Math.ceil(pieces / pack - 1e-9));

export const spareFor = (qty: number, share: number): number =>
  share > 0 && qty > 0 ? Math.max(leastSpare, Math.ceil(qty * share - 1e-9)) : 0;

function byThePiece(parts: readonly Part[], item: Item | undefined, rules: SiteRules): Order {
  const qty = sum(parts, (p) => p.count);
  const group = parts[0]!.group;
  const share =
    group === 'fasteners'
      ? ruleNumber(rules, 'parts.fastener-spare')
      : group === 'runners'
        ? ruleNumber(rules, 'parts.runner-spare')
        : 0;
  const spare = spareFor(qty, share);
  const pack = item && 'packSize' in item ? item.packSize : null;
  const order = pack ? packsFor(qty + spare, pack) * pack : qty + spare;
  const price = item && 'price' in item && item.price ? item.price.amount : null;
  return { qty, unit: unitCodes.piece, spare, order, pack, price, remarks: [] };
}

function orderOf(
  parts: readonly Part[],
  item: Item | undefined,
  cuts: Cuts | undefined,
  rules: SiteRules,
  currency: string,
): Order {
  if (item && (soldByMetre(item) || item.kind === 'track')) return byTheMetre(parts, item, cuts, currency);
  if (item?.kind === 'cloth') return byPanel(parts, item);
  if (item?.kind === 'sheet') return bySheet(parts, item, cuts);
  return byThePiece(parts, item, rules);
}

const noAmendments: Amendments = { prices: [], figures: [] };

/** Prices of the project that a line may rest on: of panels only the one of this width. */
function ownPrices(first: Part, item: Item | undefined, catalogue: Catalogue): readonly AmendedPrice[] {
  const { prices } = catalogue.amendments ?? noAmendments;
  const fits = (size: number | null) =>
    item?.kind !== 'cloth' || size === null || Math.abs(size - (first.width ?? 0)) < 5e-4;
  return prices.filter((p) => p.item === first.item && fits(p.size));
}

/** Day and origin of a line's price. A line of several stock pieces may rest on prices of the project and of the catalogue. */
function originOf(own: readonly AmendedPrice[], item: Item | undefined, catalogue: Catalogue) {
  const shared = item?.kind === 'track' && own.length < item.stock.length;
  const ofCatalogue = own.length === 0 || shared;
  const days = [...own.map((p) => p.on), ...(ofCatalogue ? [catalogue.priceDate] : [])];
  const from = [...own.map((p) => p.from), ...(ofCatalogue ? [catalogue.priceBasis] : [])];
  return { priceDate: distinct(days).join(', '), priceFrom: distinct(from).join('; ') };
}

const changedFigures = (first: Part, catalogue: Catalogue): string[] =>
  (catalogue.amendments ?? noAmendments).figures
    .filter((f) => f.item === first.item)
    .map((f) => `${f.field} changed to ${f.written} for this project: ${f.because}`);

const distinct = (words: readonly string[]): string[] => [...new Set(words)].sort();

function row(
  parts: readonly Part[],
  catalogue: Catalogue,
  rules: SiteRules,
  cuts: Cuts | undefined,
): Omit<PartRow, 'item'> {
  const first = parts[0]!;
  const item = catalogue.byId.get(first.item);
  const currency = catalogue.currency;
  const order = orderOf(parts, item, cuts, rules, currency ?? 'XXX');
  const sized = item?.kind === 'cloth' || item?.kind === 'cover';
  const priced = order.price !== null && order.order !== null && currency !== null;
  const line = order.line ?? (priced ? linePrice(decimalText(order.order!, 4), order.price!, currency!) : null);
  const missing = item ? [] : ['not in the catalogue'];
  return {
    itemId: first.item,
    group: first.group,
    qty: order.qty,
    unit: order.unit,
    partNumber: item?.partNumber ?? first.item,
    name: item?.name ?? first.item,
    technicalData: item ? technicalData(item) : '',
    material: item ? materialOf(item) : '',
    lengthMm: sized && first.length !== undefined ? mm(first.length) : null,
    widthMm: sized && first.width !== undefined ? mm(first.width) : null,
    thicknessMm: sized && first.thickness !== undefined ? mm(first.thickness) : null,
    massKg: sum(parts, (p) => p.mass),
    pieceMark: distinct(parts.flatMap((p) => p.mark ?? [])).join(' '),
    spareQty: order.spare,
    orderQty: order.order,
    packSize: order.pack,
    unitPrice: order.price,
    currency: line === null ? null : currency,
    linePrice: line,
    ...(line === null
      ? { priceDate: '', priceFrom: '' }
      : originOf(ownPrices(first, item, catalogue), item, catalogue)),
    source: distinct(parts.map((p) => p.placed.rule)).join(' '),
    remarks: [
      ...missing,
      ...order.remarks,
      ...(line === null ? ['no price'] : []),
      ...changedFigures(first, catalogue),
    ].join('; '),
  };
}

/** Everything to buy: one line an item (and size, where the size is bought), by group, then name, then size. */
export function partsList(design: Design, catalogue: Catalogue, rules: SiteRules, cuts: readonly Cuts[]): PartsList {
  const groups = new Map<string, Part[]>();
  for (const part of design.parts) {
    const key = rowKey(part, catalogue.byId.get(part.item));
    groups.set(key, [...(groups.get(key) ?? []), part]);
  }
  const cutsOf = new Map(cuts.map((c) => [c.item.id, c]));
  const rows = [...groups]
    .map(([key, parts]) => ({ key, row: row(parts, catalogue, rules, cutsOf.get(parts[0]!.item)) }))
    .sort(
      (a, b) =>
        partGroups.indexOf(a.row.group) - partGroups.indexOf(b.row.group) ||
        compareText(a.row.name, b.row.name) ||
        (b.row.lengthMm ?? 0) - (a.row.lengthMm ?? 0) ||
        compareText(a.key, b.key),
    )
    .map(({ row: found }, i): PartRow => ({ item: i + 1, ...found }));
  const lines = rows.flatMap((r) => r.linePrice ?? []);
  const { currency } = catalogue;
  return {
    rows,
    massKg: total(rows.map((r) => r.massKg)),
    currency,
    total: currency !== null && lines.length > 0 ? totalPrice(lines, currency) : null,
    unpriced: rows.length - lines.length,
    priceDate: catalogue.priceDate,
    priceBasis: catalogue.priceBasis,
    invented: catalogue.invented,
    amendments: usedAmendments(design, catalogue),
  };
}

function usedAmendments(design: Design, catalogue: Catalogue): Amendments {
  const used = new Set(design.parts.map((p) => p.item));
  const { prices, figures } = catalogue.amendments ?? noAmendments;
  return { prices: prices.filter((p) => used.has(p.item)), figures: figures.filter((f) => used.has(f.item)) };
}
