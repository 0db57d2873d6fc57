/**
 * A number as it stands on sheets: `digits` significant figures (one more when the first digit is 1), plain notation from
 * 1e-4 to below 1e7, else powers of ten.
 * Source: ISO 80000-1 as used in the handbook of deliverables, section 5.2 (from memory).
 */
export function numberText(value: number, digits = 3): string {
  if (!Number.isFinite(value)) return value > 0 ? 'unlimited' : 'not a number';
  if (value === 0) return '0';
  const figures = Math.abs(value).toExponential()[0] === '1' ? digits + 1 : digits;
  const size = Math.abs(value);
  if (size < 1e-4 || size >= 1e7) {
    const [mantissa, exponent] = value.toExponential(figures - 1).split('e');
    return `${trimZeros(mantissa!)}e${Number(exponent)}`;
  }
  const decimals = Math.max(0, figures - 1 - Math.floor(Math.log10(size)));
  return trimZeros(value.toFixed(Math.min(decimals, 12)));
}

const trimZeros = (text: string): string => (text.includes('.') ? text.replace(/\.?0+$/, '') : text);

/** Prefixes by falling size; the last is for anything smaller. */
const prefixes = [
  ['G', 1e9],
  ['M', 1e6],
  ['k', 1e3],
  ['', 1],
  ['m', 1e-3],
  ['\u00b5', 1e-6],
  ['n', 1e-9],
] as const;

/** A unit as it is written for people: `N/mm²` for `N/mm2`, `µm` for `um`, `°C` for `degC`, nothing for a pure number. */
export const unitText = (unit: string): string =>
  unit === '1'
    ? ''
    : unit
        .replace(/\bu(?=(m|s|W|J|rad)\b)/g, '\u00b5')
        .replace(/\bdegC\b/g, '\u00b0C')
        .replace(/(?<=[a-zA-Z])2(?![0-9])/g, '²')
        .replace(/(?<=[a-zA-Z])3(?![0-9])/g, '³')
        .replace(/(?<=[a-zA-Z])4(?![0-9])/g, '⁴');

/**
 * A value with the prefix that leaves one to three digits before the point: `581 kW/m²`, `277 \u00b5J/m²`, `35.5 km`. For units
 * whose first letter a prefix may stand before: never for kg or a square of lengths.
 * Source: ISO 80000-1, numerical values between 0.1 and 1000 preferred (from memory).
 */
export function prefixedText(value: number, unit: string): string {
  if (!Number.isFinite(value) || value === 0) return `${numberText(value)} ${unitText(unit)}`;
  // Rounded first, so that 999.96 becomes 1 k and not 1000.
  const size = Number(Math.abs(value).toPrecision(4));
  const [prefix, factor] = prefixes.find(([, f]) => size >= f) ?? prefixes[prefixes.length - 1]!;
  return `${numberText(value / factor)} ${prefix}${unitText(unit)}`;
}

/** Utilisation with two decimals, three figures from ten up; more where rounding would hide that it is above 1. */
export function utilisationText(value: number): string {
  if (!Number.isFinite(value)) return 'unlimited';
  if (value >= 9.995) return groupedFigures(value, 3);
  const two = value.toFixed(2);
  return value > 1 && Number(two) <= 1 ? value.toFixed(4) : two;
}

/** Rounded to so many figures, its digits grouped: `80 300`. */
export const groupedFigures = (value: number, figures: number): string => {
  const rounded = Number(value.toPrecision(figures));
  return Number.isInteger(rounded) ? groupDigits(rounded) : numberText(rounded, figures);
};

/** A length in whole millimetres: `2 400 mm` with a thin space from five digits up, as drawings want it. */
export const millimetreText = (metres: number): string => `${groupDigits(Math.round(metres * 1000))} mm`;

/** Digits in groups of three by a thin space, from five digits up (ISO 80000-1, from memory). */
export function groupDigits(whole: number): string {
  const digits = String(Math.abs(whole));
  const grouped = digits.length < 5 ? digits : digits.replace(/\B(?=(\d{3})+$)/g, '\u2009');
  return whole < 0 ? `\u2212${grouped}` : grouped;
}
