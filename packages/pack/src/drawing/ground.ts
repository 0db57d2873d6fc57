import { accent, lineWidth } from './inks.js';
import type { Mark, PaperPoint } from './types.js';

/** An upright rectangle on paper [mm]; y grows downward. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export const overlap = (a: Box, b: Box): number =>
  Math.max(0, Math.min(a.right, b.right) - Math.max(a.left, b.left)) *
  Math.max(0, Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top));

export const inflated = (box: Box, by: number): Box => ({
  left: box.left - by,
  right: box.right + by,
  top: box.top - by,
  bottom: box.bottom + by,
});

export type Line = readonly [PaperPoint, PaperPoint];

/** A line with how much it would be missed: fine and dashed ones less. */
export interface Stroke {
  readonly line: Line;
  readonly weight: number;
}

/**
 * Shares of a line between which it lies inside a box; null when it misses the box.
 * Source: clipping of a line by the parameters at which it crosses each side (Liang and Barsky 1984, from memory).
 */
function inside([a, b]: Line, box: Box): readonly [number, number] | null {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  let low = 0;
  let high = 1;
  for (const [step, room] of [
    [-dx, a[0] - box.left],
    [dx, box.right - a[0]],
    [-dy, a[1] - box.top],
    [dy, box.bottom - a[1]],
  ] as const) {
    if (step === 0) {
      if (room < 0) return null;
    } else if (step < 0) low = Math.max(low, room / step);
    else high = Math.min(high, room / step);
    if (low >= high) return null;
  }
  return [low, high];
}

const lengthOf = ([a, b]: Line): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

/** Length of the part of a line that lies inside a box [mm]. */
export function lengthInside(line: Line, box: Box): number {
  const shares = inside(line, box);
  return shares ? (shares[1] - shares[0]) * lengthOf(line) : 0;
}

/** What is left of a stroke when a box is laid over it. */
export function outsideOf({ line, weight }: Stroke, box: Box): Stroke[] {
  const shares = inside(line, box);
  if (!shares) return [{ line, weight }];
  const [a, b] = line;
  const at = (share: number): PaperPoint => [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
  const [low, high] = shares;
  const left: Line[] = [...(low > 0 ? [[a, at(low)] as const] : []), ...(high < 1 ? [[at(high), b] as const] : [])];
  return left.map((rest) => ({ line: rest, weight }));
}

/** Whether two lines cross, ends on the other line left out. */
export function cross([a, b]: Line, [c, d]: Line): boolean {
  const side = (p: PaperPoint, q: PaperPoint, r: PaperPoint) =>
    Math.sign((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** The ground that a filled upright rectangle covers; null for other shapes, which may leave corners free. */
export function groundOf(mark: Extract<Mark, { mark: 'path' }>): Box | null {
  if (!mark.fill || /[AC]/.test(mark.d)) return null;
  const points = [...mark.d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map((m) => [Number(m[1]), Number(m[2])] as const);
  const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])];
  const box = { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
  const onCorner = ([x, y]: PaperPoint) =>
    (Math.abs(x - box.left) < 1e-3 || Math.abs(x - box.right) < 1e-3) &&
    (Math.abs(y - box.top) < 1e-3 || Math.abs(y - box.bottom) < 1e-3);
  return points.length === 4 && points.every(onCorner) ? box : null;
}

/** Lines with more points than this are waves or curves: the line that they follow is drawn too. */
const mostPoints = 40;

/** The straight strokes of a drawn path, in its own coordinates; fills without an outline have none. */
export function strokesOf(mark: Extract<Mark, { mark: 'path' }>): Stroke[] {
  if (!mark.pen) return [];
  const found = [...mark.d.matchAll(/([ML])(-?[\d.]+) (-?[\d.]+)|Z/g)];
  if (found.length > mostPoints) return [];
  // A beam must stay in sight whatever its line looks like.
  const beam = mark.pen.colour === accent;
  const weight = beam ? 1 : Math.min(1, mark.pen.width / lineWidth.wide) * (mark.pen.dash ? 0.4 : 1);
  const strokes: Stroke[] = [];
  let start: PaperPoint | null = null;
  let last: PaperPoint | null = null;
  for (const [whole, kind, x, y] of found) {
    const point: PaperPoint | null = whole === 'Z' ? start : [Number(x), Number(y)];
    if (kind === 'M') start = point;
    else if (last && point) strokes.push({ line: [last, point], weight });
    last = point;
  }
  return strokes;
}
