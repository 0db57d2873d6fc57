import { parseQuantity } from '@cloche/engine';

const units: Readonly<Record<string, number>> = { mm: 1e-3, cm: 1e-2, m: 1, in: 0.0254, ft: 0.3048 };

export function metresOf(text: unknown): number | null {
  if (typeof text !== 'string') return null;
  const read = parseQuantity(text, 'length');
  return read.ok ? read.value : null;
}

/** A length in the unit that the writer used before (inches for feet with inches), to a tenth of a millimetre. */
export function lengthLike(before: unknown, metres: number): string {
  const names = String(before).match(/[a-z]+/gi) ?? [];
  const unit = names.length > 1 ? 'in' : names[0] && names[0] in units ? names[0] : 'm';
  const factor = units[unit]!;
  const decimals = Math.max(0, Math.round(Math.log10(factor / 1e-4)));
  return `${Number((metres / factor).toFixed(decimals))} ${unit}`;
}

/** The nearest multiple of a step; half an inch for places written in inches and feet, else 10 mm. */
export const snapped = (before: unknown, metres: number): number => {
  const step = /in|ft|["']/.test(String(before)) ? 0.0127 : 0.01;
  return Math.round(metres / step) * step;
};
