/** Steps after which the search for the best filling gives way to the table over all lengths. */
const stepLimit = 20_000;
/** Largest table (pieces times lengths) that is filled. */
const tableLimit = 4_000_000;

export interface Filling {
  readonly counts: readonly number[];
  readonly value: number;
  /** No filling is worth more; equal to `value` unless both ways were too long. */
  readonly upper: number;
}

/**
 * The most valuable filling of one bar: maximise sum v_i a_i with sum size_i a_i <= capacity, 0 <= a_i <= most_i.
 *
 * Depth first by value per length with the fractional bound; where that takes too long (many pieces of nearly equal worth per
 * length) a table over all lengths.
 * @param values   worth of one piece of each length [-]
 * @param sizes    lengths with kerf, whole numbers [um]
 * @param most     largest number of each [-]
 * @param capacity length of the bar with kerf [um]
 * Source: bounded knapsack, Martello & Toth, Knapsack Problems, 1990 (from memory).
 */
export function bestFilling(
  values: readonly number[],
  sizes: readonly number[],
  most: readonly number[],
  capacity: number,
): Filling {
  const order = sizes
    .map((_, i) => i)
    .filter((i) => values[i]! > 1e-12 && most[i]! > 0 && sizes[i]! <= capacity)
    .sort((a, b) => values[b]! / sizes[b]! - values[a]! / sizes[a]! || a - b);
  const searched = searchFilling(order, values, sizes, most, capacity);
  if (searched.ended) return { counts: searched.counts, value: searched.value, upper: searched.value };
  const table = tableFilling(order, values, sizes, most, capacity);
  return table ?? { ...searched, upper: fractionalWorth(order, values, sizes, most, capacity) };
}

function searchFilling(
  order: readonly number[],
  values: readonly number[],
  sizes: readonly number[],
  most: readonly number[],
  capacity: number,
): { readonly counts: readonly number[]; readonly value: number; readonly ended: boolean } {
  const density = order.map((i) => values[i]! / sizes[i]!);
  const counts = sizes.map(() => 0);
  let best = 0;
  let bestCounts = [...counts];
  let steps = 0;
  const search = (at: number, room: number, value: number): void => {
    if (value > best + 1e-12) {
      best = value;
      bestCounts = [...counts];
    }
    if (at === order.length || steps > stepLimit) return;
    if (value + room * density[at]! <= best + 1e-12) return;
    const i = order[at]!;
    for (let n = Math.min(most[i]!, Math.floor(room / sizes[i]!)); n >= 0; n--) {
      steps++;
      counts[i] = n;
      search(at + 1, room - n * sizes[i]!, value + n * values[i]!);
    }
    counts[i] = 0;
  };
  search(0, capacity, 0);
  return { counts: bestCounts, value: best, ended: steps <= stepLimit };
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/** Exact over lengths in steps of their greatest common divisor; null when the table would be too large. */
function tableFilling(
  order: readonly number[],
  values: readonly number[],
  sizes: readonly number[],
  most: readonly number[],
  capacity: number,
): Filling | null {
  const unit = order.reduce((g, i) => gcd(g, sizes[i]!), 0);
  const room = Math.floor(capacity / unit);
  const lots = order.flatMap((i) =>
    binaryLots(Math.min(most[i]!, Math.floor(capacity / sizes[i]!))).map((n) => ({
      i,
      n,
      size: (n * sizes[i]!) / unit,
    })),
  );
  if (lots.length * (room + 1) > tableLimit) return null;
  const worth = new Float64Array(room + 1);
  const taken = new Uint8Array(lots.length * (room + 1));
  lots.forEach(({ i, n, size }, k) => {
    const value = n * values[i]!;
    for (let c = room; c >= size; c--) {
      const more = worth[c - size]! + value;
      if (more <= worth[c]!) continue;
      worth[c] = more;
      taken[k * (room + 1) + c] = 1;
    }
  });
  const counts = sizes.map(() => 0);
  let left = room;
  for (let k = lots.length - 1; k >= 0; k--) {
    if (taken[k * (room + 1) + left] !== 1) continue;
    counts[lots[k]!.i]! += lots[k]!.n;
    left -= lots[k]!.size;
  }
  return { counts, value: worth[room]!, upper: worth[room]! };
}

/** Lots of 1, 2, 4, ... whose sums give every number up to `most`. */
function binaryLots(most: number): number[] {
  const lots: number[] = [];
  for (let n = 1, left = most; left > 0; n *= 2) {
    lots.push(Math.min(n, left));
    left -= n;
  }
  return lots;
}

function fractionalWorth(
  order: readonly number[],
  values: readonly number[],
  sizes: readonly number[],
  most: readonly number[],
  capacity: number,
): number {
  let room = capacity;
  let worth = 0;
  for (const i of order) {
    const n = Math.min(most[i]!, room / sizes[i]!);
    worth += n * values[i]!;
    room -= n * sizes[i]!;
  }
  return worth;
}
