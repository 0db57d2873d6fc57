/** How a list writes decimals; null while it could be either. */
export type Decimal = 'comma' | 'point';

export type PriceRead =
  | { readonly ok: true; readonly amount: string; readonly currency: string | null }
  | { readonly ok: false; readonly why: 'none' | 'formula' | 'negative' | 'zero' | 'unreadable' };

const signs: Readonly<Record<string, string>> = { '€': 'EUR', '£': 'GBP' };

/** Numbers as each way writes them: grouped by three, or not at all. */
const shapes: Readonly<Record<Decimal, RegExp>> = {
  comma: /^(\d{1,3}(?:[. '\u2019]\d{3})+|\d+)(?:,(\d+))?$/,
  point: /^(\d{1,3}(?:[, '\u2019]\d{3})+|\d+)(?:\.(\d+))?$/,
};

/** A plain decimal: numbers of a spreadsheet carry the noise of binary fractions, which six places cut off. */
const decimalOf = (value: number): string => {
  const text = value.toFixed(6).replace(/0+$/, '').replace(/\.$/, '');
  return /\.\d$/.test(text) ? `${text}0` : text;
};

/** The bare number of a price text, and the currency that stands with it. */
export function bare(text: string): { readonly number: string; readonly currency: string | null } {
  const clean = text.replace(/[\u00a0\u202f\u2009]/g, ' ').trim();
  const found = /[A-Z]{3}|[€£]/.exec(clean)?.[0] ?? null;
  const number = found === null ? clean : clean.replace(found, '').trim();
  return { number, currency: found === null ? null : (signs[found] ?? found) };
}

/** Reads one price; nothing is taken as a price that could also be something else. */
export function readPrice(cell: string | number | null, decimal: Decimal): PriceRead {
  if (cell === null || cell === '') return { ok: false, why: 'none' };
  if (typeof cell === 'number') return priced(cell < 0, decimalOf(Math.abs(cell)), null);
  const text = cell.trim();
  if (text === '') return { ok: false, why: 'none' };
  if (/^[=@]/.test(text)) return { ok: false, why: 'formula' };
  const { number, currency } = bare(text);
  const negative = /^[-\u2212]|-$|^\(.*\)$/.test(number);
  const match = shapes[decimal].exec(number.replace(/^[-\u2212(+]\s*|\s*[-)]$/g, ''));
  if (!match) return { ok: false, why: 'unreadable' };
  const whole = match[1]!.replace(/\D/g, '').replace(/^0+(?=\d)/, '');
  return priced(negative, match[2] ? `${whole}.${match[2].padEnd(2, '0')}` : whole, currency);
}

function priced(negative: boolean, amount: string, currency: string | null): PriceRead {
  if (/^[0.]*$/.test(amount)) return { ok: false, why: 'zero' };
  return negative ? { ok: false, why: 'negative' } : { ok: true, amount, currency };
}

/**
 * What the texts of a column say about decimals: "1.234,56" and "12,5" can only be one thing, "1.234" can be two.
 * @returns null when nothing tells, or when both ways occur
 */
export function decimalOfColumn(cells: readonly (string | number | null)[]): Decimal | null {
  const texts = cells.flatMap((cell) => (typeof cell === 'string' && /\d/.test(cell) ? [bare(cell).number] : []));
  const only = (way: Decimal, other: Decimal) =>
    texts.some((t) => shapes[way].test(t) && !shapes[other].test(t) && /[.,]/.test(t));
  const [comma, point] = [only('comma', 'point'), only('point', 'comma')];
  if (comma !== point) return comma ? 'comma' : 'point';
  // Whole numbers alone read the same either way.
  return !comma && texts.every((t) => !/[.,]/.test(t)) ? 'point' : null;
}

export type DateOrder = 'day first' | 'month first';

const dayOf = (year: number, month: number, day: number): string | null => {
  const text = `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
  const date = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text) ? text : null;
};

/**
 * A day as lists write it: 2026-11-02, 2.11.2026, 2/11/2026. Two-digit years are not read.
 * Source: ISO 8601; points between the parts mean day first (common practice).
 */
export function readDay(text: string, order: DateOrder | null): string | null {
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text.trim());
  if (iso) return dayOf(Number(iso[1]), Number(iso[2]), Number(iso[3]));
  const parts = /^(\d{1,2})([./-])(\d{1,2})\2(\d{4})$/.exec(text.trim());
  if (!parts) return null;
  const [a, b, year] = [Number(parts[1]), Number(parts[3]), Number(parts[4])];
  if (parts[2] === '.' || a > 12) return dayOf(year, b, a);
  if (b > 12) return dayOf(year, a, b);
  if (a === b) return dayOf(year, a, b);
  if (order === null) return null;
  return order === 'day first' ? dayOf(year, b, a) : dayOf(year, a, b);
}

/** True where a day reads differently by the order of its parts. */
export const isDoubtfulDay = (text: string): boolean =>
  readDay(text, null) === null && readDay(text, 'day first') !== null;
