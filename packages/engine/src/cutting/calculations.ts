import {
  type Calculation,
  type CalculationStep,
  type CalculationValue,
  calculation,
  fromStep,
  val,
} from '../floor/calculation.js';
import { cuttingSources } from './tables.js';
import type { BarPlan, BarRequest, SheetPlan, SheetRequest } from './types.js';

const mm = (metres: number): number => Math.round(metres * 1e6) / 1e3;

interface Sum {
  readonly expression: string;
  readonly values: Record<string, CalculationValue>;
  readonly result: number;
}

/** `n1*(l1 + k) + n2*(l2 + k)`: equal lengths together. */
function lengthSum(request: BarRequest, kerf: boolean): Sum {
  const counts = new Map<number, number>();
  for (const p of request.pieces) if (p.count > 0) counts.set(mm(p.length), (counts.get(mm(p.length)) ?? 0) + p.count);
  const rows = [...counts].sort((a, b) => b[0] - a[0]);
  const k = kerf ? mm(request.kerf) : 0;
  const values: Record<string, CalculationValue> = kerf ? { k: val(k, 'mm', 'kerf') } : {};
  rows.forEach(([length, count], i) => {
    values[`n${i + 1}`] = val(count, '1', `pieces of length ${i + 1}`);
    values[`l${i + 1}`] = val(length, 'mm', `length ${i + 1}`);
  });
  const term = (i: number) => (kerf ? `n${i + 1}*(l${i + 1} + k)` : `n${i + 1}*l${i + 1}`);
  return {
    expression: rows.map((_, i) => term(i)).join(' + '),
    values,
    result: rows.reduce((sum, [length, count]) => sum + count * (length + k), 0),
  };
}

/** `m1*B1 + m2*B2` over the stock that the plan uses. */
function boughtSum(request: BarRequest, plan: BarPlan): Sum {
  const used = request.stock
    .map((s, i) => ({ length: mm(s.length), count: plan.bars.filter((b) => b.stock === i).length }))
    .filter((u) => u.count > 0);
  const values: Record<string, CalculationValue> = {};
  used.forEach((u, i) => {
    values[`m${i + 1}`] = val(u.count, '1', `bars of ${u.length} mm`);
    values[`B${i + 1}`] = val(u.length, 'mm', 'stock length', 'catalogue');
  });
  return {
    expression: used.map((_, i) => `m${i + 1}*B${i + 1}`).join(' + '),
    values,
    result: used.reduce((sum, u) => sum + u.count * u.length, 0),
  };
}

const step = (
  symbol: string,
  name: string,
  sum: Sum,
  unit: string,
  source: CalculationStep['source'],
): CalculationStep => ({ symbol, name, unit, source, ...sum });

/** Ratio of two earlier steps. */
const share = (symbol: string, name: string, over: CalculationStep, under: CalculationStep): CalculationStep => ({
  symbol,
  name,
  expression: `${over.symbol}/${under.symbol}`,
  values: { [over.symbol]: fromStep(over), [under.symbol]: fromStep(under) },
  result: over.result / under.result,
  unit: '1',
  source: cuttingSources.kerf,
});

/**
 * The steps behind a cut list: length with kerf, bars by volume, length bought, yield.
 *
 *     bars >= ceil(sum n (l + k) / (B - 2 t + k))          one stock length
 * Source: kerf rule and volume bound (derived).
 */
export function barPlanCalculation(title: string, request: BarRequest, plan: BarPlan): Calculation {
  const withKerf = step(
    'L',
    'length of all pieces, a kerf with each',
    lengthSum(request, true),
    'mm',
    cuttingSources.kerf,
  );
  const net = step('Ln', 'net length of all pieces', lengthSum(request, false), 'mm', cuttingSources.kerf);
  const bought = step('Lb', 'length bought', boughtSum(request, plan), 'mm', cuttingSources.kerf);
  const longest = Math.max(...request.stock.map((s) => s.length));
  const values = {
    L: fromStep(withKerf),
    B: val(mm(longest), 'mm', 'longest bar', 'catalogue'),
    t: val(mm(request.trim), 'mm', 'trim of each end'),
    k: val(mm(request.kerf), 'mm', 'kerf'),
  };
  const volume: CalculationStep = {
    symbol: 'Nv',
    name: 'bars of the longest length that the pieces fill, at least',
    expression: 'ceil(L/(B - 2*t + k))',
    values,
    result: Math.ceil(values.L.value / (values.B.value - 2 * values.t.value + values.k.value)),
    unit: '1',
    source: cuttingSources.volume,
  };
  const bars: CalculationStep = {
    symbol: 'N',
    name: 'bars in the plan',
    expression: Object.keys(bought.values)
      .filter((n) => n.startsWith('m'))
      .join(' + '),
    values: Object.fromEntries(Object.entries(bought.values).filter(([n]) => n.startsWith('m'))),
    result: plan.bars.length,
    unit: '1',
    source: cuttingSources.columnGeneration,
    note: plan.optimal
      ? 'Proven: no plan is better (bound by column generation, or every other plan was ruled out).'
      : `Not proven: no plan can be below ${plan.bound} ${barUnit(plan)}; this one has ${plan.cost}.`,
  };
  return calculation(title, [withKerf, volume, bars, net, bought, share('y', 'yield', net, bought)], {
    assumptions: ['One kerf between neighbouring pieces; a rest shorter than the kerf is eaten by the saw.'],
  });
}

