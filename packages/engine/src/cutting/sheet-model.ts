import type { Outcome, Problem } from '../floor/problem.js';
import { ok, refuse } from '../floor/problem.js';
import { wholeLength } from './bar-model.js';
import { negativeAllowance, notACount, notPositive, pieceTooLarge } from './messages.js';
import type { SheetCutting, SheetRequest } from './types.js';

/** The sheet problem without kerf: every piece and the usable sheet larger by one kerf each way. */
export interface SheetModel {
  readonly kinds: readonly PieceKind[];
  readonly demand: readonly number[];
  /** Usable sheet plus kerf [um]. */
  readonly sheet: readonly [number, number];
  readonly kerf: number;
  readonly cutting: SheetCutting;
}

/** Pieces of equal size; `sizes` are the ways in which one may lie, kerf added [um]. */
export interface PieceKind {
  readonly marks: readonly string[];
  readonly sizes: readonly { readonly width: number; readonly height: number; readonly turned: boolean }[];
}

function requestProblems(request: SheetRequest): Problem[] {
  const problems: Problem[] = [];
  for (const name of ['kerf', 'trim'] as const)
    if (!(Number.isFinite(request[name]) && request[name] >= 0)) problems.push(negativeAllowance(name, request[name]));
  request.sheet.forEach((side, i) => {
    if (!(Number.isFinite(side) && side > 0)) problems.push(notPositive(`sheet side ${i + 1}`, side));
  });
  for (const p of request.pieces) {
    for (const side of ['width', 'height'] as const)
      if (!(Number.isFinite(p[side]) && p[side] > 0)) problems.push(notPositive(`${side} of piece ${p.mark}`, p[side]));
    if (!(Number.isInteger(p.count) && p.count >= 0)) problems.push(notACount(`number of piece ${p.mark}`, p.count));
  }
  return problems;
}

/** Turns a request into whole numbers; refuses a piece that lies on no sheet. */
export function sheetModel(request: SheetRequest): Outcome<SheetModel> {
  const problems = requestProblems(request);
  if (problems.length > 0) return refuse(problems);
  const kerf = wholeLength(request.kerf);
  const usable: [number, number] = [request.sheet[0] - 2 * request.trim, request.sheet[1] - 2 * request.trim];
  const sheet: [number, number] = [wholeLength(usable[0]) + kerf, wholeLength(usable[1]) + kerf];
  const kinds = new Map<string, { marks: string[]; sizes: PieceKind['sizes'] }>();
  for (const p of request.pieces) {
    if (p.count === 0) continue;
    const width = wholeLength(p.width) + kerf;
    const height = wholeLength(p.height) + kerf;
    const upright = { width, height, turned: false };
    const ways =
      request.rotation && width !== height ? [upright, { width: height, height: width, turned: true }] : [upright];
    const sizes = ways.filter((s) => s.width <= sheet[0] && s.height <= sheet[1]);
    if (sizes.length === 0) problems.push(pieceTooLarge(p.mark, p.width, p.height, usable));
    const key = `${width}x${height}`;
    const kind = kinds.get(key) ?? { marks: [], sizes };
    for (let i = 0; i < p.count; i++) kind.marks.push(p.mark);
    kinds.set(key, kind);
  }
  if (problems.length > 0) return refuse(problems);
  const list = [...kinds.values()].sort((a, b) => area(b) - area(a) || b.sizes[0]!.height - a.sizes[0]!.height);
  return ok({ kinds: list, demand: list.map((k) => k.marks.length), sheet, kerf, cutting: request.cutting ?? 'any' });
}

const area = (kind: PieceKind): number => kind.sizes[0]!.width * kind.sizes[0]!.height;
