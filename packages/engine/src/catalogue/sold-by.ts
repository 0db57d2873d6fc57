import type { ItemKind } from './schema.js';

/** What the price of an item is for. Track and cloth have a price for each stock piece and each panel width instead. */
export type SoldBy = 'piece' | 'm' | 'm2' | 'stock piece' | 'panel';

const metre: ReadonlySet<ItemKind> = new Set<ItemKind>([
  'profile',
  'slot cover',
  'panel insert',
  'hem weight',
  'fascia',
  'edge brush',
]);

export function soldBy(kind: ItemKind): SoldBy {
  if (kind === 'track') return 'stock piece';
  if (kind === 'cloth') return 'panel';
  if (kind === 'sheet') return 'm2';
  return metre.has(kind) ? 'm' : 'piece';
}

/** Ways in which price lists write the same unit. Source: UN/ECE Recommendation 20 for the codes (published); words from memory. */
const unitWords: Readonly<Record<'piece' | 'm' | 'm2', readonly string[]>> = {
  piece: ['piece', 'pieces', 'pc', 'pcs', 'each', 'ea', 'h87', 'c62', 'unit', 'set'],
  m: ['m', 'metre', 'meter', 'mtr', 'lm', 'per metre', '1 m'],
  m2: ['m2', 'm²', 'square metre', 'sqm', 'mtk', '1 m2'],
};

/** The unit that a word of a price list means; null for anything else. */
export function unitOfWord(word: string): 'piece' | 'm' | 'm2' | null {
  const plain = word
    .trim()
    .toLowerCase()
    .replace(/^(per|\/)\s*/, '');
  const found = Object.entries(unitWords).find(([, words]) => words.includes(plain));
  return found ? (found[0] as 'piece' | 'm' | 'm2') : null;
}
