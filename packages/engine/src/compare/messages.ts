import type { Vec3 } from '../floor/geometry/vec.js';
import { groupDigits, numberText } from '../floor/number-text.js';
import type { FieldChange } from './fields.js';
import type { ThingChange } from './geometry.js';
import type { Cost, Pair, SizeChange } from './parts.js';
import { inShownUnit, type QuantityName, quantities, sameLength } from './quantities.js';
import type { FactValue } from './thing.js';

/** Printed units: raised figures and the degree sign. */
const unitWords: Readonly<Record<string, string>> = { m2: 'm²', 'm3/h': 'm³/h', deg: '°' };

/** Millimetres with as many decimals as the length has, at most three. */
export function lengthText(metres: number): string {
  const thousandths = Math.round(metres * 1e6);
  const [whole, part] = [Math.trunc(thousandths / 1000), Math.abs(thousandths % 1000)];
  const sign = thousandths < 0 && whole === 0 ? '\u2212' : '';
  const decimals = part === 0 ? '' : `.${String(part).padStart(3, '0').replace(/0+$/, '')}`;
  return `${sign}${groupDigits(whole)}${decimals} mm`;
}

const axes = [
  ['east', 'west'],
  ['north', 'south'],
  ['up', 'down'],
] as const;

/** How far and which way: `200 mm south`, `120 mm east, 50 mm north`. */
export const movedText = (by: Vec3): string =>
  by
    .flatMap((d, k) =>
      Math.abs(d) <= sameLength ? [] : [`${lengthText(Math.abs(d))} ${axes[k as 0 | 1 | 2][d > 0 ? 0 : 1]}`],
    )
    .join(', ');

/** `15° counter-clockwise`, seen from above. */
export function turnedText(angle: number): string {
  const degrees = Number(((Math.abs(angle) * 180) / Math.PI).toPrecision(6));
  return `${degrees}° ${angle > 0 ? 'counter-clockwise' : 'clockwise'}`;
}

/** A number with `figures` significant figures and its unit. */
function numberWithUnit(value: number, quantity: QuantityName | null, figures: number): string {
  if (quantity === 'length') return lengthText(value);
  if (quantity === null) return numberText(value, figures);
  const unit: string = quantities[quantity].shown;
  const shown = numberText(inShownUnit(value, quantity), figures);
  return unit === 'deg' ? `${shown}°` : `${shown} ${unitWords[unit] ?? unit}`;
}

function valueText(value: FactValue, quantity: QuantityName | null, figures: number): string {
  if (value === null || value === '') return 'none';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return numberWithUnit(value, quantity, figures);
  if (typeof value === 'string') return value;
  return `(${value.map((v) => lengthText(v).replace(' mm', '')).join(', ')}) mm`;
}

const [fewest, most] = [3, 9];

/** Both values of a field in words, with as many figures as it takes to tell them apart. */
export function factText({ before, after, quantity }: FieldChange): {
  readonly before: string;
  readonly after: string;
} {
  for (let figures = fewest; ; figures++) {
    const texts = { before: valueText(before, quantity, figures), after: valueText(after, quantity, figures) };
    if (texts.before !== texts.after || figures === most) return texts;
  }
}

/** A field in words: `length 1800 mm, was 2000 mm`. */
export function fieldText(change: FieldChange): string {
  const { before, after } = factText(change);
  return `${change.field} ${after}, was ${before}`;
}

/** What became of a thing, in one line without its name: `moved 200 mm south; length 1800 mm, was 2000 mm`. */
export function thingText(thing: ThingChange): string {
  if (thing.change !== 'changed') return thing.change;
  return [
    ...(thing.moved ? [`moved ${movedText(thing.moved)}`] : []),
    ...(thing.turned === null ? [] : [`turned ${turnedText(thing.turned)}`]),
    ...thing.resized.map(fieldText),
    ...thing.changed.map(fieldText),
  ].join('; ');
}

/** Sizes of a piece to a tenth of a millimetre, as the parts list has them: `2188.2 \u00d7 931.5 \u00d7 4 mm`. */
export const sizeText = ({ length, width, thickness }: SizeChange): string =>
  `${[length, width, thickness].flatMap((v) => (v === null ? [] : [Number((v * 1000).toFixed(1))])).join(' \u00d7 ')} mm`;

export const costText = ({ amount, currency }: Cost): string =>
  amount === null ? 'not priced' : `${amount} ${currency}`;

/** More or less to pay: `+199.50 EUR`; empty where nothing is, and words where it cannot be said. */
export function differenceText(difference: string | null, { before, after }: Pair<Cost>): string {
  if (difference === null) return before.currency === after.currency ? 'not priced' : 'another currency';
  if (Number(difference) === 0) return '';
  return `${difference.startsWith('-') ? `\u2212${difference.slice(1)}` : `+${difference}`} ${after.currency}`;
}
