import type { Vec2 } from '../engine/contract.js';
import { type Box, type PlanView, type Size, toScreen } from '../plan/view.js';
import { type NumberPlace, numberPlace } from './dimension-place.js';
import type { SizeLine } from './sizes.js';

/** Pixels from a thing to the dimension line beside it. */
const beside = 20;
/** From one row of numbers to the next, pixels. */
const rowHeight = 24;
/** A number beside its line, when there is no room for it on the line, pixels. */
const aside: Vec2 = [17, 13];

/** A direction of the plan on the screen, where y runs down. */
export const onScreen = ([x, y]: Vec2): Vec2 => [x, -y];

interface PlacedSize extends NumberPlace {
  readonly a: Vec2;
  readonly b: Vec2;
  readonly away: Vec2 | null;
  readonly distance: number;
}

/** Where a size of the thing in hand stands on the screen: its line beside the thing, or between the two with its number upright. */
export function placedSize(line: SizeLine, view: PlanView, size: Size): PlacedSize {
  const [a, b] = [toScreen(view, size, line.from), toScreen(view, size, line.to)];
  const away = line.away ? onScreen(line.away) : null;
  const distance = away ? beside + line.row * rowHeight : 0;
  const number = numberPlace(a, b, away, distance);
  return { a, b, away, distance, ...(away ? number : { ...number, at: between(a, b, number.length), angle: 0 }) };
}

/** On the line where it is long enough, else a little further than its second end. */
function between(a: Vec2, b: Vec2, length: number): Vec2 {
  const along: Vec2 = length < 1e-6 ? [0, -1] : [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const room = Math.abs(along[0]) * aside[0] + Math.abs(along[1]) * aside[1];
  if (length >= 2 * room) return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  return [b[0] + along[0] * (room + 3), b[1] + along[1] * (room + 3)];
}

/** The room that the number takes on the sheet. */
export function sizeBox(line: SizeLine, view: PlanView, size: Size): Box {
  const { at, angle } = placedSize(line, view, size);
  const upright = Math.abs(Math.sin((angle * Math.PI) / 180)) > 0.7;
  const [w, h] = upright ? [13, 28] : [28, 13];
  return { min: [at[0] - w, at[1] - h], max: [at[0] + w, at[1] + h] };
}
