import { parseQuantity } from '@cloche/engine';

const metresIn: Readonly<Record<string, number>> = { mm: 1e-3, cm: 1e-2, m: 1, in: 0.0254, ft: 0.3048 };
/** A length in feet and inches, as people write it. */
const feetAndInches = /^\s*\d+\s*ft\s+\d+(?:\.\d+)?\s*in\s*$/;

/** Quarter turns and mirror images must come back to where they were: finer than any rounding adds up to [m]. */
export const exactly = 1e-10;
/** What a person moves or lines up: a hundredth of a millimetre stays readable in inches and metres [m]. */
export const closely = 1e-5;

const rounded = (value: number, finest: number): number => {
  const decimals = Math.max(0, Math.min(15, Math.ceil(-Math.log10(finest) - 1e-9)));
  const number = Number(value.toFixed(decimals));
  return Object.is(number, -0) ? 0 : number;
};

/**
 * A length in the unit and form that the writer used before.
 * @param before what stood there
 * @param finest the step that it is rounded to, at most [m]
 */
export function lengthTo(before: unknown, metres: number, finest: number): string {
  const text = String(before);
  if (feetAndInches.test(text) && metres >= 0) {
    const inches = rounded(metres / 0.0254, finest / 0.0254);
    const feet = Math.floor(inches / 12 + 1e-9);
    return `${feet} ft ${rounded(inches - 12 * feet, finest / 0.0254)} in`;
  }
  const names = text.match(/[a-z]+/gi) ?? [];
  const unit = names.length > 1 ? 'in' : names[0] && names[0] in metresIn ? names[0] : 'm';
  const factor = metresIn[unit]!;
  return `${rounded(metres / factor, finest / factor)} ${unit}`;
}

/** The angle between minus and plus half a turn. */
export function wrapped(angle: number): number {
  const turns = angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
  return turns <= -Math.PI + 1e-9 ? turns + 2 * Math.PI : turns;
}

/** An angle between minus and plus half a turn, in the unit used before; degrees where nothing stood. */
export function angleTo(before: unknown, radians: number): string {
  const unit = /\b(m?rad)\s*$/.exec(String(before))?.[1] ?? 'deg';
  const factor = unit === 'rad' ? 1 : unit === 'mrad' ? 1e-3 : Math.PI / 180;
  return `${rounded(wrapped(radians) / factor, 1e-9 / factor)} ${unit}`;
}

/** An angle of the brief; zero where none stands or it cannot be read [rad]. */
export function radiansOf(written: unknown): number {
  const read = typeof written === 'string' ? parseQuantity(written, 'angle') : undefined;
  return read?.ok ? read.value : 0;
}
