import type { SideName } from '../brief/schema.js';
import type { Cloth } from '../catalogue/schema.js';
import type { Placed } from '../design/types.js';
import { type Axes, toRoom } from './axes.js';
import type { PartDraft } from './draft.js';
import { sideLines } from './frame-members.js';

const placed: Placed = {
  rule: 'compose.enclosure.strip',
  because: 'Overlapping strips hang across the whole side, fixed under the roof beam.',
};

/** Strips needed to cover a width when neighbours overlap. Source: geometry. */
export const stripCount = (width: number, strip: number, overlap: number): number =>
  Math.max(1, Math.ceil((width - overlap) / (strip - overlap) - 1e-9));

/** A strip curtain fixed along the inside of one side: it does not draw, people pass through it. */
export function stripSide(input: {
  readonly of: string;
  readonly axes: Axes;
  readonly side: SideName;
  readonly cloth: Cloth;
  readonly offset: number;
  readonly clearHeight: number;
  readonly hemGap: number;
}): PartDraft[] {
  const { of, axes, cloth } = input;
  const line = sideLines(axes).find((l) => l.name === input.side)!;
  const strip = cloth.widths[0]!.width;
  const n = stripCount(2 * line.half, strip, cloth.jointLoss);
  const across = (line.alongU ? axes.width : axes.length) / 2 - input.offset;
  const at = (s: number) => (line.alongU ? toRoom(axes, s, line.sign * across) : toRoom(axes, line.sign * across, s));
  const pitch = n === 1 ? 0 : (2 * line.half - strip) / (n - 1);
  const length = input.clearHeight - input.hemGap;
  return Array.from({ length: n }, (_, i): PartDraft => {
    const from = n === 1 ? -strip / 2 : -line.half + i * pitch;
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
