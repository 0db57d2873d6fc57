import type { Sheet } from '../catalogue/schema.js';
import {
  type BarPiece,
  type BarRequest,
  barPlanCalculation,
  barUnit,
  planBars,
  planSheets,
  type SheetPlan,
  type SheetRequest,
  sheetPlanCalculation,
} from '../cutting/index.js';
import type { Part } from '../design/types.js';
import { calculation, val } from '../floor/calculation.js';
import type { Finding, Verdict } from '../floor/finding.js';
import { numberText } from '../floor/number-text.js';
import type { Problem } from '../floor/problem.js';
import { geometrySource, source } from '../floor/source.js';
import { ruleNumber } from '../rules/schema.js';
import { type CheckContext, ruleUsed } from './context.js';

/** All pieces of one profile or strip, and the bars that they come from. */
export interface BarJob {
  readonly item: string;
  readonly name: string;
  readonly request: BarRequest;
}

/** All panels of one sheet material. */
export interface SheetJob {
  readonly item: string;
  readonly name: string;
  readonly request: SheetRequest;
}

type Planned = Pick<CheckContext, 'design' | 'catalogue' | 'rules'>;

/** What is cut from bars, by catalogue item; the cut list is `planBars` of each request. */
export function barJobs({ design, catalogue, rules }: Planned): BarJob[] {
  return itemsOf(design.parts, ['profiles', 'strips']).flatMap(([id, parts]) => {
    const item = catalogue.byId.get(id);
    if (!item || !('stockLengths' in item)) return [];
    const strip = item.kind !== 'profile';
    const trim = strip ? 0 : ruleNumber(rules, 'cutting.trim');
    const longest = Math.max(...item.stockLengths) - 2 * trim;
    const pieces = parts.flatMap((p) => {
      if (p.length === undefined) return [];
      const piece = { mark: p.mark ?? p.id, length: p.length, count: p.count };
      return strip ? butted(piece, longest) : [piece];
    });
    if (pieces.length === 0) return [];
    // Profiles and strips are priced by the metre: the least length bought is the least price.
    const request: BarRequest = {
      pieces,
      stock: item.stockLengths.map((length) => ({ length })),
      kerf: ruleNumber(rules, 'cutting.kerf'),
      trim,
      aim: 'length',
    };
    return [{ item: id, name: item.name, request }];
  });
}

/** Covers, inserts and hem weights longer than their stock are laid end to end: whole lengths and a rest. */
function butted(piece: BarPiece, longest: number): BarPiece[] {
  const whole = Math.ceil(piece.length / longest - 1e-9) - 1;
  if (whole < 1) return [piece];
  return [
    { mark: `${piece.mark} whole`, length: longest, count: whole * piece.count },
    { mark: `${piece.mark} rest`, length: piece.length - whole * longest, count: piece.count },
  ];
}

/** What is cut from sheets, by catalogue item; clear and plain sheets may be turned. */
export function sheetJobs({ design, catalogue, rules }: Planned): SheetJob[] {
  return itemsOf(design.parts, ['panels']).flatMap(([id, parts]) => {
    const item = catalogue.byId.get(id);
    if (item?.kind !== 'sheet') return [];
    const pieces = parts.flatMap((p) =>
      p.length === undefined || p.width === undefined
        ? []
        : [{ mark: p.mark ?? p.id, width: p.length, height: p.width, count: p.count }],
    );
    if (pieces.length === 0) return [];
    const request: SheetRequest = {
      pieces,
      sheet: (item as Sheet).sheetSize,
      kerf: ruleNumber(rules, 'cutting.kerf'),
      trim: 0,
      rotation: true,
    };
    return [{ item: id, name: item.name, request }];
  });
}

function itemsOf(parts: readonly Part[], groups: readonly Part['group'][]): [string, Part[]][] {
  const byItem = new Map<string, Part[]>();
  for (const p of parts) if (groups.includes(p.group)) byItem.set(p.item, [...(byItem.get(p.item) ?? []), p]);
  return [...byItem].sort(([a], [b]) => (a < b ? -1 : 1));
}

/** Bars and sheets to buy: whether everything can be cut, and how near the plan is to the least that is possible. */
export function checkCutting(context: CheckContext): Finding[] {
  const bars = barJobs(context).map((job) => barFinding(context, job));
  const sheets = sheetJobs(context).map((job) => sheetFinding(context, job));
  return [...bars, ...sheets, ...unsized(context, new Set([...bars, ...sheets].map((f) => f.subject)))];
}

