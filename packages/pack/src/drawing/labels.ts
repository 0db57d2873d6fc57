import { clearedText, type TextStyle, textWidth } from './marks.js';
import type { Anchor, Mark, PaperPoint } from './types.js';

export interface LabelPlace {
  readonly at: PaperPoint;
  readonly anchor?: Anchor;
  readonly turn?: number;
  /** Fewer words for a place with less room. */
  readonly words?: string;
}

/** Words that may stand at several places; the first that is free is taken. */
export interface Label {
  readonly words: string;
  readonly height: number;
  readonly style?: Pick<TextStyle, 'colour' | 'medium'>;
  readonly places: readonly LabelPlace[];
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Upright box about a text; a turned text takes the box of its corners. */
function boxOf(label: Label, place: LabelPlace): Box {
  const width = textWidth(place.words ?? label.words, label.height, label.style?.medium);
  const from = place.anchor === 'middle' ? -width / 2 : place.anchor === 'end' ? -width : 0;
  const turn = -(place.turn ?? 0);
  const corners = [
    [from - 0.5, 0.8],
    [from + width + 0.5, 0.8],
    [from + width + 0.5, -label.height - 0.6],
    [from - 0.5, -label.height - 0.6],
  ] as const;
  const xs = corners.map(([x, y]) => place.at[0] + x * Math.cos(turn) - y * Math.sin(turn));
  const ys = corners.map(([x, y]) => place.at[1] + x * Math.sin(turn) + y * Math.cos(turn));
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

const overlap = (a: Box, b: Box): number =>
  Math.max(0, Math.min(a.right, b.right) - Math.max(a.left, b.left)) *
  Math.max(0, Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top));

/** Keeps labels off each other: each takes its first free place, or the least covered one. */
export class LabelSpace {
  readonly #taken: Box[] = [];

  /** Ground that no label should cover: a symbol, a stamp. */
  take(at: PaperPoint, halfWidth: number, halfHeight = halfWidth): void {
    this.#taken.push({
      left: at[0] - halfWidth,
      right: at[0] + halfWidth,
      top: at[1] - halfHeight,
      bottom: at[1] + halfHeight,
    });
  }

  place(label: Label): Mark[] {
    const tried = label.places.map((place) => {
      const box = boxOf(label, place);
      return { place, box, covered: this.#taken.reduce((sum, other) => sum + overlap(box, other), 0) };
    });
    const best = tried.reduce<(typeof tried)[number] | undefined>(
      (found, next) => (found === undefined || next.covered < found.covered - 1e-9 ? next : found),
      undefined,
    );
    if (!best) return [];
    this.#taken.push(best.box);
    const { anchor, turn, at, words } = best.place;
    const style = { ...label.style, ...(anchor ? { anchor } : {}), ...(turn === undefined ? {} : { turn }) };
    return clearedText(at, words ?? label.words, label.height, style);
  }
}

/** Places beside a leg: on the shares of its length, above first, then below, `off` mm away from it. */
export function besideLeg(
  from: PaperPoint,
  to: PaperPoint,
  turn: number,
  height: number,
  off: number,
  shares: readonly number[],
): LabelPlace[] {
  const at = (share: number, down: number): LabelPlace => ({
    at: [
      from[0] + (to[0] - from[0]) * share + Math.sin(turn) * down,
      from[1] + (to[1] - from[1]) * share + Math.cos(turn) * down,
    ],
    anchor: 'middle',
    turn,
  });
  return [...shares.map((share) => at(share, -off)), ...shares.map((share) => at(share, off + height))];
}
