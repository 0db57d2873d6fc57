import type { Vec2 } from '../engine/contract.js';
import { drawingTexts } from '../texts/drawing.js';
import { spokenLength, type Units } from './length-text.js';

const { words: say } = drawingTexts;

/** A place as it is said: `2.40 m from west, 1.10 m from south; middle of the south wall`. */
export function placeWords(at: Vec2, reasons: readonly string[], units: Units): string {
  const place = say.place(spokenLength(at[0], units), spokenLength(at[1], units));
  return reasons.length === 0 ? place : `${place}; ${reasons.join(', ')}`;
}
