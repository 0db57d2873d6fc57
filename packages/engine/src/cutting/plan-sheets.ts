import type { Outcome } from '../floor/problem.js';
import { ok } from '../floor/problem.js';
import { sheetBound } from './sheet-bound.js';
import { type SheetModel, sheetModel } from './sheet-model.js';
import { shelfPlan } from './sheet-shelves.js';
import { type Multisets, multisets, partsOf, type Slice, sliceAll } from './sheet-slicing.js';
import { stripsAll } from './sheet-strips.js';
import type { PlacedPiece, SheetPlan, SheetRequest } from './types.js';

/** Choices of pieces up to which the exact way is taken: nine different pieces, or more of fewer kinds. */
const exactUpTo = 600;

/**
 * How to saw panels from sheets with straight through cuts: the fewest sheets and where each piece lies.
 *
 * Exact for short lists (up to nine different pieces, or as many choices of equal ones); longer lists are laid in strips
 * and `optimal` only when that meets the bound. One kerf between neighbours, none at the sheet edge.
 * @returns the plan, or `cutting/piece-too-large`, `cutting/size`, `cutting/count`, `cutting/allowance`
 * Source: slicing trees over subsets, strip partitions (derived); best-fit decreasing height (common practice).
 */
export function planSheets(request: SheetRequest): Outcome<SheetPlan> {
  const outcome = sheetModel(request);
  if (!outcome.ok) return outcome;
  const model = outcome.value;
  if (model.kinds.length === 0) return ok({ sheets: [], bound: 0, optimal: true, yield: 0 });
  const sets = multisets(model.demand);
  const exact = sets.count <= exactUpTo;
  const slices = exact ? fewestSheets(model, sets) : longList(model);
  const { bound } = sheetBound(model);
  const waiting = model.kinds.map((k) => [...k.marks]);
  const net = request.pieces.reduce((sum, p) => sum + p.width * p.height * p.count, 0);
  return ok({
    sheets: slices.map((slice) => laid(model, slice, 0, 0, waiting)),
    bound: exact ? slices.length : bound,
    optimal: exact || slices.length === bound,
    yield: net / (slices.length * request.sheet[0] * request.sheet[1]),
  });
}

function longList(model: SheetModel): Slice[] {
  const along = shelfPlan(model, 'first');
  if (model.cutting === 'strips') return along;
  const across = shelfPlan(model, 'second');
  return across.length < along.length ? across : along;
}

/** Fewest sheets over all ways to share the pieces out, from the choices that one sheet holds. */
function fewestSheets(model: SheetModel, sets: Multisets): Slice[] {
  const held = model.cutting === 'any' ? sliceAll(model, sets) : stripsAll(model, sets);
  const least = [0];
  const choice = [0];
  for (let index = 1; index < sets.count; index++) {
    let fewest = Number.POSITIVE_INFINITY;
    let chosen = 0;
    // Larger indices first: fuller sheets come before the rest sheet.
    for (const part of partsOf(sets, sets.counts(index)).reverse())
      if (held[part]!.length > 0 && least[index - part]! + 1 < fewest) {
        fewest = least[index - part]! + 1;
        chosen = part;
      }
    least.push(fewest);
    choice.push(chosen);
  }
  const slices: Slice[] = [];
  for (let index = sets.count - 1; index > 0; index -= choice[index]!) slices.push(held[choice[index]!]![0]!);
  return slices;
}

function laid(model: SheetModel, slice: Slice, x: number, y: number, waiting: string[][]): PlacedPiece[] {
  if (slice.kind === 'piece')
    return [
      {
        mark: waiting[slice.of]!.shift()!,
        x: x / 1e6,
        y: y / 1e6,
        width: (slice.width - model.kerf) / 1e6,
        height: (slice.height - model.kerf) / 1e6,
        turned: slice.turned,
      },
    ];
  const { first, second } = slice;
  const next = slice.kind === 'beside' ? { x: x + first.width, y } : { x, y: y + first.height };
  return [...laid(model, first, x, y, waiting), ...laid(model, second, next.x, next.y, waiting)];
}
