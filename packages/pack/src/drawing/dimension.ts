import { groupDigits } from '@cloche/engine';
import { fine, ink, narrow } from './inks.js';
import { clearedGround, line, text, textWidth } from './marks.js';
import type { Mark, PaperPoint } from './types.js';

/** Height of dimension text [mm]. Source: 2.5 mm on A1 to A4 (handbook of deliverables 1.4, published). */
export const dimensionText = 2.5;
/** Half of the oblique stroke that ends a dimension line [mm]; usual on construction drawings (ISO 129-1, from memory). */
const stroke = 1.1;
/** Extension lines pass the dimension line by eight line widths (ISO 129-1, from memory) [mm]. */
const past = 2;

export interface ChainSpec {
  /** Values along the chain in metres, ascending; each printed piece is the difference of two. */
  readonly stops: readonly number[];
  /** Paper coordinate of a stop along the chain. */
  readonly along: (stop: number) => number;
  /** Paper coordinate of the dimension line across the chain. */
  readonly across: number;
  /** Paper coordinate at which the extension lines begin. */
  readonly from: number;
  readonly upright: boolean;
}

/**
 * A chain of dimensions: the numbers are the model's, in whole millimetres.
 * Source: ISO 129-1:2018 (from memory): text over the line and parallel to it, read from the bottom or from the right.
 */
export function dimensionChain(spec: ChainSpec): Mark[] {
  const place = (along: number, across: number): PaperPoint => (spec.upright ? [across, along] : [along, across]);
  const stops = spec.stops.map((stop) => ({ stop, at: spec.along(stop) }));
  if (stops.length < 2) return [];
  const outward = Math.sign(spec.across - spec.from) || 1;
  const lines: Mark[] = stops.flatMap(({ at }) => [
    line(place(at, spec.from + outward), place(at, spec.across + outward * past), narrow),
    line(place(at - stroke, spec.across + stroke), place(at + stroke, spec.across - stroke), {
      width: 0.35,
      colour: ink,
    }),
  ]);
  lines.push(line(place(stops[0]!.at, spec.across), place(stops[stops.length - 1]!.at, spec.across), narrow));
  const style = { anchor: 'middle', ...(spec.upright ? { turn: Math.PI / 2 } : {}) } as const;
  const numbers = placedNumbers(stops);
  const off = (raised: boolean) => spec.across - (raised ? dimensionText + 1.8 : 0.9);
  const ground = ({ words, at, raised }: PlacedNumber) =>
    clearedGround(place(at, off(raised)), words, dimensionText, style);
  // Grounds clear what runs under the numbers: of a raised one also the extension lines of its neighbours.
  return [
    ...numbers.filter((n) => !n.raised).map(ground),
    ...lines,
    ...numbers
      .filter((n) => n.raised)
      .flatMap((n) => [line(place(n.middle, spec.across), place(n.at, off(true) + 0.6), fine), ground(n)]),
    ...numbers.map((n) => text(place(n.at, off(n.raised)), n.words, dimensionText, style)),
  ];
}

interface Stop {
  readonly stop: number;
  readonly at: number;
}

interface PlacedNumber {
  readonly words: string;
  /** Middle of its piece of the chain, and of its text [mm on paper]. */
  readonly middle: number;
  readonly at: number;
  readonly raised: boolean;
}

/** Where a piece is shorter than its number, the number is raised, and moved on along the chain past the raised one before it. */
function placedNumbers(stops: readonly Stop[]): PlacedNumber[] {
  const ahead = Math.sign(stops[stops.length - 1]!.at - stops[0]!.at);
  let taken = Number.NEGATIVE_INFINITY;
  return stops.slice(1).map((b, i): PlacedNumber => {
    const a = stops[i]!;
    const words = groupDigits(Math.round(b.stop * 1000) - Math.round(a.stop * 1000));
    const width = textWidth(words, dimensionText);
    const middle = (a.at + b.at) / 2;
    if (width + 1 <= Math.abs(b.at - a.at)) return { words, middle, at: middle, raised: false };
    const along = Math.max(middle * ahead, taken + width / 2 + 1);
    taken = along + width / 2;
    return { words, middle, at: along * ahead, raised: true };
  });
}

/** Ascending stops without doubles: closer than half a millimetre is the same place on a drawing in whole millimetres. */
export function distinctStops(values: readonly number[]): number[] {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.filter((value, i) => i === 0 || value - sorted[i - 1]! > 0.0005);
}
