import { type Outcome, ok, positive, refuse } from '../floor/problem.js';
import { negative, noSplit, nothingInStock } from './messages.js';
import { compareRank } from './rank.js';
import { type PricedLength, samePlace } from './types.js';

/** What counts in the choice of track pieces, the first that differs decides. */
export type TrackAim = 'price' | 'joints' | 'cuts' | 'off-cut';

export interface TrackQuestion {
  /** Straight length to cover [m]. */
  readonly length: number;
  readonly stock: readonly PricedLength[];
  /** Shortest piece that a cut may leave in the track [m]. */
  readonly shortestPiece: number;
  readonly aims: readonly TrackAim[];
}

export interface TrackPieces {
  readonly price: number;
  readonly joints: number;
  /** 0 or 1: at most one piece is cut. */
  readonly cuts: number;
  /** Length left over from the cut piece [m]. */
  readonly offcut: number;
  /** Stock pieces to buy, longest first [m]. */
  readonly stockPieces: readonly number[];
  /** Finished pieces in the order in which they lie, the cut one last [m]; together exactly the straight length. */
  readonly pieces: readonly number[];
}

interface Part {
  readonly price: number;
  readonly count: number;
  readonly cuts: number;
  readonly offcut: number;
  readonly chosen: { readonly stock: PricedLength; readonly length: number } | null;
  readonly rest: Part | null;
}

const nothing: Part = { price: 0, count: 0, cuts: 0, offcut: 0, chosen: null, rest: null };

const rankOf = (part: Part, aims: readonly TrackAim[]): number[] => {
  const amounts = { price: part.price, joints: part.count, cuts: part.cuts, 'off-cut': part.offcut };
  return aims.map((aim) => amounts[aim]);
};

/** Lengths that differ by less than a hundredth of a millimetre are one state of the programme. */
const stateOf = (length: number): number => Math.round(length * 1e5);

/**
 * The best way to make one straight length of track from stock pieces laid end to end.
 *
 *     best(rest) = best over stock s:  s + best(rest - s) when s <= rest,  or the piece s cut to the rest, which ends it
 * Exact, because each of price, joints, cuts and off-cut is a sum over the pieces. One cut is enough: of two cut pieces one can
 * take from the other until one of them is whole or gone, and no price rises. The saw cut falls into the off-cut.
 * @param question straight length, stock with prices in one currency, shortest piece [m], and the order of aims
 * @returns the pieces, or `curtain/length`, `curtain/no-stock`, `curtain/negative`, `curtain/no-split`
 * Source: handbook of layout, 3.2 (derived).
 */
export function trackPieces({ length, stock, shortestPiece, aims }: TrackQuestion): Outcome<TrackPieces> {
  const problems = positive('curtain/length', 'length', length, 'm');
  const usable = stock.filter((s) => s.length > samePlace).sort((a, b) => b.length - a.length);
  if (usable.length === 0) problems.push(nothingInStock('stock'));
  if (!(shortestPiece >= 0)) problems.push(negative('shortestPiece', shortestPiece, 'm'));
  if (problems.length > 0) return refuse(problems);
  const known = new Map<number, Part | null>([[0, nothing]]);
  const bestFor = (rest: number): Part | null => {
    const state = stateOf(rest);
    const before = known.get(state);
    if (before !== undefined) return before;
    let best: Part | null = null;
    const consider = (part: Part) => {
      if (!best || compareRank(rankOf(part, aims), rankOf(best, aims)) < 0) best = part;
    };
    for (const s of usable) {
      if (stateOf(s.length) <= state) {
        const tail = bestFor(rest - s.length);
        if (tail) consider(withPiece(s, s.length, tail));
      } else if (rest >= shortestPiece - samePlace) consider(withPiece(s, rest, nothing));
    }
    known.set(state, best);
    return best;
  };
  const found = bestFor(length);
  return found ? ok(listed(found, length)) : refuse([noSplit(length, shortestPiece)]);
}

const withPiece = (stock: PricedLength, length: number, rest: Part): Part => {
  const offcut = stock.length - length;
  return {
    price: rest.price + stock.price,
    count: rest.count + 1,
    cuts: rest.cuts + (offcut > 0 ? 1 : 0),
    offcut: rest.offcut + offcut,
    chosen: { stock, length },
    rest,
  };
};

/** Whole pieces longest first, then the cut one, which takes up the rounding so that the sum is exact. */
function listed(found: Part, length: number): TrackPieces {
  const chosen: { stock: PricedLength; length: number }[] = [];
  for (let part: Part | null = found; part?.chosen; part = part.rest) chosen.push(part.chosen);
  const cut = chosen.filter((c) => c.length < c.stock.length);
  const whole = chosen.filter((c) => c.length >= c.stock.length).map((c) => c.length);
  whole.sort((a, b) => b - a);
  const pieces = cut.length === 0 ? whole : [...whole, length - whole.reduce((sum, l) => sum + l, 0)];
  return {
    price: found.price,
    joints: found.count - 1,
    cuts: found.cuts,
    offcut: found.offcut,
    stockPieces: chosen.map((c) => c.stock.length).sort((a, b) => b - a),
    pieces,
  };
}
