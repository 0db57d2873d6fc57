import {
  type BarPlan,
  type BarStock,
  type Catalogue,
  type Design,
  type Item,
  type Outcome,
  type Part,
  planBars,
  planSheets,
  ruleNumber,
  type SheetPlan,
  type SiteRules,
} from '@cloche/engine';

/** Pieces of one item that are sawn from bars, with the engine's plan. */
export interface BarCuts {
  readonly kind: 'bars';
  readonly item: Item;
  readonly parts: readonly Part[];
  readonly stock: readonly BarStock[];
  readonly plan: Outcome<BarPlan>;
}

/** Pieces of one item that are cut from sheets. */
export interface SheetCuts {
  readonly kind: 'sheets';
  readonly item: Extract<Item, { kind: 'sheet' }>;
  readonly parts: readonly Part[];
  readonly plan: Outcome<SheetPlan>;
}

export type Cuts = BarCuts | SheetCuts;

/** The mark on the piece; parts without one go by their item, so that nothing is cut without a name. */
export const markOf = (part: Part): string => part.mark ?? part.item;

function stockOf(item: Item): readonly BarStock[] | null {
  if (item.kind === 'track')
    return item.stock.map((s) => ({ length: s.length, ...(s.price ? { price: Number(s.price.amount) } : {}) }));
  return 'stockLengths' in item ? item.stockLengths.map((length) => ({ length })) : null;
}

/** Equal pieces together: the same mark is never two lengths, so mark and size name a piece. */
function barPieces(parts: readonly Part[]) {
  const pieces = new Map<string, { mark: string; length: number; count: number }>();
  for (const part of parts) {
    const key = `${markOf(part)}|${part.length!.toFixed(6)}`;
    const before = pieces.get(key);
    pieces.set(key, { mark: markOf(part), length: part.length!, count: (before?.count ?? 0) + part.count });
  }
  return [...pieces.values()];
}

function sheetPieces(parts: readonly Part[]) {
  const pieces = new Map<string, { mark: string; width: number; height: number; count: number }>();
  for (const part of parts) {
    const key = `${markOf(part)}|${part.width!.toFixed(6)}|${part.length!.toFixed(6)}`;
    const before = pieces.get(key);
    const count = (before?.count ?? 0) + part.count;
    pieces.set(key, { mark: markOf(part), width: part.length!, height: part.width!, count });
  }
  return [...pieces.values()];
}

/**
 * The engine's cut plans for everything of a design that is cut from stock: profiles, strips, track, sheets; by item.
 * Edges of sheets are taken as straight: the trim of the rules is for the ends of bars.
 */
export function cutPlans(design: Design, catalogue: Catalogue, rules: SiteRules): readonly Cuts[] {
  const kerf = ruleNumber(rules, 'cutting.kerf');
  const trim = ruleNumber(rules, 'cutting.trim');
  const byItem = new Map<string, Part[]>();
  for (const part of design.parts) byItem.set(part.item, [...(byItem.get(part.item) ?? []), part]);
  const cuts: Cuts[] = [];
  for (const id of [...byItem.keys()].sort()) {
    const item = catalogue.byId.get(id);
    if (!item) continue;
    const sized = byItem.get(id)!.filter((part) => part.length !== undefined);
    const stock = stockOf(item);
    if (stock && sized.length > 0) {
      const plan = planBars({ pieces: barPieces(sized), stock, kerf, trim: item.kind === 'track' ? 0 : trim });
      cuts.push({ kind: 'bars', item, parts: sized, stock, plan });
    }
    if (item.kind === 'sheet') {
      const flat = sized.filter((part) => part.width !== undefined);
      if (flat.length === 0) continue;
      const request = { pieces: sheetPieces(flat), sheet: item.sheetSize, kerf, trim: 0, rotation: true };
      cuts.push({ kind: 'sheets', item, parts: flat, plan: planSheets(request) });
    }
  }
  return cuts;
}
