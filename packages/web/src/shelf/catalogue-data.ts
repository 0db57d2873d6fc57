import type { ItemKind } from '@cloche/engine';
import { parse } from 'yaml';
import { shownText, valueAt } from '../brief/path.js';
import type { TextFile } from '../engine/contract.js';

/** An item as its file writes it, units and all. */
export interface CatalogueItem {
  readonly id: string;
  readonly name: string;
  readonly kind: ItemKind;
  readonly partNumber: string | null;
  readonly price: string | null;
  /** Stock pieces or panels that have prices of their own. */
  readonly sizes: readonly string[];
  readonly data: Readonly<Record<string, unknown>>;
  readonly group: CatalogueGroup;
}

export interface CatalogueGroup {
  readonly file: string;
  readonly title: string;
  readonly invented: boolean;
  readonly priceDate: string;
  readonly priceBasis: string;
}

/** A price of the brief, as written there. */
export interface PriceEntry {
  readonly item: string;
  readonly price: string;
  readonly per?: string;
  readonly on: string;
  readonly from: string;
  readonly because?: string;
}

const list = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

/** Catalogue files as written: the engine has found them sound before they are served. */
export function catalogueItems(files: readonly TextFile[]): readonly CatalogueItem[] {
  return files.flatMap(({ name: file, text }) => {
    const read: unknown = parse(text);
    const head = (key: string) => shownText(valueAt(read, ['catalogue', key]));
    const group: CatalogueGroup = {
      file,
      title: head('group'),
      invented: valueAt(read, ['catalogue', 'invented']) === true,
      priceDate: head('priceDate'),
      priceBasis: head('priceBasis'),
    };
    return list(valueAt(read, ['items'])).map((data): CatalogueItem => {
      const text = (key: string) => shownText(valueAt(data, [key]));
      const sizes = [
        ...list(valueAt(data, ['stock'])).map((each) => shownText(valueAt(each, ['length']))),
        ...list(valueAt(data, ['widths'])).map((each) => shownText(valueAt(each, ['width']))),
      ];
      return {
        id: text('id'),
        name: text('name'),
        kind: text('kind') as ItemKind,
        partNumber: text('partNumber') || null,
        price: text('price') || null,
        sizes,
        data: data as Readonly<Record<string, unknown>>,
        group,
      };
    });
  });
}

/** The currency that all prices of the catalogue are in; null where nothing is priced. */
export function currencyOf(items: readonly CatalogueItem[]): string | null {
  for (const { price, data } of items) {
    const within = [...list(data.stock), ...list(data.widths)].map((each) => shownText(valueAt(each, ['price'])));
    const found = [price ?? '', ...within].find((each) => each !== '');
    if (found) return found.split(' ')[1] ?? null;
  }
  return null;
}

/** The prices of the brief that are written well enough to compare with. */
export const pricesOf = (data: unknown): readonly PriceEntry[] =>
  list(valueAt(data, ['site', 'prices'])).filter(
    (each): each is PriceEntry => shownText(valueAt(each, ['item'])) !== '',
  );
