import { afterCutting, patternCost } from './bar-heuristics.js';
import type { BarModel } from './bar-model.js';
import { fullPatterns } from './bar-patterns.js';
import { type Pattern, type Relaxation, wholeBound } from './bar-relaxation.js';

/** Work that the exact search may do before it hands back the best it has, unproven. */
const patternBudget = 60_000;
const patternsPerBar = 3000;

export interface SearchResult {
  readonly bars: readonly Pattern[] | null;
  /** True when no cheaper plan exists. */
  readonly proven: boolean;
}

/**
 * Exact search: the bar of the longest piece first, its fillings in the order of what they waste against the weights of the
 * relaxation; a branch is left when its cost and the weight of what is still to be cut reach the best plan. Places reached
 * before at no higher cost are not entered again.
 * @param known  a plan to beat, or null
 * @param enough cost at which the search may stop: a proven lower bound [cost units]
 * Source: branch and bound with the dual bound of Gilmore & Gomory (from memory); dominance by full bars (derived).
 */
export function searchBars(
  model: BarModel,
  relaxed: Relaxation,
  available: readonly number[],
  known: readonly Pattern[] | null,
  enough: number,
): SearchResult {
  let best = known;
  let bestCost = known ? patternCost(model, known) : Number.POSITIVE_INFINITY;
  let spent = 0;
  let complete = true;
  const seen = new Map<string, number>();
  const weigh = (demand: readonly number[], left: readonly number[]) =>
    wholeBound(
      demand.reduce((sum, d, i) => sum + d * relaxed.weights[i]!, 0) +
        relaxed.limits.reduce((sum, m, s) => sum + (m === 0 ? 0 : m * left[s]!), 0),
    );
  const waste = (p: Pattern) =>
    model.stock[p.stock]!.cost -
    relaxed.limits[p.stock]! -
    p.counts.reduce((sum, n, i) => sum + n * relaxed.weights[i]!, 0);
  const visit = (demand: readonly number[], left: readonly number[], cost: number, cut: readonly Pattern[]): void => {
    if (bestCost <= enough) return;
    if (demand.every((d) => d === 0)) {
      if (cost < bestCost) {
        bestCost = cost;
        best = cut;
      }
      return;
    }
    if (cost + weigh(demand, left) >= bestCost) return;
    const key = `${demand.join()}|${left.join()}`;
    if ((seen.get(key) ?? Number.POSITIVE_INFINITY) <= cost) return;
    if (spent >= patternBudget) {
      complete = false;
      return;
    }
    seen.set(key, cost);
    const { patterns, all } = fullPatterns(model, demand, left, patternsPerBar);
    if (!all) complete = false;
    spent += patterns.length;
    const ranked = patterns.map((p) => ({ p, w: waste(p) })).sort((a, b) => a.w - b.w);
    for (const { p } of ranked) {
      const next = afterCutting([p], demand, left);
      visit(next.demand, next.available, cost + model.stock[p.stock]!.cost, [...cut, p]);
      if (bestCost <= enough) return;
    }
  };
  visit(model.demand, available, 0, []);
  return { bars: best, proven: complete || bestCost <= enough };
}
