import {
  type BarPlan,
  type CutPiece,
  type Cuts,
  compareText,
  type Item,
  ruleNumber,
  type SheetPlan,
  type SiteRules,
} from '@cloche/engine';
import { mediumDeviation } from './tables.js';

/** One line of the cut list: equal pieces of one mark. */
export interface CutRow {
  readonly mark: string;
  readonly partNumber: string;
  readonly name: string;
  readonly material: string;
  readonly lengthMm: number;
  readonly widthMm: number | null;
  readonly thicknessMm: number | null;
  /** Plus or minus [mm] by ISO 2768-m; null above 4000 mm: to be agreed. */
  readonly toleranceMm: number | null;
  readonly qty: number;
  readonly massKg: number;
  readonly operations: string;
  /** Bars or sheets that the pieces come from: `1 (2), 3 (1)` is two from the first and one from the third. */
  readonly from: string;
  readonly of: string;
}

/** One bar or sheet to take from stock. */
export interface StockRow {
  readonly partNumber: string;
  readonly name: string;
  readonly kind: 'bar' | 'sheet';
  readonly number: number;
  readonly lengthMm: number;
  readonly widthMm: number | null;
  readonly pieces: string;
  readonly offcutMm: number | null;
  readonly keep: boolean | null;
}

export interface CutSummary {
  readonly name: string;
  readonly partNumber: string;
  readonly words: string;
}

export interface CutList {
  readonly rows: readonly CutRow[];
  readonly stock: readonly StockRow[];
  readonly summary: readonly CutSummary[];
  readonly kerfMm: number;
  readonly trimMm: number;
}

const mm = (metres: number) => Number((metres * 1000).toFixed(1));
const numberOf = (item: Item) => item.partNumber ?? item.id;
const distinct = (words: readonly string[]) => [...new Set(words)].sort();

/** Names of the plan on each bar or sheet, in its order; empty when there is no plan. */
function plannedByStock(cuts: Cuts): readonly (readonly string[])[] {
  if (cuts.kind === 'bars') return cuts.plan.ok ? cuts.plan.value.bars.map((bar) => bar.pieces) : [];
  return cuts.plan.ok ? cuts.plan.value.sheets.map((sheet) => sheet.map((piece) => piece.mark)) : [];
}

function fromText(piece: CutPiece, stock: readonly (readonly string[])[]): string {
  return stock
    .flatMap((names, i) => {
      const n = names.filter((name) => piece.planned.includes(name)).length;
      return n === 0 ? [] : [`${i + 1} (${n})`];
    })
    .join(', ');
}

/** What the workshop does to a piece, beyond the cut. */
const operationsOf = (piece: CutPiece): string =>
  [...distinct(piece.parts.flatMap((p) => p.note ?? [])), ...(piece.butted ? ['laid end to end'] : [])].join('; ');

function rowsOf(cuts: Cuts): CutRow[] {
  const stock = plannedByStock(cuts);
  const flat = cuts.kind === 'sheets';
  return cuts.pieces.map((piece): CutRow => {
    const lengthMm = mm(piece.length);
    const thickness = piece.parts[0]?.thickness;
    return {
      mark: piece.mark,
      partNumber: numberOf(cuts.item),
      name: cuts.item.name,
      material: cuts.item.kind === 'profile' ? cuts.item.alloy : cuts.item.kind === 'sheet' ? cuts.item.material : '',
      lengthMm,
      widthMm: piece.width === undefined ? null : mm(piece.width),
      thicknessMm: flat && thickness !== undefined ? mm(thickness) : null,
      toleranceMm: mediumDeviation(lengthMm),
      qty: piece.count,
      massKg: piece.mass,
      operations: operationsOf(piece),
      from: fromText(piece, stock),
      of: distinct(piece.parts.map((p) => p.of)).join(' '),
    };
  });
}

/** `2 × P1, 1 × B1`: pieces of one bar in the order of the cuts. */
function piecesText(marks: readonly string[]): string {
  const counted = new Map<string, number>();
  for (const mark of marks) counted.set(mark, (counted.get(mark) ?? 0) + 1);
  return [...counted].map(([mark, n]) => `${n} × ${mark}`).join(', ');
}

function stockRows(cuts: Cuts, useful: number): StockRow[] {
  const common = { partNumber: numberOf(cuts.item), name: cuts.item.name };
  const shown = new Map(cuts.pieces.flatMap((piece) => piece.planned.map((name) => [name, piece.mark] as const)));
  const markOf = (name: string) => shown.get(name) ?? name;
  if (cuts.kind === 'bars')
    return cuts.plan.ok
      ? cuts.plan.value.bars.map((bar, i) => ({
          ...common,
          kind: 'bar' as const,
          number: i + 1,
          lengthMm: mm(bar.length),
          widthMm: null,
          pieces: piecesText(bar.pieces.map(markOf)),
          offcutMm: mm(bar.offcut),
          keep: bar.offcut >= useful,
        }))
      : [];
  return cuts.plan.ok
    ? cuts.plan.value.sheets.map((sheet, i) => ({
        ...common,
        kind: 'sheet' as const,
        number: i + 1,
        lengthMm: mm(cuts.item.sheetSize[0]),
        widthMm: mm(cuts.item.sheetSize[1]),
        pieces: sheet.map((p) => `${markOf(p.mark)} at ${mm(p.x)}, ${mm(p.y)}${p.turned ? ' turned' : ''}`).join('; '),
        offcutMm: null,
        keep: null,
      }))
    : [];
}

const percent = (share: number) => `${(share * 100).toFixed(1)} %`;

const counted = (count: number, one: string) => `${count} ${one}${count === 1 ? '' : 's'}`;
const proof = (optimal: boolean, gap: string) => (optimal ? 'proven the least' : `not proven the least: ${gap}`);

function planWords(cuts: Cuts): string {
  if (!cuts.plan.ok) return `No plan: ${cuts.plan.problems.map((p) => p.message).join(' ')}`;
  if (cuts.kind === 'sheets') {
    const plan = cuts.plan.value as SheetPlan;
    return `${counted(plan.sheets.length, 'sheet')}, ${percent(plan.yield)} of the area used; ${proof(plan.optimal, `at least ${plan.bound} are needed`)}.`;
  }
  const plan = cuts.plan.value as BarPlan;
  const gap = `no plan can be below ${plan.bound.toFixed(2)} in ${plan.aim}, this one has ${plan.cost.toFixed(2)}`;
  return `${counted(plan.bars.length, 'bar')}, ${percent(plan.yield)} of the length used; ${proof(plan.optimal, gap)}.`;
}

const summaryOf = (cuts: Cuts): CutSummary => ({
  name: cuts.item.name,
  partNumber: numberOf(cuts.item),
  words: planWords(cuts),
});

/** The cut list, sorted by item, falling length, mark; with the bars and sheets to take. The plans are the engine's. */
export function cutList(cuts: readonly Cuts[], rules: SiteRules): CutList {
  const useful = ruleNumber(rules, 'cutting.useful-offcut');
  const rows = cuts
    .flatMap(rowsOf)
    .sort(
      (a, b) =>
        compareText(a.name, b.name) ||
        compareText(a.partNumber, b.partNumber) ||
        b.lengthMm - a.lengthMm ||
        compareText(a.mark, b.mark),
    );
  return {
    rows,
    stock: cuts.flatMap((c) => stockRows(c, useful)),
    summary: cuts.map(summaryOf),
    kerfMm: mm(ruleNumber(rules, 'cutting.kerf')),
    trimMm: mm(ruleNumber(rules, 'cutting.trim')),
  };
}
