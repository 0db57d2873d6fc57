import type { Outcome, Problem } from '../floor/problem.js';
import { ok, refuse } from '../floor/problem.js';
import { negativeAllowance, noPrice, noStock, notACount, notPositive, pieceTooLong } from './messages.js';
import type { BarAim, BarRequest } from './types.js';

/** Lengths are compared in whole micrometres, so that 0.1 m + 0.2 m fills 0.3 m. */
const perMetre = 1e6;
/** Prices are compared in ten-thousandths of the currency unit. */
const perMoney = 1e4;

export const wholeLength = (metres: number): number => Math.round(metres * perMetre);

/**
 * The cutting problem without kerf: every piece and every bar longer by one kerf. With n pieces and n-1 kerfs,
 * sum l + (n-1) k <= B is the same as sum (l + k) <= B + k.
 */
export interface BarModel {
  /** Different lengths plus kerf, falling [um]. */
  readonly sizes: readonly number[];
  readonly demand: readonly number[];
  /** Marks of the pieces of each length, in the order of the request. */
  readonly marks: readonly (readonly string[])[];
  readonly stock: readonly ModelStock[];
  readonly aim: BarAim;
  /** One unit of cost in the measure of the aim. */
  readonly costUnit: number;
}

export interface ModelStock {
  /** Usable length plus kerf [um]. */
  readonly size: number;
  /** Whole multiple of the cost unit. */
  readonly cost: number;
  readonly available: number;
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

function requestProblems(request: BarRequest, aim: BarAim): Problem[] {
  const problems: Problem[] = [];
  for (const name of ['kerf', 'trim'] as const)
    if (!(Number.isFinite(request[name]) && request[name] >= 0)) problems.push(negativeAllowance(name, request[name]));
  if (request.stock.length === 0) problems.push(noStock());
  request.stock.forEach((s, i) => {
    if (!(Number.isFinite(s.length) && s.length > 0)) problems.push(notPositive(`stock ${i + 1}`, s.length));
    if (s.available !== undefined && !(Number.isInteger(s.available) && s.available >= 0))
      problems.push(notACount(`number of stock ${i + 1}`, s.available));
  });
  request.pieces.forEach((p) => {
    if (!(Number.isFinite(p.length) && p.length > 0)) problems.push(notPositive(`piece ${p.mark}`, p.length));
    if (!(Number.isInteger(p.count) && p.count >= 0)) problems.push(notACount(`number of piece ${p.mark}`, p.count));
  });
  if (aim === 'price' && request.stock.some((s) => !(s.price !== undefined && s.price >= 0))) problems.push(noPrice());
  return problems;
}

/** The longest piece that a bar of the list can give [m]. */
export const longestUsable = (request: Pick<BarRequest, 'stock' | 'trim'>): number =>
  Math.max(...request.stock.map((s) => s.length)) - 2 * request.trim;

/** Turns a request into whole numbers; refuses what cannot be cut at all. */
export function barModel(request: BarRequest): Outcome<BarModel> {
  const aim = request.aim ?? (request.stock.every((s) => s.price !== undefined) ? 'price' : 'length');
  const problems = requestProblems(request, aim);
  if (problems.length > 0) return refuse(problems);
  const longest = longestUsable(request);
  const tooLong = request.pieces.filter((p) => p.count > 0 && wholeLength(p.length) > wholeLength(longest));
  if (tooLong.length > 0) return refuse(tooLong.map((p) => pieceTooLong(p.mark, p.length, longest)));

  const kerf = wholeLength(request.kerf);
  const bySize = new Map<number, string[]>();
  for (const p of request.pieces) {
    if (p.count === 0) continue;
    const size = wholeLength(p.length) + kerf;
    const marks = bySize.get(size) ?? [];
    for (let i = 0; i < p.count; i++) marks.push(p.mark);
    bySize.set(size, marks);
  }
  const sizes = [...bySize.keys()].sort((a, b) => b - a);
  const raw = request.stock.map((s) =>
    aim === 'price' ? Math.round(s.price! * perMoney) : aim === 'bars' ? 1 : wholeLength(s.length),
  );
  const unit = raw.reduce(gcd, 0) || 1;
  return ok({
    sizes,
    demand: sizes.map((s) => bySize.get(s)!.length),
    marks: sizes.map((s) => bySize.get(s)!),
    stock: request.stock.map((s, i) => ({
      size: wholeLength(s.length - 2 * request.trim) + kerf,
      cost: raw[i]! / unit,
      available: s.available ?? Number.POSITIVE_INFINITY,
    })),
    aim,
    costUnit: aim === 'price' ? unit / perMoney : aim === 'bars' ? 1 : unit / perMetre,
  });
}
