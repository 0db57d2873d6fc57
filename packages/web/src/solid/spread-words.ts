/** A word over the drawing: where its middle wishes to be and how large it is, pixels. */
export interface Word {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** How far a word may be moved from its place, in heights of it. */
const farthest = 4;

const overlaps = (a: Word, b: Word): boolean =>
  Math.abs(a.x - b.x) < (a.width + b.width) / 2 && Math.abs(a.y - b.y) < (a.height + b.height) / 2;

/** Moves words up or down so that none lies on another, the first ones first; null for a word that finds no place near its own. */
export function spreadWords(words: readonly Word[]): readonly (Word | null)[] {
  const placed: Word[] = [];
  return words.map((word) => {
    for (let k = 0; k <= 2 * farthest; k++) {
      const rows = (k % 2 === 0 ? -1 : 1) * Math.ceil(k / 2);
      const tried = { ...word, y: word.y + rows * (word.height + 1) };
      if (placed.some((other) => overlaps(other, tried))) continue;
      placed.push(tried);
      return tried;
    }
    return null;
  });
}
