import {
  type Box,
  cross,
  groundOf,
  inflated,
  type Line,
  lengthInside,
  outsideOf,
  overlap,
  type Stroke,
  strokesOf,
} from './ground.js';
import { ink } from './inks.js';
import { clearedText, line, type TextStyle, textWidth } from './marks.js';
import type { Anchor, Mark, PaperPoint, Pen } from './types.js';

export interface LabelPlace {
  readonly at: PaperPoint;
  readonly anchor?: Anchor;
  readonly turn?: number;
  /** Fewer words for a place with less room. */
  readonly words?: string;
}

/** Words that may stand at several places; the best of them is taken. */
export interface Label {
  readonly words: string;
  readonly height: number;
  readonly style?: Pick<TextStyle, 'colour' | 'medium'>;
  /** In the order of preference. */
  readonly places: readonly LabelPlace[];
  /** Points that a leader may end on when all places are crowded. */
  readonly leaderTo?: readonly PaperPoint[];
  /** Fewer words for the end of a leader. */
  readonly leaderWords?: string;
  /** A second line under the first. */
  readonly under?: { readonly words: string; readonly colour: string };
}

/** Height of a second line and its distance from the first [mm]. */
const underHeight = 2.5;
const underPitch = 4.4;

/** Upright box about a text; a turned text takes the box of its corners. */
function boxOf(label: Label, place: LabelPlace): Box {
  const first = textWidth(place.words ?? label.words, label.height, label.style?.medium);
  const width = Math.max(first, label.under ? textWidth(label.under.words, underHeight) : 0);
  const from = place.anchor === 'middle' ? -width / 2 : place.anchor === 'end' ? -width : 0;
  const turn = -(place.turn ?? 0);
  const low = 0.8 + (label.under ? underPitch : 0);
  const corners = [
    [from - 0.5, low],
    [from + width + 0.5, low],
    [from + width + 0.5, -label.height - 0.6],
    [from - 0.5, -label.height - 0.6],
  ] as const;
  const xs = corners.map(([x, y]) => place.at[0] + x * Math.cos(turn) - y * Math.sin(turn));
  const ys = corners.map(([x, y]) => place.at[1] + x * Math.sin(turn) + y * Math.cos(turn));
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

/**
 * What a place costs: covered words and symbols by area [mm²], covered lines each and by length [mm], a little for each preferred place
 * that is passed over; a leader for itself, by its length and for what it crosses. Ours, set by eye on drawn plans.
 */
const cost = {
  line: 1,
  lineLength: 0.4,
  order: 0.25,
  leader: 4,
  leaderLength: 0.1,
  leaderOverLine: 0.4,
  leaderOverWords: 4,
  outside: 1000,
} as const;
/** Above this a label looks for a place with a leader. */
const crowded = 5;
/** How far a line may reach into the rim of a text before it counts as covered [mm]. */
const lineGap = 0.1;
const leaderPen: Pen = { width: 0.18, colour: ink };
const leaderReaches = [5, 7, 10, 13, 17, 21, 26, 32] as const;
const leaderDirections = 16;

const plain = { medium: false } as const;

interface Tried {
  readonly place: LabelPlace;
  readonly box: Box;
  readonly leader?: Line;
  readonly cost: number;
}

/** Keeps labels off each other, off symbols and off lines: each takes its best place, or one beside the crowd with a leader. */
export class LabelSpace {
  readonly #taken: Box[] = [];
  #strokes: Stroke[] = [];
  readonly #within: Box | null;

  /** @param within the part of the sheet that labels may use */
  constructor(within: Box | null = null) {
    this.#within = within;
  }

  /** Ground that no label should cover: a symbol, a stamp. */
  take(at: PaperPoint, halfWidth: number, halfHeight = halfWidth): void {
    this.#taken.push({
      left: at[0] - halfWidth,
      right: at[0] + halfWidth,
      top: at[1] - halfHeight,
      bottom: at[1] + halfHeight,
    });
  }

  /** What is drawn already: its lines should stay in sight, its words free. */
  keepClear(marks: readonly Mark[]): void {
    for (const mark of marks) {
      if (mark.mark === 'path') {
        const hidden = groundOf(mark);
        if (hidden) this.#strokes = this.#strokes.flatMap((stroke) => outsideOf(stroke, hidden));
        this.#strokes.push(...strokesOf(mark));
      } else
        this.#taken.push(
          boxOf({ words: mark.text, height: mark.height, style: { medium: mark.medium }, places: [] }, mark),
        );
    }
  }

  place(label: Label): Mark[] {
    const own = label.places.map((place, i) => this.#tried(label, place, i * cost.order));
    let best = cheapest(own);
    if (label.leaderTo && (!best || best.cost > crowded))
      best = cheapest([...(best ? [best] : []), ...label.leaderTo.flatMap((point) => this.#led(label, point))]);
    if (!best) return [];
    this.#taken.push(best.box);
    const { anchor, turn, at, words } = best.place;
    const style = { ...label.style, ...(anchor ? { anchor } : {}), ...(turn === undefined ? {} : { turn }) };
    const marks = clearedText(at, words ?? label.words, label.height, style);
    if (label.under) {
      const below: PaperPoint = [at[0], at[1] + underPitch];
      marks.push(
        ...clearedText(below, label.under.words, underHeight, { ...style, ...plain, colour: label.under.colour }),
      );
    }
    if (!best.leader) return marks;
    this.#strokes.push({ line: best.leader, weight: 1 });
    return [line(best.leader[0], best.leader[1], leaderPen), ...marks];
  }

  #tried(label: Label, place: LabelPlace, extra: number): Tried {
    const box = boxOf(label, place);
    return { place, box, cost: this.#ground(box) + extra };
  }

  #ground(box: Box): number {
    const covered = this.#taken.reduce((sum, other) => sum + overlap(box, other), 0);
    const letters = inflated(box, -lineGap);
    const lines = this.#strokes.reduce((sum, stroke) => {
      const length = lengthInside(stroke.line, letters);
      return length > 0 ? sum + (cost.line + length * cost.lineLength) * stroke.weight : sum;
    }, 0);
    return covered + lines + (this.#within ? this.#outside(box, this.#within) : 0);
  }

  #outside(box: Box, within: Box): number {
    const out =
      box.left < within.left || box.right > within.right || box.top < within.top || box.bottom > within.bottom;
    return out ? cost.outside : 0;
  }

  /** Places about a point, near ones first; the leader runs from the point to the nearer end of the words. */
  #led(label: Label, point: PaperPoint): Tried[] {
    return leaderReaches.flatMap((reach) =>
      Array.from({ length: leaderDirections }, (_, i): Tried => {
        const angle = (2 * Math.PI * i) / leaderDirections;
        const [dx, dy] = [Math.cos(angle) * reach, Math.sin(angle) * reach];
        const end: PaperPoint = [point[0] + dx, point[1] + dy];
        const anchor: Anchor = dx >= 0 ? 'start' : 'end';
        const gap = dx >= 0 ? 0.8 : -0.8;
        const words = label.leaderWords ?? label.words;
        const tried = this.#tried(label, { at: [end[0] + gap, end[1] + label.height / 2], anchor, words }, 0);
        const leader: Line = [point, end];
        const covered = this.#taken.filter((box) => lengthInside(leader, inflated(box, -0.3)) > 0).length;
        const lines = this.#strokes.reduce((sum, s) => (cross(s.line, leader) ? sum + s.weight : sum), 0);
        const over = covered * cost.leaderOverWords + lines * cost.leaderOverLine;
        return { ...tried, leader, cost: tried.cost + cost.leader + reach * cost.leaderLength + over };
      }),
    );
  }
}

const cheapest = (tried: readonly Tried[]): Tried | undefined =>
  tried.reduce<Tried | undefined>(
    (found, next) => (found === undefined || next.cost < found.cost - 1e-9 ? next : found),
    undefined,
  );

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
