/** A number of a calculation with six significant figures: the contract of what a stranger computes again from. */
export function sixFigures(value: number): string {
  if (!Number.isFinite(value)) return value > 0 ? 'unlimited' : 'not a number';
  const size = Math.abs(value);
  if (size !== 0 && (size < 1e-4 || size >= 1e7)) {
    const [mantissa, exponent] = value.toExponential(5).split('e');
    return `${Number(mantissa)}e${Number(exponent)}`.replace('-', '\u2212');
  }
  return String(Number(value.toPrecision(6))).replace('-', '\u2212');
}
