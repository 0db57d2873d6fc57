import { parseQuantity, soldBy, unitOfWord } from '@cloche/engine';
import { priceTexts as say } from '../texts/shelf.js';
import type { CatalogueItem, PriceEntry } from './catalogue-data.js';
import { type DateOrder, type Decimal, readDay, readPrice } from './price-text.js';

export type PriceCell = string | number | null;
export type PriceRow = readonly PriceCell[];

export const priceColumns = ['item', 'description', 'price', 'currency', 'unit', 'date'] as const;
export type PriceColumn = (typeof priceColumns)[number];
/** Which column of the list is what; null where the list has none. */
export type ColumnChoice = Readonly<Record<PriceColumn, number | null>>;

/** What a person says about a list. */
export interface ListSettings {
  readonly columns: ColumnChoice;
  /** Number of the row with the names of the columns, counted from 0; -1 where there is none. */
  readonly headRow: number;
  readonly decimal: Decimal;
  readonly dateOrder: DateOrder | null;
  /** Of prices that stand without one. */
  readonly currency: string | null;
  /** Of prices that stand without one. */
  readonly date: string;
  readonly from: string;
  /** True when prices without a unit are for what the catalogue sells by. */
  readonly unitsAsSold: boolean;
  /** Near names that a person said yes to: row number to item. */
  readonly confirmed: ReadonlyMap<number, string>;
}

export interface Taken {
  readonly row: number;
  readonly entry: PriceEntry;
}

export interface RefusedRow {
  /** As a spreadsheet counts: from 1. */
  readonly row: number;
  readonly text: string;
  readonly reason: string;
}

/** A row whose words are like those of an item; it counts only when a person says so. */
export interface NearRow {
  readonly row: number;
  readonly text: string;
  readonly item: string;
  readonly name: string;
}

export interface PriceReport {
  readonly taken: readonly Taken[];
  readonly unchanged: readonly Taken[];
  readonly refused: readonly RefusedRow[];
  readonly near: readonly NearRow[];
}

export interface Shop {
  readonly items: readonly CatalogueItem[];
  readonly currency: string | null;
  /** Prices that the project has already. */
  readonly prices: readonly PriceEntry[];
}

const alike = (text: string): string => text.trim().toLowerCase().replace(/\s+/g, ' ');
const textOf = (cell: PriceCell | undefined): string =>
  cell === null || cell === undefined ? '' : String(cell).trim();

/**
 * Reads the rows of a price list against the catalogue. Each row is taken, unchanged or refused with its reason; nothing is
 * guessed: a row belongs to an item by id, part number or name letter by letter, or by a person's word.
 */
export function readPriceList(rows: readonly PriceRow[], settings: ListSettings, shop: Shop): PriceReport {
  const index = indexOf(shop.items);
  const known = new Map(shop.prices.map((p) => [placeOf(p), p]));
  const taken: Taken[] = [];
  const unchanged: Taken[] = [];
  const refused: RefusedRow[] = [];
  const near: NearRow[] = [];
  for (const [i, cells] of rows.entries()) {
    if (i <= settings.headRow || cells.every((cell) => textOf(cell) === '')) continue;
    const row = i + 1;
    const at = (column: PriceColumn): PriceCell => {
      const place = settings.columns[column];
      return place === null ? null : (cells[place] ?? null);
    };
    const text = [textOf(at('item')), textOf(at('description'))].filter(Boolean).join(', ');
    const refuse = (reason: string) => refused.push({ row, text, reason });
    const item = itemOf(at, row, settings, index);
    if ('reason' in item) {
      const like = item.severalMeant ? undefined : nearestOf(textOf(at('description')) || textOf(at('item')), index);
      if (like) near.push({ row, text, item: like.id, name: like.name });
      refuse(like ? say.nearOnly(like.name) : item.reason);
      continue;
    }
    if (settings.confirmed.has(row)) near.push({ row, text, item: item.id, name: item.name });
    const entry = entryOf(at, item, settings, shop);
    if (typeof entry === 'string') {
      refuse(entry);
      continue;
    }
    const before = known.get(placeOf(entry));
    const same = before && before.price === entry.price && before.on === entry.on && before.from === entry.from;
    (same ? unchanged : taken).push({ row, entry });
  }
  return withoutContradictions({ taken, unchanged, refused, near });
}

