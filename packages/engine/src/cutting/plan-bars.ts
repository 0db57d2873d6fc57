import type { Outcome } from '../floor/problem.js';
import { ok, refuse } from '../floor/problem.js';
import { firstFit, patternCost, provenBound, roundDown } from './bar-heuristics.js';
import { type BarModel, barModel } from './bar-model.js';
import { type Pattern, relaxCutting, wholeBound } from './bar-relaxation.js';
import { searchBars } from './bar-search.js';
import { notEnoughStock } from './messages.js';
import type { BarPlan, BarRequest, PlannedBar } from './types.js';

/**
 * The cut list: which bars to take and which pieces to saw from each, at the least price, bars or length.
 *
 *     a bar of length B gives n pieces when sum l + (n - 1) k <= B - 2 t        k kerf, t trim of each end
 * `optimal` only when the plan meets a proven lower bound or the search ended by itself; else `bound` tells how far the best
 * plan can be. Deterministic. A rest shorter than the kerf is eaten by the saw.
 * @returns the plan, or `cutting/piece-too-long`, `cutting/not-enough-stock`, `cutting/no-stock`, `cutting/size`,
 *          `cutting/count`, `cutting/allowance`, `cutting/price`
 * Source: Gilmore & Gomory, Operations Research 9 (1961) and 11 (1963) (from memory); kerf rule derived.
 */
export function planBars(request: BarRequest): Outcome<BarPlan> {
  const outcome = barModel(request);
  if (!outcome.ok) return outcome;
  const model = outcome.value;
  if (model.sizes.length === 0) return ok({ bars: [], aim: model.aim, cost: 0, bound: 0, optimal: true, yield: 0 });
  const available = model.stock.map((s) => s.available);
  const relaxed = relaxCutting(model, model.demand, available);
  const bound = Math.max(0, provenBound(relaxed), volumeBound(model));
  const plans = [firstFit(model, model.demand, available), roundDown(model, relaxed, model.demand, available)].filter(
    (p) => p !== null,
  );
  plans.sort((a, b) => patternCost(model, a) - patternCost(model, b));
  const { bars, proven } = searchBars(model, relaxed, available, plans[0] ?? null, bound);
  if (!bars) return refuse([notEnoughStock()]);
  return ok(written(request, model, bars, proven, bound));
}

/** Cost of the whole length at the rate of the cheapest bar; zero where some bars are limited and a cheap one may run out. */
function volumeBound(model: BarModel): number {
  if (model.stock.some((s) => Number.isFinite(s.available))) return 0;
  const length = model.sizes.reduce((sum, size, i) => sum + size * model.demand[i]!, 0);
  return wholeBound(length * Math.min(...model.stock.map((s) => s.cost / s.size)));
}

function written(
  request: BarRequest,
  model: BarModel,
  patterns: readonly Pattern[],
  proven: boolean,
  bound: number,
): BarPlan {
  const cost = patternCost(model, patterns);
  const kerf = request.kerf;
  const waiting = model.marks.map((m) => [...m]);
  const order = [...patterns].sort((a, b) => a.stock - b.stock || compareFalling(a.counts, b.counts));
  const bars: PlannedBar[] = order.map((p) => {
    const used = p.counts.reduce((sum, n, i) => sum + n * model.sizes[i]!, 0);
    return {
      stock: p.stock,
      length: request.stock[p.stock]!.length,
      pieces: p.counts.flatMap((n, i) => waiting[i]!.splice(0, n)),
      offcut: Math.max(0, model.stock[p.stock]!.size - used - Math.round(kerf * 1e6)) / 1e6,
    };
  });
  const bought = bars.reduce((sum, b) => sum + b.length, 0);
  const net = request.pieces.reduce((sum, p) => sum + p.length * p.count, 0);
  return {
    bars,
    aim: model.aim,
    cost: cost * model.costUnit,
    bound: (proven ? cost : bound) * model.costUnit,
    optimal: proven || cost === bound,
    yield: net / bought,
  };
}

const compareFalling = (a: readonly number[], b: readonly number[]): number => {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return b[i]! - a[i]!;
  return 0;
};
