import { type BarPiece, type BarPlan, planBars, planSheets, type SheetCutting, type SheetPiece } from '@cloche/engine';
import { type Adapters, type Given, Unsupported } from '../adapter.js';

type Fields = Readonly<Record<string, unknown>>;

function list(given: Given, name: string): readonly Fields[] {
  const value = given.any(name);
  if (!Array.isArray(value)) throw new Unsupported(`field ${name} is missing`);
  return value as Fields[];
}

function only(fields: Fields, ...known: readonly string[]): void {
  const strange = Object.keys(fields).filter((name) => !known.includes(name));
  if (strange.length > 0) throw new Unsupported(`field not known: ${strange.join(', ')}`);
}

const barPieces = (given: Given): BarPiece[] =>
  list(given, 'pieces').map((p, i) => {
    only(p, 'length_m', 'count');
    return { mark: `p${i + 1}`, length: p['length_m'] as number, count: (p['count'] as number | undefined) ?? 1 };
  });

function proven(plan: BarPlan): BarPlan {
  if (!plan.optimal) throw new Unsupported(`best plan found ${plan.cost}, proven bound ${plan.bound}`);
  return plan;
}

/** Bars or price of the best plan; null when no plan exists. */
function bars(given: Given, wanted: ReadonlySet<string>): Fields {
  const request = {
    pieces: barPieces(given),
    stock: list(given, 'stock').map((s) => {
      only(s, 'length_m', 'price', 'available');
      return {
        length: s['length_m'] as number,
        ...(typeof s['price'] === 'number' ? { price: s['price'] } : {}),
        ...(typeof s['available'] === 'number' ? { available: s['available'] } : {}),
      };
    }),
    kerf: given.number('kerf_m'),
    trim: given.optionalNumber('trim_m') ?? 0,
  };
  given.ignore('rule', 'objective');
  const results: Record<string, unknown> = {};
  const cost = (aim: 'bars' | 'price') => {
    const plan = planBars({ ...request, aim });
    return plan.ok ? proven(plan.value).cost : null;
  };
  if (wanted.has('min_bars')) results['min_bars'] = cost('bars');
  if (wanted.has('min_price')) results['min_price'] = cost('price');
  if (wanted.has('feasible')) results['feasible'] = planBars({ ...request, aim: 'bars' }).ok;
  return results;
}

function newBars(given: Given): Fields {
  given.ignore('objective', 'rule');
  const offcuts = given.numbers('offcuts_m');
  const plan = planBars({
    pieces: barPieces(given),
    stock: [
      { length: given.number('new_bar_m'), price: 1 },
      ...offcuts.map((length) => ({ length, price: 0, available: 1 })),
    ],
    kerf: given.number('kerf_m'),
    trim: 0,
    aim: 'price',
  });
  return { min_new_bars: plan.ok ? proven(plan.value).cost : null };
}

/** How the sheet is cut, from the words of the case; the strips may run along either side. */
function cuttingOf(text: string): { readonly cutting: SheetCutting; readonly swap: boolean } {
  if (/^any number/i.test(text)) return { cutting: 'any', swap: false };
  if (/^two stages with trimming/i.test(text) && /first sheet dimension/i.test(text))
    return { cutting: 'strips', swap: false };
  if (/^two stages with trimming/i.test(text) && /second sheet dimension/i.test(text))
    return { cutting: 'strips', swap: true };
  throw new Unsupported(`way of cutting not known: ${text}`);
}

function sheets(given: Given): Fields {
  given.ignore('rule');
  const { cutting, swap } = cuttingOf(given.text('cutting'));
  const [first, second] = given.numbers('sheet_m');
  const rotation = given.any('rotation_allowed');
  if (first === undefined || second === undefined || typeof rotation !== 'boolean')
    throw new Unsupported('sheet_m or rotation_allowed is missing');
  const pieces = list(given, 'pieces').map((p, i): SheetPiece => {
    only(p, 'width_m', 'height_m', 'count');
    const [width, height] = [p['width_m'] as number, p['height_m'] as number];
    const count = (p['count'] as number | undefined) ?? 1;
    return { mark: `p${i + 1}`, width: swap ? height : width, height: swap ? width : height, count };
  });
  const plan = planSheets({
    pieces,
    sheet: swap ? [second, first] : [first, second],
    kerf: given.number('kerf_m'),
    trim: given.optionalNumber('trim_m') ?? 0,
    rotation,
    cutting,
  });
  if (!plan.ok) return { min_sheets: null, feasible: false };
  if (!plan.value.optimal)
    throw new Unsupported(`best plan found ${plan.value.sheets.length} sheets, proven bound ${plan.value.bound}`);
  return { min_sheets: plan.value.sheets.length, feasible: true };
}

export const cuttingAdapters: Adapters = {
  'one-dimensional cutting with kerf': bars,
  'one-dimensional cutting with limited off-cuts': newBars,
  'two-dimensional guillotine cutting': sheets,
};
