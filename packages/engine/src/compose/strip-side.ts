import type { Cloth } from '../catalogue/schema.js';
import type { Placed } from '../design/types.js';
import { between2, type Vec2 } from '../floor/geometry/vec.js';
import type { PartDraft } from './draft.js';

const placed: Placed = {
  rule: 'compose.enclosure.strip',
  because: 'Overlapping strips hang across the whole side, fixed under the roof beam.',
};

/** Strips needed to cover a width when neighbours overlap. Source: geometry. */
export const stripCount = (width: number, strip: number, overlap: number): number =>
  Math.max(1, Math.ceil((width - overlap) / (strip - overlap) - 1e-9));

/** A strip curtain fixed along the inside of one side, on a line from end to end: it does not draw, people pass through it. */
export function stripSide(input: {
  readonly of: string;
  readonly line: { readonly from: Vec2; readonly to: Vec2; readonly length: number };
  readonly cloth: Cloth;
  readonly clearHeight: number;
  readonly hemGap: number;
}): PartDraft[] {
  const { of, line, cloth } = input;
  const strip = cloth.widths[0]!.width;
  const n = stripCount(line.length, strip, cloth.jointLoss);
  const at = (s: number) => between2(line.from, line.to, s / line.length);
  const pitch = n === 1 ? 0 : (line.length - strip) / (n - 1);
  const length = input.clearHeight - input.hemGap;
  return Array.from({ length: n }, (_, i): PartDraft => {
    const from = n === 1 ? (line.length - strip) / 2 : i * pitch;
    return {
      item: cloth.id,
      group: 'curtains',
      role: 'strip panel',
      of,
      shape: {
        shape: 'cloth',
        line: [at(from), at(from + strip)],
        top: input.clearHeight,
        bottom: input.hemGap,
        fullness: 0,
      },
      count: 1,
      length,
      width: strip,
      thickness: cloth.thickness,
      mass: length * strip * cloth.massPerArea,
      placed,
    };
  });
}