/** Two prices for one thing contradict each other, and neither is taken; one that is said twice counts once. */
function withoutContradictions(report: PriceReport): PriceReport {
  const byPlace = new Map<string, Taken[]>();
  for (const each of [...report.taken, ...report.unchanged].sort((a, b) => a.row - b.row)) {
    const place = placeOf(each.entry);
    byPlace.set(place, [...(byPlace.get(place) ?? []), each]);
  }
  const out: RefusedRow[] = [];
  for (const group of byPlace.values()) {
    if (group.length < 2) continue;
    const differ = new Set(group.map(({ entry }) => entry.price)).size > 1;
    for (const { row, entry } of differ ? group : group.slice(1)) {
      const others = group.filter((each) => each.row !== row).map((each) => each.row);
      out.push({
        row,
        text: entry.item,
        reason: differ ? say.twoPrices(entry.item, others) : say.saidAlready(others[0]!),
      });
    }
  }
  const gone = new Set(out.map(({ row }) => row));
  return {
    ...report,
    taken: report.taken.filter(({ row }) => !gone.has(row)),
    unchanged: report.unchanged.filter(({ row }) => !gone.has(row)),
    refused: [...report.refused, ...out].sort((a, b) => a.row - b.row),
  };
}

interface Index {
  readonly byWord: ReadonlyMap<string, readonly CatalogueItem[]>;
  readonly byId: ReadonlyMap<string, CatalogueItem>;
  readonly byToken: ReadonlyMap<string, readonly CatalogueItem[]>;
}

const tokens = (text: string): readonly string[] => [...new Set(text.toLowerCase().match(/[\p{L}]+|\d+/gu) ?? [])];

function indexOf(items: readonly CatalogueItem[]): Index {
  const byWord = new Map<string, CatalogueItem[]>();
  const byToken = new Map<string, CatalogueItem[]>();
  for (const item of items) {
    for (const word of new Set([item.id, item.partNumber ?? '', item.name].map(alike)))
      if (word !== '') byWord.set(word, [...(byWord.get(word) ?? []), item]);
    for (const token of tokens(item.name)) byToken.set(token, [...(byToken.get(token) ?? []), item]);
  }
  return { byWord, byToken, byId: new Map(items.map((item) => [item.id, item])) };
}

/** Why a row has no item. */
interface NoItem {
  readonly reason: string;
  readonly severalMeant: boolean;
}

const noItem = (reason: string, severalMeant = false): NoItem => ({ reason, severalMeant });

/** The item of a row, or why it has none. */
function itemOf(
  at: (column: PriceColumn) => PriceCell,
  row: number,
  settings: ListSettings,
  { byWord, byId }: Index,
): CatalogueItem | NoItem {
  const said = settings.confirmed.get(row);
  if (said !== undefined) return byId.get(said) ?? noItem(say.noItem(said));
  const words = [textOf(at('item')), textOf(at('description'))].filter((word) => word !== '');
  if (words.length === 0) return noItem(say.nothingNamed);
  for (const word of words) {
    const found = byWord.get(alike(word)) ?? [];
    if (found.length === 1) return found[0]!;
    const ids = found.map((each) => each.id);
    if (found.length > 1) return noItem(say.severalItems(word, ids), true);
  }
  return noItem(say.noItem(words[0]!));
}

/** The item most alike by its words, when most of them are the same; sizes must agree, or it is another item. */
function nearestOf(text: string, { byToken }: Index): CatalogueItem | undefined {
  const words = tokens(text);
  const counts = new Map<CatalogueItem, number>();
  for (const word of words) for (const item of byToken.get(word) ?? []) counts.set(item, (counts.get(item) ?? 0) + 1);
  let best: { readonly item: CatalogueItem; readonly share: number } | undefined;
  for (const [item, common] of counts) {
    const share = (2 * common) / (words.length + tokens(item.name).length);
    const sized = tokens(item.name).every((word) => !/^\d/.test(word) || words.includes(word));
    if (sized && share >= 0.6 && (!best || share > best.share)) best = { item, share };
  }
  return best?.item;
}