/** What the cost of a plan counts. */
export const barUnit = (plan: BarPlan): string =>
  plan.aim === 'bars' ? 'bars' : plan.aim === 'length' ? 'm' : 'units of money';

/**
 * The steps behind a sheet plan: area with kerf, sheets by area, area bought, yield.
 *
 *     sheets >= ceil(sum n (w + k)(h + k) / ((W - 2 t + k)(H - 2 t + k)))
 * Source: area bound (derived).
 */
export function sheetPlanCalculation(title: string, request: SheetRequest, plan: SheetPlan): Calculation {
  const pieces = request.pieces.filter((p) => p.count > 0);
  const k = mm(request.kerf);
  const t = mm(request.trim);
  const [W, H] = [mm(request.sheet[0]), mm(request.sheet[1])];
  const sizes: Record<string, CalculationValue> = {};
  pieces.forEach((p, i) => {
    sizes[`n${i + 1}`] = val(p.count, '1', `pieces ${p.mark}`);
    sizes[`w${i + 1}`] = val(mm(p.width), 'mm', `width of ${p.mark}`);
    sizes[`h${i + 1}`] = val(mm(p.height), 'mm', `height of ${p.mark}`);
  });
  const total = (extra: number) =>
    pieces.reduce((sum, p) => sum + p.count * (mm(p.width) + extra) * (mm(p.height) + extra), 0) / 1e6;
  const withKerf: CalculationStep = {
    symbol: 'A',
    name: 'area of all pieces, a kerf with each',
    expression: `(${pieces.map((_, i) => `n${i + 1}*(w${i + 1} + k)*(h${i + 1} + k)`).join(' + ')})/1000000`,
    values: { ...sizes, k: val(k, 'mm', 'kerf') },
    result: total(k),
    unit: 'm2',
    source: cuttingSources.guillotine,
  };
  const usable: CalculationStep = {
    symbol: 'As',
    name: 'usable area of a sheet, one kerf each way',
    expression: '(W - 2*t + k)*(H - 2*t + k)/1000000',
    values: {
      W: val(W, 'mm', 'first side of the sheet', 'catalogue'),
      H: val(H, 'mm', 'second side of the sheet', 'catalogue'),
      t: val(t, 'mm', 'trim of each edge'),
      k: val(k, 'mm', 'kerf'),
    },
    result: ((W - 2 * t + k) * (H - 2 * t + k)) / 1e6,
    unit: 'm2',
    source: cuttingSources.guillotine,
  };
  const filled: CalculationStep = {
    ...share('r', 'sheets that the pieces fill; rounded up no plan needs fewer', withKerf, usable),
    source: cuttingSources.guillotine,
  };
  const net: CalculationStep = {
    symbol: 'An',
    name: 'net area of all pieces',
    expression: `(${pieces.map((_, i) => `n${i + 1}*w${i + 1}*h${i + 1}`).join(' + ')})/1000000`,
    values: sizes,
    result: total(0),
    unit: 'm2',
    source: cuttingSources.guillotine,
  };
  const bought: CalculationStep = {
    symbol: 'Ab',
    name: 'area bought',
    expression: 'N*W*H/1000000',
    values: {
      N: val(plan.sheets.length, '1', 'sheets in the plan'),
      W: val(W, 'mm', 'first side of the sheet', 'catalogue'),
      H: val(H, 'mm', 'second side of the sheet', 'catalogue'),
    },
    result: (plan.sheets.length * W * H) / 1e6,
    unit: 'm2',
    source: cuttingSources.guillotine,
    note: plan.optimal
      ? 'Proven: fewer sheets do not do.'
      : `Not proven: ${plan.bound} sheets are the lower bound, the plan has ${plan.sheets.length}.`,
  };
  return calculation(title, [withKerf, usable, filled, net, bought, share('y', 'yield', net, bought)], {
    assumptions: ['Straight through cuts only; one kerf between neighbours, none at the sheet edge.'],
  });
}