const common = (context: CheckContext, kind: 'bars' | 'sheets', item: string, name: string) => ({
  id: `cutting/${kind}/${item}`,
  discipline: 'cutting' as const,
  subject: item,
  requirement: `Fewest ${kind} of ${name}`,
  source: source('cutting plan held against a proven lower bound', 'computed'),
  rule: ruleUsed(context.rules, 'cutting.kerf'),
  decider: 'purchasing' as const,
  required: false,
  cautions: [],
  asks: [],
});

function barFinding(context: CheckContext, job: BarJob): Finding {
  const base = common(context, 'bars', job.item, job.name);
  const plan = planBars(job.request);
  if (!plan.ok) {
    const longest = Math.max(...job.request.stock.map((s) => s.length)) - 2 * job.request.trim;
    const piece = Math.max(...job.request.pieces.map((p) => p.length));
    return cannot(base, plan.problems, piece, longest, 'longest piece', 'longest usable bar');
  }
  const { bars, cost, bound, optimal } = plan.value;
  const yieldText = `${numberText(plan.value.yield * 100)} % of what is bought is used`;
  const proof = optimal
    ? 'proven to be the least'
    : `at most ${numberText(cost - bound)} ${barUnit(plan.value)} above the least`;
  return {
    ...base,
    verdict: verdictOfPlan(optimal),
    message: `${job.name}: ${bars.length} ${bars.length === 1 ? 'bar' : 'bars'}, ${numberText(cost, 4)} m, ${proof}; ${yieldText}.`,
    demand: cost,
    capacity: bound,
    unit: barUnit(plan.value),
    utilisation: cost / bound,
    calculation: barPlanCalculation(base.requirement, job.request, plan.value),
  };
}

function sheetFinding(context: CheckContext, job: SheetJob): Finding {
  const base = common(context, 'sheets', job.item, job.name);
  const plan = planSheets(job.request);
  if (!plan.ok) {
    const side = Math.max(...job.request.pieces.flatMap((p) => [p.width, p.height]));
    return cannot(
      base,
      plan.problems,
      side,
      Math.max(...job.request.sheet),
      'longest side',
      'longest side of the sheet',
    );
  }
  const { sheets, bound, optimal }: SheetPlan = plan.value;
  const proof = optimal ? 'proven to be the fewest' : `the lower bound is ${bound}`;
  return {
    ...base,
    verdict: verdictOfPlan(optimal),
    message: `${job.name}: ${sheets.length} ${sheets.length === 1 ? 'sheet' : 'sheets'}, ${proof}; ${numberText(plan.value.yield * 100)} % of what is bought is used.`,
    demand: sheets.length,
    capacity: bound,
    unit: 'sheets',
    utilisation: sheets.length / bound,
    calculation: sheetPlanCalculation(base.requirement, job.request, plan.value),
  };
}

/** A plan that is not proven may still be the best; that is for purchasing to weigh. */
const verdictOfPlan = (optimal: boolean): Verdict => (optimal ? 'meets' : 'attention');

function cannot(
  base: ReturnType<typeof common>,
  problems: readonly Problem[],
  demand: number,
  capacity: number,
  what: string,
  limit: string,
): Finding {
  const values = {
    piece: val(Math.round(demand * 1e6) / 1e3, 'mm', what, 'design'),
    stock: val(Math.round(capacity * 1e6) / 1e3, 'mm', limit, 'catalogue'),
  };
  const step = {
    symbol: 'u',
    name: 'piece over stock',
    expression: 'piece/stock',
    values,
    result: values.piece.value / values.stock.value,
    unit: '1',
    source: geometrySource,
  };
  return {
    ...base,
    verdict: 'fails',
    required: true,
    message: [...new Set(problems.flatMap((p) => [p.message, p.hint]))].join(' '),
    demand,
    capacity,
    unit: 'm',
    utilisation: demand / capacity,
    calculation: calculation(base.requirement, [step]),
  };
}

/** Cut parts whose item gives no stock: said, not passed over. */
function unsized(context: CheckContext, planned: ReadonlySet<string>): Finding[] {
  return itemsOf(context.design.parts, ['profiles', 'strips', 'panels'])
    .filter(([item, parts]) => !planned.has(item) && parts.some((p) => p.length !== undefined))
    .map(([item]) => ({
      ...common(context, 'bars', item, item),
      id: `cutting/stock/${item}`,
      requirement: `Stock for ${item}`,
      verdict: 'not assessed',
      message: `The catalogue gives no stock length or sheet size for ${item}, so its cutting is not planned.`,
      demand: null,
      capacity: null,
      unit: '1',
      utilisation: null,
      calculation: null,
    }));
}
