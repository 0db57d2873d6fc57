import type { SheetModel } from './sheet-model.js';

/**
 * Sheets that any plan needs at least: by area, and because of two pieces both wider and higher than half a sheet however they lie
 * only one comes from a sheet.
 *
 *     area: ceil(sum (w + k)(h + k) / ((W + k)(H + k)))
 * Source: area bound and large pieces (derived).
 */
export function sheetBound(model: SheetModel): {
  readonly area: number;
  readonly large: number;
  readonly bound: number;
} {
  const [width, height] = model.sheet;
  const total = model.kinds.reduce(
    (sum, kind, i) => sum + model.demand[i]! * kind.sizes[0]!.width * kind.sizes[0]!.height,
    0,
  );
  const isLarge = (s: { readonly width: number; readonly height: number }) =>
    2 * s.width > width && 2 * s.height > height;
  const large = model.kinds.reduce((sum, kind, i) => sum + (kind.sizes.every(isLarge) ? model.demand[i]! : 0), 0);
  const area = Math.ceil(total / (width * height));
  return { area, large, bound: Math.max(area, large) };
}
