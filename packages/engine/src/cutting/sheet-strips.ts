import type { SheetModel } from './sheet-model.js';
import { type Multisets, partsOf, type Slice } from './sheet-slicing.js';

type Way = SheetModel['kinds'][number]['sizes'][number];

/** The lowest strip over the full first side that holds the pieces beside each other, or null. */
export function lowestStrip(model: SheetModel, counts: readonly number[]): Slice | null {
  const heights = counts
    .flatMap((n, i) => (n > 0 ? model.kinds[i]!.sizes.map((s) => s.height) : []))
    .sort((a, b) => a - b);
  for (const height of heights) {
    const ways = counts.map((n, i) => (n > 0 ? narrowest(model, i, height) : null));
    if (counts.some((n, i) => n > 0 && !ways[i])) continue;
    const width = counts.reduce((sum, n, i) => sum + n * (ways[i]?.width ?? 0), 0);
    if (width > model.sheet[0]) continue;
    const pieces = counts.flatMap((n, of) =>
      Array.from({ length: n }, (): Slice => ({ kind: 'piece', of, ...(ways[of] as Way) })),
    );
    return pieces.reduce((first, second) => joined('beside', first, second));
  }
  return null;
}

const narrowest = (model: SheetModel, kind: number, height: number): Way | null =>
  model.kinds[kind]!.sizes.filter((s) => s.height <= height).sort((a, b) => a.width - b.width)[0] ?? null;

export const joined = (kind: 'beside' | 'above', first: Slice, second: Slice): Slice =>
  kind === 'beside'
    ? { kind, first, second, width: first.width + second.width, height: Math.max(first.height, second.height) }
    : { kind, first, second, width: Math.max(first.width, second.width), height: first.height + second.height };

/**
 * For every choice of pieces the lowest stack of strips that holds it: two stages with trimming. A choice that no sheet holds
 * has an empty list.
 *
 *     height(S) = min over strips A of S: height of the strip of A + height(S - A)
 * Source: enumeration of strip partitions (derived); the model of Lodi, Martello & Vigo (from memory).
 */
export function stripsAll(model: SheetModel, sets: Multisets): readonly (readonly Slice[])[] {
  const strips = Array.from({ length: sets.count }, (_, i) => (i === 0 ? null : lowestStrip(model, sets.counts(i))));
  const best: (Slice | null)[] = [null];
  for (let index = 1; index < sets.count; index++) {
    let lowest: Slice | null = strips[index] ?? null;
    for (const part of partsOf(sets, sets.counts(index))) {
      const strip = strips[part];
      const rest = best[index - part];
      if (!strip || !rest) continue;
      if (!lowest || strip.height + rest.height < lowest.height) lowest = joined('above', strip, rest);
    }
    best.push(lowest);
  }
  return best.map((s) => (s && s.height <= model.sheet[1] ? [s] : []));
}
