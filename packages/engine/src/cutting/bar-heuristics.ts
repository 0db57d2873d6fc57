import type { BarModel } from './bar-model.js';
import { type Pattern, type Relaxation, relaxCutting, wholeBound } from './bar-relaxation.js';

export const patternCost = (model: BarModel, patterns: readonly Pattern[]): number =>
  patterns.reduce((sum, p) => sum + model.stock[p.stock]!.cost, 0);

/** Demand and bars left after some patterns are cut. */
export function afterCutting(
  patterns: readonly Pattern[],
  demand: readonly number[],
  available: readonly number[],
): { demand: number[]; available: number[] } {
  const left = { demand: [...demand], available: [...available] };
  for (const p of patterns) {
    left.available[p.stock]!--;
    p.counts.forEach((n, i) => {
      left.demand[i]! -= n;
    });
  }
  return left;
}

/**
 * Longest piece first, each bar filled with the longest pieces that still fit; each new bar is the stock that costs least
 * for the length it takes up. Null when the bars run out.
 * Source: first-fit decreasing, rule of the trade (common practice).
 */
export function firstFit(model: BarModel, demand: readonly number[], available: readonly number[]): Pattern[] | null {
  const left = { demand: [...demand], available: [...available] };
  const bars: Pattern[] = [];
  for (;;) {
    const first = left.demand.findIndex((d) => d > 0);
    if (first < 0) return bars;
    const choices = model.stock.flatMap((stock, s) => {
      if (left.available[s]! < 1 || stock.size < model.sizes[first]!) return [];
      let room = stock.size;
      const counts = model.sizes.map((size, i) => {
        const n = Math.min(left.demand[i]!, Math.floor(room / size));
        room -= n * size;
        return n;
      });
      return [{ pattern: { stock: s, counts }, rate: stock.cost / (stock.size - room) }];
    });
    const best = choices.sort((a, b) => a.rate - b.rate || a.pattern.stock - b.pattern.stock)[0];
    if (!best) return null;
    bars.push(best.pattern);
    Object.assign(left, afterCutting([best.pattern], left.demand, left.available));
  }
}

/**
 * Rounds the relaxation down again and again: whole bars of its patterns are fixed, the rest is relaxed anew; where nothing
 * rounds down, the pattern with the largest share is fixed once. Gives up when the rest cannot end at `aim`.
 * Source: residual rounding, handbook of cutting (common practice).
 */
export function roundDown(
  model: BarModel,
  start: Relaxation,
  demand: readonly number[],
  available: readonly number[],
): Pattern[] | null {
  let left = { demand: [...demand], available: [...available] };
  let relaxed = start;
  const fixed: Pattern[] = [];
  while (left.demand.some((d) => d > 0)) {
    const ranked = relaxed.use
      .filter((u) => u.amount > 1e-9 && u.pattern.counts.some((n) => n > 0))
      .sort((a, b) => b.amount - a.amount);
    const whole = ranked.flatMap((u) => Array.from({ length: Math.floor(u.amount + 1e-9) }, () => u.pattern));
    const next = usable(whole.length > 0 ? whole : ranked.slice(0, 1).map((u) => u.pattern), left);
    if (next.length === 0) {
      const rest = firstFit(model, left.demand, left.available);
      return rest && [...fixed, ...rest];
    }
    fixed.push(...next);
    left = afterCutting(next, left.demand, left.available);
    if (left.demand.some((d) => d > 0)) relaxed = relaxCutting(model, left.demand, left.available);
  }
  return fixed;
}

/** The patterns, one after another, as far as demand and bars reach; a piece too many is left out. */
function usable(
  patterns: readonly Pattern[],
  left: { readonly demand: readonly number[]; readonly available: readonly number[] },
): Pattern[] {
  const rest = { demand: [...left.demand], available: [...left.available] };
  const taken: Pattern[] = [];
  for (const p of patterns) {
    const counts = p.counts.map((n, i) => Math.min(n, rest.demand[i]!));
    if (rest.available[p.stock]! < 1 || counts.every((n) => n === 0)) continue;
    taken.push({ stock: p.stock, counts });
    Object.assign(rest, afterCutting([taken.at(-1)!], rest.demand, rest.available));
  }
  return taken;
}

/** The whole-numbered lower bound that a relaxation proves. */
export const provenBound = (relaxed: Relaxation): number => wholeBound(relaxed.bound);
