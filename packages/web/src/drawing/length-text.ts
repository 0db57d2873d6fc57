import { groupDigits, parseQuantity } from '@cloche/engine';
import { valueAt } from '../brief/path.js';

export type Units = 'metric' | 'imperial';

/** What the project is measured in. */
export const unitsOf = (data: unknown): Units =>
  valueAt(data, ['project', 'units']) === 'imperial' ? 'imperial' : 'metric';

const inch = 0.0254;
/** Sixteenths of an inch are the finest marks of a common tape. */
const parts = 16;

const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));

/** `4 ft 6 1/2 in`: feet, inches and the smallest fraction down to sixteenths. */
function feetText(metres: number): string {
  const sixteenths = Math.round(Math.abs(metres) / (inch / parts));
  const [feet, rest] = [Math.floor(sixteenths / (12 * parts)), sixteenths % (12 * parts)];
  const [inches, over] = [Math.floor(rest / parts), rest % parts];
  const d = divisor(over, parts);
  const fraction = over === 0 ? '' : `${over / d}/${parts / d}`;
  const small = [inches > 0 || (feet === 0 && fraction === '') ? `${inches}` : '', fraction].filter(Boolean).join(' ');
  const text = [feet > 0 ? `${feet} ft` : '', small ? `${small} in` : ''].filter(Boolean).join(' ');
  const shown = feet > 0 && small === '0' ? `${feet} ft` : text;
  return metres < 0 && sixteenths > 0 ? `\u2212${shown}` : shown;
}

/** A length as the project is measured: whole millimetres (tenths where there are any), or feet and inches. */
export function lengthText(metres: number, units: Units): string {
  if (units === 'imperial') return feetText(metres);
  const tenths = Math.round(metres * 1e4);
  const [whole, tenth] = [Math.trunc(tenths / 10), Math.abs(tenths % 10)];
  return `${groupDigits(whole)}${tenth === 0 ? '' : `.${tenth}`} mm`;
}

/** A length as it is said: metres to the centimetre (further where it matters), or feet and inches. */
export function spokenLength(metres: number, units: Units): string {
  if (units === 'imperial') return feetText(metres);
  const text = metres.toFixed(4).replace(/0{1,2}$/, '');
  return `${text.startsWith('-') ? `\u2212${text.slice(1)}` : text} m`;
}

/**
 * A length as typed at the pointer, in either system. A number alone is read in the unit that the sheet writes: millimetres, or
 * inches; what was read is always shown beside it.
 * @returns null while it is no length [m]
 */
export function typedLength(text: string, units: Units): number | null {
  const alone = /^[\d.,]+$/.test(text.trim());
  const read = parseQuantity(alone ? `${text.trim()} ${units === 'imperial' ? 'in' : 'mm'}` : text, 'length');
  return read.ok ? read.value : null;
}

/** A length as it is written into the brief by what is drawn: metres, or inches, to a tenth of a millimetre. */
export const writtenLength = (metres: number, units: Units): string =>
  units === 'imperial' ? feetWritten(metres) : `${Number(metres.toFixed(4))} m`;

/** Feet and inches where they say the length to a tenth of a millimetre, else inches in decimals. */
function feetWritten(metres: number): string {
  const sixteenths = metres / (inch / parts);
  const exact = metres >= 0 && Math.abs(sixteenths - Math.round(sixteenths)) * (inch / parts) < 5e-5;
  return exact ? feetText(metres) : `${Number((metres / inch).toFixed(3))} in`;
}

/** Places come to rest on whole steps of this [m]. */
export const gridOf = (units: Units): number => (units === 'imperial' ? inch / 2 : 0.01);
