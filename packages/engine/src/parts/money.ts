/** An exact decimal: `digits` times ten to the power of minus `places`. Binary fractions cannot hold a price. */
interface Decimal {
  readonly digits: bigint;
  readonly places: number;
}

/** Digits of the minor unit that differ from two. Source: ISO 4217 (from memory). */
const minorUnit: Readonly<Record<string, number>> = {
  JPY: 0,
  KRW: 0,
  CLP: 0,
  ISK: 0,
  VND: 0,
  KWD: 3,
  BHD: 3,
  OMR: 3,
  JOD: 3,
  TND: 3,
};
export const minorDigits = (currency: string): number => minorUnit[currency] ?? 2;

function decimal(text: string): Decimal {
  const match = /^(-?)(\d+)(?:\.(\d+))?$/.exec(text);
  if (!match) throw new Error(`"${text}" is no decimal number`);
  const [, sign = '', whole = '0', part = ''] = match;
  return { digits: BigInt(`${sign}${whole}${part}`), places: part.length };
}

function rounded({ digits, places }: Decimal, to: number): string {
  const shift = 10n ** BigInt(Math.abs(to - places));
  let kept = digits;
  if (to >= places) kept = digits * shift;
  else {
    const size = digits < 0n ? -digits : digits;
    const half = (size + shift / 2n) / shift;
    kept = digits < 0n ? -half : half;
  }
  const text = String(kept < 0n ? -kept : kept).padStart(to + 1, '0');
  const body = to === 0 ? text : `${text.slice(0, -to)}.${text.slice(-to)}`;
  return kept < 0n ? `-${body}` : body;
}

/**
 * A line of a priced list.
 *
 *     line = round(quantity * price), half away from zero, to the minor unit
 * @param quantity decimal text, in the unit that the price is for
 * @param price    decimal text
 * @param currency ISO 4217 code
 * @returns        decimal text with the digits of the minor unit
 * Source: handbook of deliverables 2.3 (common practice).
 */
export function linePrice(quantity: string, price: string, currency: string): string {
  const [q, p] = [decimal(quantity), decimal(price)];
  return rounded({ digits: q.digits * p.digits, places: q.places + p.places }, minorDigits(currency));
}

/** The total is the sum of the rounded lines, so that a reader with a pocket calculator gets it too. */
export function totalPrice(lines: readonly string[], currency: string): string {
  const places = minorDigits(currency);
  const scaled = lines.map(decimal).map((d) => d.digits * 10n ** BigInt(Math.max(0, places - d.places)));
  return rounded({ digits: scaled.reduce((sum, d) => sum + d, 0n), places }, places);
}

/** A number as plain decimal text, rounded to `places` and without idle zeros. */
export function decimalText(value: number, places: number): string {
  const text = value.toFixed(places);
  const short = places === 0 ? text : text.replace(/\.?0+$/, '');
  return short === '-0' ? '0' : short;
}
