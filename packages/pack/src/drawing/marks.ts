import { capRatio, mediumFactor, regularAdvance, tabularDigit } from './font-metrics.js';
import { ink, paper } from './inks.js';
import type { Anchor, Mark, PaperPoint, Pen } from './types.js';

/** A coordinate as it stands in files: micrometres on paper are more than a plotter can draw. */
export const coordinate = (value: number): string => {
  const text = value.toFixed(3).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
};
export const pointText = (p: PaperPoint): string => `${coordinate(p[0])} ${coordinate(p[1])}`;

const pathOf = (d: string, pen?: Pen, fill?: string, data?: string): Mark => ({
  mark: 'path',
  d,
  ...(pen ? { pen } : {}),
  ...(fill ? { fill } : {}),
  ...(data ? { data } : {}),
});

export const line = (from: PaperPoint, to: PaperPoint, pen: Pen): Mark =>
  pathOf(`M${pointText(from)} L${pointText(to)}`, pen);

export const openData = (points: readonly PaperPoint[]): string => `M${points.map(pointText).join(' L')}`;
export const polyline = (points: readonly PaperPoint[], pen: Pen): Mark => pathOf(openData(points), pen);

export const ringData = (points: readonly PaperPoint[]): string => `${openData(points)} Z`;
export const ring = (points: readonly PaperPoint[], pen?: Pen, fill?: string, data?: string): Mark =>
  pathOf(ringData(points), pen, fill, data);

export const box = (x: number, y: number, width: number, height: number, pen?: Pen, fill?: string): Mark =>
  ring(
    [
      [x, y],
      [x + width, y],
      [x + width, y + height],
      [x, y + height],
    ],
    pen,
    fill,
  );

export const circleData = ([x, y]: PaperPoint, r: number): string => {
  const radius = coordinate(r);
  return `M${pointText([x - r, y])} A${radius} ${radius} 0 1 0 ${pointText([x + r, y])} A${radius} ${radius} 0 1 0 ${pointText([x - r, y])} Z`;
};
export const circle = (centre: PaperPoint, radius: number, pen?: Pen, fill?: string): Mark =>
  pathOf(circleData(centre, radius), pen, fill);

export interface TextStyle {
  readonly anchor?: Anchor;
  readonly colour?: string;
  readonly medium?: boolean;
  readonly turn?: number;
}

/** Text with capitals `height` mm high. */
export const text = (at: PaperPoint, words: string, height: number, style: TextStyle = {}): Mark => ({
  mark: 'text',
  at,
  text: words,
  height,
  anchor: style.anchor ?? 'start',
  colour: style.colour ?? ink,
  medium: style.medium ?? false,
  turn: style.turn ?? 0,
});

/** Widths outside the table (Greek, symbols) are taken as that of a wide lower-case letter. */
const otherAdvance = 590;

/** Width of a text on paper [mm]; near enough to place it, not to justify it. */
export function textWidth(words: string, height: number, medium = false): number {
  let units = 0;
  for (const letter of words) {
    const code = letter.codePointAt(0)!;
    units += code >= 48 && code <= 57 ? tabularDigit : (regularAdvance[code - 32] ?? otherAdvance);
  }
  return ((units / 1000) * height * (medium ? mediumFactor : 1)) / capRatio;
}

/** Lettering is made smaller down to this height before it is cut [mm]. Source: smallest height of ISO 3098 (published). */
const leastHeight = 1.8;

/** Text that keeps within `room` mm: smaller letters first, then fewer of them with an ellipsis. */
export function fittedText(at: PaperPoint, words: string, height: number, room: number, style: TextStyle = {}): Mark {
  const wanted = textWidth(words, height, style.medium);
  if (wanted <= room) return text(at, words, height, style);
  const smaller = Math.max(leastHeight, (height * room) / wanted);
  return text(at, cutTo(words, smaller, room, style.medium), smaller, style);
}

/** The words, or as many letters as fit with an ellipsis behind them. */
function cutTo(words: string, height: number, room: number, medium = false): string {
  if (textWidth(words, height, medium) <= room + 1e-9) return words;
  const letters = [...words];
  while (letters.length > 0 && textWidth(`${letters.join('')}…`, height, medium) > room) letters.pop();
  return `${letters.join('').trimEnd()}…`;
}

/** The ground that words need to be read over lines. */
export function clearedGround(at: PaperPoint, words: string, height: number, style: TextStyle = {}): Mark {
  const half = textWidth(words, height, style.medium) / 2 + 0.6;
  const middle = style.anchor === 'end' ? -half + 0.6 : style.anchor === 'middle' ? 0 : half - 0.6;
  const turn = -(style.turn ?? 0);
  const corner = (x: number, y: number): PaperPoint => [
    at[0] + x * Math.cos(turn) - y * Math.sin(turn),
    at[1] + x * Math.sin(turn) + y * Math.cos(turn),
  ];
  return ring(
    [
      corner(middle - half, 0.9),
      corner(middle + half, 0.9),
      corner(middle + half, -height - 0.7),
      corner(middle - half, -height - 0.7),
    ],
    undefined,
    paper,
  );
}

/** Text on a cleared ground, so that lines under it do not run through it. */
export const clearedText = (at: PaperPoint, words: string, height: number, style: TextStyle = {}): Mark[] => [
  clearedGround(at, words, height, style),
  text(at, words, height, style),
];

/** Words broken into lines no wider than `width` mm. */
export function wrapped(words: string, height: number, width: number, medium = false): string[] {
  const lines: string[] = [];
  let current = '';
  for (const word of words.split(' ')) {
    const longer = current === '' ? word : `${current} ${word}`;
    if (current !== '' && textWidth(longer, height, medium) > width) {
      lines.push(current);
      current = word;
    } else current = longer;
  }
  if (current !== '') lines.push(current);
  return lines;
}

/** A filled arrow head of 15 degrees with its tip at `tip`, flying in `direction` (paper coordinates). */
export function arrowHead(tip: PaperPoint, direction: PaperPoint, length: number, colour = ink): Mark {
  const size = Math.hypot(direction[0], direction[1]);
  const u: PaperPoint = [direction[0] / size, direction[1] / size];
  const half = length * Math.tan(Math.PI / 24);
  const back: PaperPoint = [tip[0] - u[0] * length, tip[1] - u[1] * length];
  return ring(
    [tip, [back[0] - u[1] * half, back[1] + u[0] * half], [back[0] + u[1] * half, back[1] - u[0] * half]],
    undefined,
    colour,
  );
}
