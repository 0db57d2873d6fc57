import type { SheetModel } from './sheet-model.js';
import type { Slice } from './sheet-slicing.js';
import { joined } from './sheet-strips.js';

interface Shelf {
  slice: Slice;
}

/** A sheet being filled: strips over one side, stacked along the other. */
interface Filling {
  readonly shelves: Shelf[];
  used: number;
}

/**
 * Strips for long lists: pieces by falling height, each into the strip with the least room left that takes it, else a new
 * strip on the first sheet with room, else a new sheet. Not the best; the bound tells how far it can be.
 * @param along which side of the sheet the strips run along
 * Source: best-fit decreasing height, rule of the trade (common practice).
 */
export function shelfPlan(model: SheetModel, along: 'first' | 'second'): Slice[] {
  const [length, depth] = along === 'first' ? model.sheet : [model.sheet[1], model.sheet[0]];
  const run = (s: Slice) => (along === 'first' ? s.width : s.height);
  const rise = (s: Slice) => (along === 'first' ? s.height : s.width);
  const beside = along === 'first' ? 'beside' : 'above';
  const above = along === 'first' ? 'above' : 'beside';
  const sheets: Filling[] = [];
  const ways = model.kinds.map((kind, of) => kind.sizes.map((s): Slice => ({ kind: 'piece', of, ...s })));
  const order = ways
    .flatMap((options, of) => Array.from({ length: model.demand[of]! }, () => options))
    .sort((a, b) => lowest(b, rise) - lowest(a, rise) || Math.max(...b.map(run)) - Math.max(...a.map(run)));
  for (const options of order) {
    const places = sheets.flatMap((sheet) =>
      sheet.shelves.flatMap((shelf) =>
        options
          .filter((p) => rise(p) <= rise(shelf.slice) && run(shelf.slice) + run(p) <= length)
          .map((piece) => ({ shelf, piece, left: length - run(shelf.slice) - run(piece) })),
      ),
    );
    const best = places.sort((a, b) => a.left - b.left)[0];
    if (best) {
      best.shelf.slice = joined(beside, best.shelf.slice, best.piece);
      continue;
    }
    const piece = [...options].sort((a, b) => rise(a) - rise(b))[0]!;
    const roomy = sheets.find((s) => s.used + rise(piece) <= depth);
    const sheet = roomy ?? { shelves: [], used: 0 };
    if (!roomy) sheets.push(sheet);
    sheet.shelves.push({ slice: piece });
    sheet.used += rise(piece);
  }
  return sheets.map((s) => s.shelves.map((f) => f.slice).reduce((first, second) => joined(above, first, second)));
}

const lowest = (options: readonly Slice[], rise: (s: Slice) => number): number => Math.min(...options.map(rise));
