import { parse } from 'csv-parse/browser/esm/sync';
import { type Separator, separators } from './list-limits.js';

/** Records of a text with one separator; a quote out of place is a letter like any other. */
export const records = (text: string, delimiter: Separator, to?: number): string[][] =>
  parse(text, {
    delimiter,
    bom: true,
    relax_column_count: true,
    relax_quotes: true,
    skip_empty_lines: false,
    ...(to === undefined ? {} : { to }),
  });

/**
 * The separator that cuts the first rows into equally many cells, more than one.
 * @returns null when none does, or when several do equally well: then a person says it
 */
export function separatorOf(text: string): Separator | null {
  const fits = separators.flatMap((separator) => {
    try {
      const rows = records(text, separator, 40).filter((row) => row.some((cell) => cell !== ''));
      const counts = new Map<number, number>();
      for (const { length } of rows) counts.set(length, (counts.get(length) ?? 0) + 1);
      const [columns = 1, often = 0] = [...counts].sort((a, b) => b[1] - a[1])[0] ?? [];
      return columns > 1 && often >= rows.length * 0.8 ? [{ separator, columns }] : [];
    } catch {
      return [];
    }
  });
  if (fits.length === 1) return fits[0]!.separator;
  const most = Math.max(0, ...fits.map(({ columns }) => columns));
  const best = fits.filter(({ columns }) => columns === most);
  // A decimal comma cuts cells too: more cells are no proof, so only a clear lead decides.
  const others = fits.filter(({ columns }) => columns !== most);
  return best.length === 1 && others.every(({ columns }) => columns * 2 <= most) ? best[0]!.separator : null;
}
