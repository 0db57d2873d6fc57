import { hashOf, type Shelf, type StockTexts } from '@cloche/store';
import type { TextFile } from './options.js';

/** The data files that everything is computed from. */
export interface Stock {
  /** Hash of all of them: the same stock has the same key. */
  readonly key: string;
  readonly catalogueFiles: readonly TextFile[];
  /** Texts of the site rules by the name of their profile. */
  readonly rulesFiles: Readonly<Record<string, string>>;
}

type Shipped = Pick<Stock, 'catalogueFiles' | 'rulesFiles'>;

export interface StockInForce {
  readonly shipped: Shipped;
  /** What was shipped, with what the shelf replaces or adds. */
  readonly inForce: () => Promise<Stock>;
}

export const byName = (files: readonly TextFile[]): Record<string, string> =>
  Object.fromEntries(files.map(({ name, text }) => [name, text]));

/** A stock of texts by their names, in the order of their names. */
export function stockOf({ catalogue, rules }: StockTexts): Stock {
  const files = (texts: Readonly<Record<string, string>>): TextFile[] =>
    Object.keys(texts)
      .sort()
      .map((name) => ({ name, text: texts[name]! }));
  const catalogueFiles = files(catalogue);
  const rulesFiles = byName(files(rules));
  return { key: hashOf(JSON.stringify([catalogueFiles, rulesFiles])), catalogueFiles, rulesFiles };
}

export const textsOf = ({ catalogueFiles, rulesFiles }: Shipped): StockTexts => ({
  catalogue: byName(catalogueFiles),
  rules: rulesFiles,
});

export function stockInForce(shipped: Shipped, shelf: Shelf): StockInForce {
  return {
    shipped,
    async inForce() {
      const { catalogue, rules } = textsOf(shipped);
      const texts = { catalogue: { ...catalogue }, rules: { ...rules } };
      for (const { kind, name, text } of await shelf.inForce()) texts[kind][name] = text;
      return stockOf(texts);
    },
  };
}
