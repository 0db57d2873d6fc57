import { hashOf, type StockHashes, type StockTexts } from '@cloche/store';
import type { ServerContext } from '../context.js';
import { textsOf } from '../stock.js';
import type { UnpackedProject } from './archive-job.js';

/** A data file that a project was computed with and that is another one on this shelf, or is only on one side. */
export interface ShelfDifference {
  readonly kind: 'catalogue' | 'rules';
  readonly name: string;
  readonly what: 'other' | 'missing here' | 'only here';
  /** The text that came with the project; null for a file that is only here. */
  readonly text: string | null;
}

const mapped = (texts: Readonly<Record<string, string>>): Record<string, string> =>
  Object.fromEntries(Object.entries(texts).map(([name, text]) => [name, hashOf(text)]));

export const hashesOf = ({ catalogue, rules }: StockTexts): StockHashes => ({
  catalogue: mapped(catalogue),
  rules: mapped(rules),
});

export const textsByHash = ({ catalogue, rules }: StockTexts): Record<string, string> =>
  Object.fromEntries([...Object.values(catalogue), ...Object.values(rules)].map((text) => [hashOf(text), text]));

/** Where the data files of a project that came in and those on this shelf differ; null when its archive does not tell. */
export async function shelfDifferences(
  { stock, texts }: Pick<UnpackedProject, 'stock' | 'texts'>,
  context: ServerContext,
): Promise<readonly ShelfDifference[] | null> {
  if (!stock) return null;
  const here = hashesOf(textsOf(await context.stock.inForce()));
  return (['catalogue', 'rules'] as const).flatMap((kind) => {
    const names = [...new Set([...Object.keys(stock[kind]), ...Object.keys(here[kind])])].sort();
    return names.flatMap((name): ShelfDifference[] => {
      const theirs = Object.hasOwn(stock[kind], name) ? stock[kind][name] : undefined;
      const ours = Object.hasOwn(here[kind], name) ? here[kind][name] : undefined;
      if (theirs === ours) return [];
      const what = theirs === undefined ? 'only here' : ours === undefined ? 'missing here' : 'other';
      return [{ kind, name, what, text: theirs === undefined ? null : texts[theirs]! }];
    });
  });
}
