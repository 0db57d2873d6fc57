import type { Catalogue, Item } from '../catalogue/schema.js';
import type { BarPiece, BarRequest, SheetRequest } from '../cutting/index.js';
import { ruleNumber, type SiteRules } from '../rules/schema.js';
import type { Design, Part } from './types.js';

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

interface Planned {
  readonly design: Pick<Design, 'parts'>;
  readonly catalogue: Catalogue;
  readonly rules: SiteRules;
}

/** Bars that an item comes in, and how they are bought: track by the piece, profiles and strips by the metre. */
function stockOf(item: Item): Pick<BarRequest, 'stock' | 'aim'> | null {
  if (item.kind === 'track') {
    const priced = item.stock.every((s) => s.price !== undefined);
    const stock = item.stock.map(({ length, price }) => (price ? { length, price: Number(price.amount) } : { length }));
    return { stock, aim: priced ? 'price' : 'length' };
  }
  if (!('stockLengths' in item)) return null;
  // Priced by the metre: the least length bought is the least price.
  return { stock: item.stockLengths.map((length) => ({ length })), aim: 'length' };
}

/** What is cut from bars, by catalogue item; the cut list is `planBars` of each request. */
export function barJobs({ design, catalogue, rules }: Planned): BarJob[] {
  return cutPartsByItem(design.parts, ['profiles', 'strips', 'track', 'curtains']).flatMap(([id, parts]) => {
    const item = catalogue.byId.get(id);
    const stock = item ? stockOf(item) : null;
    if (!item || !stock) return [];
    // Only sawn profiles have rough ends to trim; track comes cut square.
    const trim = item.kind === 'profile' ? ruleNumber(rules, 'cutting.trim') : 0;
    const longest = Math.max(...stock.stock.map((s) => s.length)) - 2 * trim;
    const flexible = item.kind !== 'profile' && item.kind !== 'track';
    const pieces = parts.flatMap((p) => {
      if (p.length === undefined) return [];
      const piece = { mark: p.mark ?? p.id, length: p.length, count: p.count };
      return flexible ? butted(piece, longest) : [piece];
    });
    if (pieces.length === 0) return [];
    const request: BarRequest = { pieces, ...stock, kerf: ruleNumber(rules, 'cutting.kerf'), trim };
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
  return cutPartsByItem(design.parts, ['panels']).flatMap(([id, parts]) => {
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
      sheet: item.sheetSize,
      kerf: ruleNumber(rules, 'cutting.kerf'),
      trim: 0,
      rotation: true,
    };
    return [{ item: id, name: item.name, request }];
  });
}

/** Parts of some groups by catalogue item, in the order of item names. */
export function cutPartsByItem(parts: readonly Part[], groups: readonly Part['group'][]): [string, Part[]][] {
  const byItem = new Map<string, Part[]>();
  for (const p of parts) if (groups.includes(p.group)) byItem.set(p.item, [...(byItem.get(p.item) ?? []), p]);
  return [...byItem].sort(([a], [b]) => (a < b ? -1 : 1));
}
