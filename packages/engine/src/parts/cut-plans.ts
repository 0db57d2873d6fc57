import type { Catalogue, Item } from '../catalogue/schema.js';
import {
  type BarPlan,
  type BarRequest,
  planBars,
  planSheets,
  type SheetPlan,
  type SheetRequest,
} from '../cutting/index.js';
import { barJobs, sheetJobs } from '../design/cut-jobs.js';
import type { Design, Part } from '../design/types.js';
import type { Outcome } from '../floor/problem.js';
import type { SiteRules } from '../rules/schema.js';

/** Equal pieces of one mark, as the plan cuts them and with the parts that they are for. */
export interface CutPiece {
  /** What stands on the piece, the list and the sticker. */
  readonly mark: string;
  /** What the pieces are called in the plan. */
  readonly planned: readonly string[];
  readonly length: number;
  readonly width?: number;
  readonly count: number;
  readonly mass: number;
  /** Laid end to end with others: the stock is shorter than the part. */
  readonly butted: boolean;
  readonly parts: readonly Part[];
}

/** Pieces of one item that are cut from bars, with the engine's plan. */
export interface BarCuts {
  readonly kind: 'bars';
  readonly item: Item;
  readonly pieces: readonly CutPiece[];
  readonly request: BarRequest;
  readonly plan: Outcome<BarPlan>;
}

/** Pieces of one item that are cut from sheets. */
export interface SheetCuts {
  readonly kind: 'sheets';
  readonly item: Extract<Item, { kind: 'sheet' }>;
  readonly pieces: readonly CutPiece[];
  readonly request: SheetRequest;
  readonly plan: Outcome<SheetPlan>;
}

export type Cuts = BarCuts | SheetCuts;

/** A piece of a request, of either kind: long side first in the words of the parts. */
interface Asked {
  readonly mark: string;
  readonly length: number;
  readonly width?: number;
  readonly count: number;
}

const namedInPlan = (part: Part): string => part.mark ?? part.id;
const buttedEnd = / (whole|rest)$/;
const millimetres = (metres: number): string => String(Number((metres * 1000).toFixed(1)));

/** A part without a mark goes by its item and length, so that equal pieces are one line and no two lengths share a name. */
const shownMark = (asked: Asked, part: Part): string =>
  part.mark === undefined ? `${part.item} ${millimetres(asked.length)}` : asked.mark;

/** The pieces of a request by shown mark and size, each with its parts; the mass of a part is shared out by length. */
function cutPieces(asked: readonly Asked[], parts: readonly Part[]): CutPiece[] {
  const byName = new Map<string, Part[]>();
  for (const part of parts) byName.set(namedInPlan(part), [...(byName.get(namedInPlan(part)) ?? []), part]);
  const nameOf = (mark: string) => (byName.has(mark) ? mark : mark.replace(buttedEnd, ''));
  const lengths = new Map<string, number>();
  for (const { mark, length, count } of asked)
    lengths.set(nameOf(mark), (lengths.get(nameOf(mark)) ?? 0) + length * count);
  const pieces = new Map<string, CutPiece>();
  for (const piece of asked) {
    const own = byName.get(nameOf(piece.mark)) ?? [];
    const first = own[0];
    if (!first) continue;
    const mark = shownMark(piece, first);
    const key = [mark, piece.length.toFixed(6), piece.width?.toFixed(6) ?? ''].join('|');
    const before = pieces.get(key);
    const share = (piece.length * piece.count) / lengths.get(nameOf(piece.mark))!;
    pieces.set(key, {
      mark,
      planned: [...new Set([...(before?.planned ?? []), piece.mark])],
      length: piece.length,
      ...(piece.width === undefined ? {} : { width: piece.width }),
      count: (before?.count ?? 0) + piece.count,
      mass: (before?.mass ?? 0) + share * own.reduce((sum, part) => sum + part.mass, 0),
      butted: !byName.has(piece.mark),
      parts: [...new Set([...(before?.parts ?? []), ...own])],
    });
  }
  return [...pieces.values()];
}

/**
 * What is cut from stock, by item, as the engine plans it: the same requests as the findings are made from, so that lists and findings
 * name the same bars.
 */
export function cutPlans(design: Design, catalogue: Catalogue, rules: SiteRules): readonly Cuts[] {
  const planned = { design, catalogue, rules };
  const partsOf = (id: string) => design.parts.filter((part) => part.item === id && part.length !== undefined);
  const bars = barJobs(planned).map(({ item, request }): Cuts => {
    const pieces = cutPieces(request.pieces, partsOf(item));
    return { kind: 'bars', item: catalogue.byId.get(item)!, pieces, request, plan: planBars(request) };
  });
  const sheets = sheetJobs(planned).map(({ item, request }): Cuts => {
    const asked = request.pieces.map(({ mark, width, height, count }) => ({
      mark,
      length: width,
      width: height,
      count,
    }));
    const sheet = catalogue.byId.get(item) as SheetCuts['item'];
    return { kind: 'sheets', item: sheet, pieces: cutPieces(asked, partsOf(item)), request, plan: planSheets(request) };
  });
  return [...bars, ...sheets].sort((a, b) => (a.item.id < b.item.id ? -1 : 1));
}