/** The price of a row as it goes into the brief, or why it cannot. */
function entryOf(
  at: (column: PriceColumn) => PriceCell,
  item: CatalogueItem,
  settings: ListSettings,
  shop: Shop,
): PriceEntry | string {
  const price = readPrice(at('price'), settings.decimal);
  if (!price.ok) return say.price[price.why](textOf(at('price')));
  const stated = textOf(at('currency')).toUpperCase();
  if (stated !== '' && price.currency !== null && stated !== price.currency)
    return say.twoCurrencies(stated, price.currency);
  const currency = stated || price.currency || settings.currency;
  if (currency === null || !/^[A-Z]{3}$/.test(currency)) return say.noCurrency;
  if (shop.currency !== null && currency !== shop.currency) return say.otherCurrency(currency, shop.currency);
  const per = perOf(textOf(at('unit')), item, settings.unitsAsSold);
  if (typeof per === 'string') return per;
  const written = textOf(at('date'));
  const on = written === '' ? settings.date : readDay(written, settings.dateOrder);
  if (!on) return written === '' ? say.noDay : say.unreadableDay(written);
  return { item: item.id, price: `${price.amount} ${currency}`, ...per, on, from: settings.from };
}

/** What the price is for: of track and cloth the very piece, of all else the unit that the catalogue sells by. */
function perOf(unit: string, item: CatalogueItem, asSold: boolean): { readonly per?: string } | string {
  const sold = soldBy(item.kind);
  if (sold === 'stock piece' || sold === 'panel') {
    const read = unit === '' ? null : parseQuantity(unit, 'length');
    const size = read?.ok
      ? item.sizes.find((each) => {
          const known = parseQuantity(each, 'length');
          return known.ok && Math.abs(known.value - read.value) < 5e-4;
        })
      : undefined;
    return size === undefined ? say.whichSize(item.id, item.sizes) : { per: size };
  }
  if (unit === '') return asSold ? { per: sold } : say.noUnit(item.id, sold);
  return unitOfWord(unit) === sold ? { per: sold } : say.otherUnit(item.id, sold, unit);
}

/** Prices of one item and size take each other's place. */
export function placeOf({ item, per }: Pick<PriceEntry, 'item' | 'per'>): string {
  const read = per === undefined ? null : parseQuantity(per, 'length');
  return read?.ok && unitOfWord(per!) === null ? `${item} ${read.value.toFixed(4)}` : item;
}

/** The prices of the project with those of a list in their place; the others stay as they are. */
export function withPrices(before: readonly PriceEntry[], taken: readonly Taken[]): readonly PriceEntry[] {
  const fresh = new Map(taken.map(({ entry }) => [placeOf(entry), entry]));
  const kept = before.map((each) => {
    const place = placeOf(each);
    const entry = fresh.get(place);
    fresh.delete(place);
    return entry ?? each;
  });
  return [...kept, ...fresh.values()];
}

/** Words that heads of columns use. Common practice. */
const heads: Readonly<Record<PriceColumn, RegExp>> = {
  item: /\b(item|part|article|artikel|art|order|sku|id|number|no|nr|ref)\b/i,
  description: /\b(desc\w*|name|designation|text|bezeichnung|title)\b/i,
  price: /\b(price|preis|net|unit price|amount|cost|prix)\b/i,
  currency: /\b(currency|curr|ccy|w(ä|ae)hrung)\b/i,
  unit: /\b(unit|uom|per|einheit|size|length)\b/i,
  date: /\b(date|valid|datum|from|since)\b/i,
};

/** Which column is probably what, by the words in the row of heads. A person looks at it before anything is read. */
export function proposeColumns(head: PriceRow): ColumnChoice {
  const free = new Set(head.map((_, i) => i));
  const choose = (column: PriceColumn): number | null => {
    const found = [...free].find((i) => heads[column].test(textOf(head[i]).replace(/[_.]/g, ' ')));
    if (found !== undefined) free.delete(found);
    return found ?? null;
  };
  // The most telling heads first: "unit price" is a price, "price date" a date.
  const date = choose('date');
  const currency = choose('currency');
  const price = choose('price');
  const description = choose('description');
  const item = choose('item');
  return { item, description, price, currency, unit: choose('unit'), date };
}

/** The row that names the columns: the first with words in two cells and no price among them. */
export function headRowOf(rows: readonly PriceRow[]): number {
  return rows.slice(0, 20).findIndex((row) => {
    const words = row.filter((cell) => typeof cell === 'string' && /\p{L}/u.test(cell));
    const proposed = Object.values(proposeColumns(row)).filter((place) => place !== null).length;
    return words.length >= 2 && proposed >= 2 && row.every((cell) => typeof cell !== 'number');
  });
}
