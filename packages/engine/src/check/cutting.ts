import {
  barPlanCalculation,
  barUnit,
  planBars,
  planSheets,
  type SheetPlan,
  sheetPlanCalculation,
} from '../cutting/index.js';
import { type BarJob, barJobs, cutPartsByItem, type SheetJob, sheetJobs } from '../design/cut-jobs.js';
import { calculation, val } from '../floor/calculation.js';
import { type Finding, notJudged, type Verdict } from '../floor/finding.js';
import { numberText } from '../floor/number-text.js';
import type { Problem } from '../floor/problem.js';
import { remembered } from '../floor/remembered.js';
import { geometrySource, source } from '../floor/source.js';
import { type CheckContext, ruleUsed } from './context.js';

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

/** A cutting plan is made anew only when something is cut differently. */
const contentOf = ({ rules }: CheckContext, job: BarJob | SheetJob) => [rules.hash, job];

const barFinding = remembered((context: CheckContext, job: BarJob): Finding => {
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
    message: `${job.name}: ${bars.length} ${bars.length === 1 ? 'bar' : 'bars'}, ${numberText(cost, 4)} ${barUnit(plan.value)}, ${proof}; ${yieldText}.`,
    demand: cost,
    capacity: bound,
    unit: barUnit(plan.value),
    utilisation: cost / bound,
    calculation: barPlanCalculation(base.requirement, job.request, plan.value),
  };
}, contentOf);

const sheetFinding = remembered((context: CheckContext, job: SheetJob): Finding => {
  const base = common(context, 'sheets', job.item, job.name);
  const plan = planSheets(job.request);
  if (!plan.ok) {
    const over = (piece: { readonly width: number; readonly height: number }) => {
      const [sheetLong, sheetShort] = [Math.max(...job.request.sheet), Math.min(...job.request.sheet)];
      const [long, short] = [Math.max(piece.width, piece.height), Math.min(piece.width, piece.height)];
      return long / sheetLong >= short / sheetShort
        ? { side: long, sheet: sheetLong, which: 'longer' }
        : { side: short, sheet: sheetShort, which: 'shorter' };
    };
    const { side, sheet, which } = job.request.pieces
      .map(over)
      .reduce((worst, o) => (o.side / o.sheet > worst.side / worst.sheet ? o : worst));
    return cannot(base, plan.problems, side, sheet, `${which} side of the piece`, `${which} side of the sheet`);
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
}, contentOf);

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
  return cutPartsByItem(context.design.parts, ['profiles', 'strips', 'panels'])
    .filter(([item, parts]) => !planned.has(item) && parts.some((p) => p.length !== undefined))
    .map(([item]) => ({
      ...common(context, 'bars', item, item),
      id: `cutting/stock/${item}`,
      requirement: `Stock for ${item}`,
      ...notJudged,
      message: `The catalogue gives no stock length or sheet size for ${item}, so its cutting is not planned.`,
      unit: '1',
      calculation: null,
    }));
}
