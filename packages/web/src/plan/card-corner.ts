import type { Vec2 } from '../engine/contract.js';
import type { Box, Size } from './view.js';

/** Gap between a thing and its numbers, and to the edge of the sheet, pixels. */
export const gap = 14;

export const boxOf = (points: readonly Vec2[]): Box => {
  const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])];
  return { min: [Math.min(...xs), Math.min(...ys)], max: [Math.max(...xs), Math.max(...ys)] };
};

/**
 * Upper left corner of the card beside a thing, all in screen pixels: right of it, left, under, over it or in a corner of the sheet,
 * whichever hides the least of the thing, then of what else should stay clear, with the card whole on the sheet.
 */
export function cardCorner(thing: Box, card: Size, sheet: Size, clear: readonly Box[] = []): Vec2 {
  const kept = ([x, y]: Vec2): Vec2 => [
    Math.max(gap, Math.min(x, sheet.width - card.width - gap)),
    Math.max(gap, Math.min(y, sheet.height - card.height - gap)),
  ];
  const tries = [
    kept([thing.max[0] + gap, thing.min[1]]),
    kept([thing.min[0] - gap - card.width, thing.min[1]]),
    kept([thing.min[0], thing.max[1] + gap]),
    kept([thing.min[0], thing.min[1] - gap - card.height]),
    kept([sheet.width, sheet.height]),
    kept([0, sheet.height]),
    kept([sheet.width, topWords]),
    kept([0, topWords]),
  ];
  const cost = (at: Vec2) =>
    hidden(thing, at, card) + clear.reduce((sum, box) => sum + hidden(box, at, card), 0) / clearShare;
  return tries.reduce((best, next) => (cost(next) < cost(best) ? next : best));
}

/** Under the words that choose the view. */
const topWords = 60;
/** To hide the thing itself is this much worse than to hide what else should stay clear. */
const clearShare = 4;

/** Area of the thing under the card. */
function hidden(thing: Box, [x, y]: Vec2, card: Size): number {
  const overlap = (a0: number, a1: number, b0: number, b1: number) => Math.max(0, Math.min(a1, b1) - Math.max(a0, b0));
  return (
    overlap(thing.min[0], thing.max[0] + 1, x, x + card.width) *
    overlap(thing.min[1], thing.max[1] + 1, y, y + card.height)
  );
}
