import { bestFilling } from './bar-knapsack.js';
import type { BarModel } from './bar-model.js';

/** A way to cut one bar: which stock, how many of each length. */
export interface Pattern {
  readonly stock: number;
  readonly counts: readonly number[];
}

/** The cutting problem with fractions of bars allowed. */
export interface Relaxation {
  /** Weight of one piece of each length; no pattern of stock s weighs more than its cost less `limits[s]`. */
  readonly weights: readonly number[];
  /** Zero or below: what one more bar of a limited stock would save. */
  readonly limits: readonly number[];
  /** Lower bound on the cost, in cost units; not rounded. */
  readonly bound: number;
  readonly use: readonly { readonly pattern: Pattern; readonly amount: number }[];
}

interface Column {
  readonly entries: readonly number[];
  readonly cost: number;
  readonly pattern: Pattern | null;
}

const tolerance = 1e-9;

/**
 * Linear relaxation of the cutting problem by column generation: revised simplex with a dense inverse, patterns priced by a
 * knapsack. Whatever stops the iterations, the weights are scaled down until no filling of any bar is worth more than the
 * bar, so the bound holds.
 *
 *     bound = sum w_i d_i + sum m_s a_s       over lengths i with demand d_i and limited stocks s with a_s bars
 * Source: Gilmore & Gomory, Operations Research 9 (1961) and 11 (1963) (from memory); safe scaling after Farley (1990)
 * (from memory).
 */
export function relaxCutting(model: BarModel, demand: readonly number[], available: readonly number[]): Relaxation {
  const active = demand.map((_, i) => i).filter((i) => demand[i]! > 0);
  const limited = available.map((_, s) => s).filter((s) => Number.isFinite(available[s]!));
  const rows = active.length + limited.length;
  const rightSide = [...active.map((i) => demand[i]!), ...limited.map((s) => available[s]!)];
  const basis = startBasis(model, active, limited, demand);
  let inverse = basis.map((c, i) => basis.map((_, j) => (i === j ? 1 / c.entries[i]! : 0)));
  let amounts = rightSide.map((b, i) => b / basis[i]!.entries[i]!);
  const prices = () =>
    rightSide.map((_, j) => basis.reduce((sum, column, i) => sum + column.cost * inverse[i]![j]!, 0));
  for (let iteration = 0; iteration < 40 * rows + 200; iteration++) {
    const entering = bestColumn(model, active, limited, demand, prices());
    if (!entering) break;
    const direction = inverse.map((row) => row.reduce((sum, v, j) => sum + v * entering.entries[j]!, 0));
    const leaving = leavingRow(amounts, direction);
    if (leaving < 0) break;
    const pivot = direction[leaving]!;
    const pivotRow = inverse[leaving]!.map((v) => v / pivot);
    const step = amounts[leaving]! / pivot;
    inverse = inverse.map((row, i) =>
      i === leaving ? pivotRow : direction[i] === 0 ? row : row.map((v, j) => v - direction[i]! * pivotRow[j]!),
    );
    amounts = amounts.map((x, i) => (i === leaving ? step : Math.max(0, x - step * direction[i]!)));
    basis[leaving] = entering;
  }
  const { weights, limits } = safeWeights(model, active, limited, demand, prices());
  const bound =
    active.reduce((sum, i) => sum + weights[i]! * demand[i]!, 0) +
    limited.reduce((sum, s) => sum + limits[s]! * available[s]!, 0);
  const use = basis.flatMap((c, i) => (c.pattern ? [{ pattern: c.pattern, amount: amounts[i]! }] : []));
  return { weights, limits, bound, use };
}

function startBasis(
  model: BarModel,
  active: readonly number[],
  limited: readonly number[],
  demand: readonly number[],
): Column[] {
  const rows = active.length + limited.length;
  const unit = (row: number, entry: number) => Array.from({ length: rows }, (_, j) => (j === row ? entry : 0));
  const dear = 1000 * (1 + Math.max(...model.stock.map((s) => s.cost)));
  const columns: Column[] = active.map((i, row) => {
    const fits = model.stock
      .map((s, stock) => ({ stock, cost: s.cost, n: Math.min(demand[i]!, Math.floor(s.size / model.sizes[i]!)) }))
      .filter((f) => f.n > 0 && !limited.includes(f.stock))
      .sort((a, b) => a.cost / a.n - b.cost / b.n || a.stock - b.stock);
    const best = fits[0];
    // No bar without a limit takes this length: a dear stand-in keeps the start feasible and leaves when it can.
    if (!best) return { entries: unit(row, 1), cost: dear, pattern: null };
    const counts = model.sizes.map((_, j) => (j === i ? best.n : 0));
    return { entries: unit(row, best.n), cost: best.cost, pattern: { stock: best.stock, counts } };
  });
  const slacks: Column[] = limited.map((_, k) => ({ entries: unit(active.length + k, 1), cost: 0, pattern: null }));
  return [...columns, ...slacks];
}

function bestColumn(
  model: BarModel,
  active: readonly number[],
  limited: readonly number[],
  demand: readonly number[],
  price: readonly number[],
): Column | null {
  const rows = price.length;
  for (let j = 0; j < rows; j++) {
    const surplus = j < active.length;
    if (surplus ? price[j]! < -tolerance : price[j]! > tolerance) {
      const entries = Array.from({ length: rows }, (_, k) => (k === j ? (surplus ? -1 : 1) : 0));
      return { entries, cost: 0, pattern: null };
    }
  }
  const values = model.sizes.map(() => 0);
  active.forEach((i, row) => {
    values[i] = price[row]!;
  });
  let best: Column | null = null;
  let gain = 1e-7;
  model.stock.forEach((stock, s) => {
    const row = limited.indexOf(s);
    const filling = bestFilling(values, model.sizes, demand, stock.size);
    const saving = filling.value + (row < 0 ? 0 : price[active.length + row]!) - stock.cost;
    if (saving <= gain) return;
    gain = saving;
    const entries = [...active.map((i) => filling.counts[i]!), ...limited.map((_, k) => (k === row ? 1 : 0))];
    best = { entries, cost: stock.cost, pattern: { stock: s, counts: filling.counts } };
  });
  return best;
}

function leavingRow(amounts: readonly number[], direction: readonly number[]): number {
  let row = -1;
  let least = Number.POSITIVE_INFINITY;
  direction.forEach((d, i) => {
    if (d <= tolerance) return;
    const ratio = amounts[i]! / d;
    if (ratio < least - 1e-12) {
      least = ratio;
      row = i;
    }
  });
  return row;
}

function safeWeights(
  model: BarModel,
  active: readonly number[],
  limited: readonly number[],
  demand: readonly number[],
  price: readonly number[],
): { weights: number[]; limits: number[] } {
  const weights = model.sizes.map(() => 0);
  active.forEach((i, row) => {
    weights[i] = Math.max(0, price[row]!);
  });
  const limits = model.stock.map(() => 0);
  limited.forEach((s, k) => {
    limits[s] = Math.min(0, price[active.length + k]!);
  });
  const scale = model.stock.reduce((least, stock, s) => {
    const { upper } = bestFilling(weights, model.sizes, demand, stock.size);
    return upper > 0 ? Math.min(least, (stock.cost - limits[s]!) / upper) : least;
  }, 1);
  return { weights: weights.map((w) => w * scale), limits };
}

/** Rounds a bound of whole-numbered costs up; a hair below a whole number is that number (sums of floating-point weights). */
export const wholeBound = (bound: number): number => Math.ceil(bound - 1e-6);
