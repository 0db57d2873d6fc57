import type { SheetModel } from './sheet-model.js';

/** How a rectangle is cut: a piece, two parts beside each other, or two parts above each other. Sizes hold the kerf [um]. */
export type Slice =
  | {
      readonly kind: 'piece';
      readonly of: number;
      readonly width: number;
      readonly height: number;
      readonly turned: boolean;
    }
  | {
      readonly kind: 'beside' | 'above';
      readonly width: number;
      readonly height: number;
      readonly first: Slice;
      readonly second: Slice;
    };

/** A number of pieces of each kind as one index, and back: mixed radix over demand + 1. */
export interface Multisets {
  readonly count: number;
  readonly strides: readonly number[];
  readonly counts: (index: number) => number[];
}

export function multisets(demand: readonly number[]): Multisets {
  const strides: number[] = [];
  let count = 1;
  for (const d of demand) {
    strides.push(count);
    count *= d + 1;
  }
  const counts = (index: number) => demand.map((d, i) => Math.floor(index / strides[i]!) % (d + 1));
  return { count, strides, counts };
}

/** Indices of all parts of a multiset, itself and the empty one among them, rising. */
export function partsOf(sets: Multisets, counts: readonly number[]): number[] {
  let parts = [0];
  counts.forEach((n, i) => {
    parts = Array.from({ length: n + 1 }, (_, k) => k).flatMap((k) => parts.map((p) => p + k * sets.strides[i]!));
  });
  return parts.sort((a, b) => a - b);
}

/** Keeps a slice unless another is no wider and no higher; drops those it beats. */
function keepSmallest(slices: Slice[], next: Slice): void {
  if (slices.some((s) => s.width <= next.width && s.height <= next.height)) return;
  for (let i = slices.length - 1; i >= 0; i--)
    if (slices[i]!.width >= next.width && slices[i]!.height >= next.height) slices.splice(i, 1);
  slices.push(next);
}

/**
 * For every choice of pieces all smallest rectangles from which straight through cuts, any number of stages, give them.
 *
 *     one piece: its ways to lie;  S = A + B: (wA + wB, max(hA, hB)) and (max(wA, wB), hA + hB)      kerf held in the sizes
 * A choice that no sheet holds has an empty list. The cost grows with the number of choices squared: for short lists only.
 * Source: slicing trees over subsets (derived).
 */
export function sliceAll(model: SheetModel, sets: Multisets): readonly (readonly Slice[])[] {
  const found: Slice[][] = [[]];
  const [sheetWidth, sheetHeight] = model.sheet;
  const fits = (width: number, height: number) => width <= sheetWidth && height <= sheetHeight;
  for (let index = 1; index < sets.count; index++) {
    const counts = sets.counts(index);
    const slices: Slice[] = [];
    if (counts.reduce((a, b) => a + b) === 1) {
      const of = counts.indexOf(1);
      for (const size of model.kinds[of]!.sizes) keepSmallest(slices, { kind: 'piece', of, ...size });
    }
    for (const part of partsOf(sets, counts)) {
      const rest = index - part;
      if (part === 0 || part > rest) continue;
      for (const first of found[part]!)
        for (const second of found[rest]!) {
          const beside = { width: first.width + second.width, height: Math.max(first.height, second.height) };
          const above = { width: Math.max(first.width, second.width), height: first.height + second.height };
          if (fits(beside.width, beside.height)) keepSmallest(slices, { kind: 'beside', ...beside, first, second });
          if (fits(above.width, above.height)) keepSmallest(slices, { kind: 'above', ...above, first, second });
        }
    }
    found.push(slices);
  }
  return found;
}
