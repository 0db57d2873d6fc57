import { add2, type Bounds, bounds, dot2, scale2, sub2, unit2, type Vec2 } from '@cloche/engine';
import { drawingTexts } from '../../texts/drawing.js';
import { lengthText } from '../length-text.js';
import { type Face, facesOf, overlap } from './field.js';
import type { SnapEdge, SnapField, SnapKind, SnapOptions, SnapReason } from './types.js';

const { snap: say } = drawingTexts;

export interface BoxOptions extends SnapOptions {
  /** The point of the thing that comes to whole steps, before the move; the middle of its outline when left out. */
  readonly anchor?: Vec2;
}

/** A move in one direction that would bring the thing to rest on something. */
interface Candidate {
  readonly shift: number;
  readonly kind: SnapKind;
  readonly text: string;
  readonly lines: SnapReason['lines'];
}

type Axis = 0 | 1;
const rank: Partial<Record<SnapKind, number>> = { wall: 0, offset: 1, axis: 2, grid: 3 };

/**
 * Where a dragged outline comes to rest: its edges against walls and things or a usual width away, gaps equal, edges and middles in
 * line with others; east and north are decided one by one, each within reach. A slanting wall decides both.
 * @param by the move that the hand asks for [m]
 */
export function snapBox(
  field: SnapField,
  outline: readonly Vec2[],
  by: Vec2,
  options: BoxOptions,
): { readonly by: Vec2; readonly reasons: readonly SnapReason[] } {
  if (options.free || outline.length === 0) return { by, reasons: [] };
  const on = (kind: SnapKind) => options.kinds?.has(kind) ?? true;
  const moved = outline.map((p) => add2(p, by));
  const slant = slanted(field, moved, options.reach, on);
  if (slant) return { by: add2(by, slant.shift), reasons: [slant.reason] };
  const box = bounds(moved);
  const faces = facesOf(field.edges);
  const before = bounds(outline);
  const anchor = options.anchor ?? scale2(add2(before.min, before.max), 0.5);
  const chosen = ([0, 1] as const).map((axis): Candidate | null => {
    const all = [
      ...contacts(field, faces, box, axis),
      ...equalGaps(field, faces, box, axis),
      ...inLine(field, box, axis),
    ];
    const near = all.filter((c) => on(c.kind) && Math.abs(c.shift) <= options.reach);
    const best = near.sort((a, b) => Math.abs(a.shift) - Math.abs(b.shift) || rank[a.kind]! - rank[b.kind]!)[0];
    if (best) return best;
    const at = anchor[axis] + by[axis];
    const shift = Math.round(at / options.grid) * options.grid - at;
    return on('grid') && Math.abs(shift) <= options.reach ? { shift, kind: 'grid', text: say.grid, lines: [] } : null;
  });
  const [dx, dy] = chosen.map((c) => c?.shift ?? 0);
  const reasons = chosen.flatMap((c, axis): SnapReason[] => {
    if (!c) return [];
    // The other direction moved as well: helper lines go along.
    const aside: Vec2 = axis === 0 ? [0, dy!] : [dx!, 0];
    const lines = (c.lines ?? []).map(([a, b]) => [add2(a, aside), add2(b, aside)] as const);
    return [{ kind: c.kind, text: c.text, lines }];
  });
  return { by: [by[0] + dx!, by[1] + dy!], reasons };
}

const other = (axis: Axis): Axis => (axis === 0 ? 1 : 0);
const pointAt = (axis: Axis, along: number, across: number): Vec2 => (axis === 0 ? [along, across] : [across, along]);
const spanOf = (box: Bounds, axis: Axis): readonly [number, number] => [box.min[axis], box.max[axis]];
const middleOfOverlap = (a: readonly [number, number], b: readonly [number, number]): number =>
  (Math.max(a[0], b[0]) + Math.min(a[1], b[1])) / 2;

/** Faces that one side of the box looks at. */
const facing = (faces: readonly Face[], box: Bounds, axis: Axis, side: 1 | -1): readonly Face[] =>
  faces.filter((f) => f.axis === axis && f.looks === -side && overlap(f.span, spanOf(box, other(axis))));

const sides = [1, -1] as const;
const edgeOf = (box: Bounds, axis: Axis, side: 1 | -1): number => (side > 0 ? box.max[axis] : box.min[axis]);

/** Against a face, at a usual width from it, or as far from it as others are from each other. */
function contacts(field: SnapField, faces: readonly Face[], box: Bounds, axis: Axis): readonly Candidate[] {
  const widths = [
    ...field.offsets.map((size) => ({ size, text: (of: string) => say.offset(lengthText(size, field.units), of) })),
    ...field.gaps
      .filter((gap) => gap.axis === axis)
      .map(({ size, between }) => ({ size, text: () => say.asFar(lengthText(size, field.units), ...between) })),
  ];
  return sides.flatMap((side) =>
    facing(faces, box, axis, side).flatMap((face): Candidate[] => {
      const gap = (face.at - edgeOf(box, axis, side)) * side;
      const across = middleOfOverlap(face.span, spanOf(box, other(axis)));
      const line = (size: number) =>
        [pointAt(axis, face.at, across), pointAt(axis, face.at - size * side, across)] as const;
      return [
        { shift: gap * side, kind: 'wall', text: say.flush(face.of), lines: [faceLine(face)] },
        ...widths.map(
          ({ size, text }): Candidate => ({
            shift: (gap - size) * side,
            kind: 'offset',
            text: text(face.of),
            lines: [line(size)],
          }),
        ),
      ];
    }),
  );
}

const faceLine = ({ axis, at, span }: Face) => [pointAt(axis, at, span[0]), pointAt(axis, at, span[1])] as const;

/** In the middle between what stands on both sides. */
function equalGaps(field: SnapField, faces: readonly Face[], box: Bounds, axis: Axis): readonly Candidate[] {
  const [after, before] = sides.map((side) =>
    facing(faces, box, axis, side)
      .map((face) => ({ face, gap: (face.at - edgeOf(box, axis, side)) * side }))
      .filter(({ gap }) => gap >= 0)
      .reduce<{ face: Face; gap: number } | null>((best, f) => (!best || f.gap < best.gap ? f : best), null),
  );
  if (!after || !before) return [];
  const size = (after.gap + before.gap) / 2;
  const shift = after.gap - size;
  const lines = [after, before].map(({ face }, i) => {
    const across = middleOfOverlap(face.span, spanOf(box, other(axis)));
    return [pointAt(axis, face.at, across), pointAt(axis, face.at - size * sides[i]!, across)] as const;
  });
  return [{ shift, kind: 'offset', text: say.equal(lengthText(size, field.units)), lines }];
}

/** Edges with edges, middles with middles. */
function inLine(field: SnapField, box: Bounds, axis: Axis): readonly Candidate[] {
  const own = { low: box.min[axis], middle: (box.min[axis] + box.max[axis]) / 2, high: box.max[axis] };
  return field.boxes.flatMap(({ of, ring }) => {
    const theirs = bounds(ring);
    const [low, high] = spanOf(theirs, axis);
    const pairs = [
      [own.low, low],
      [own.low, high],
      [own.high, low],
      [own.high, high],
      [own.middle, (low + high) / 2],
    ] as const;
    const across = [spanOf(theirs, other(axis)), spanOf(box, other(axis))].flat();
    return pairs.map(([mine, target], i): Candidate => {
      const text = say.inLine(i === 4 ? say.middle(of) : of);
      const line = [pointAt(axis, target, Math.min(...across)), pointAt(axis, target, Math.max(...across))] as const;
      return { shift: target - mine, kind: 'axis', text, lines: [line] };
    });
  });
}

/** The nearest rest against a slanting face, or at a usual width from it. */
function slanted(field: SnapField, moved: readonly Vec2[], reach: number, on: (kind: SnapKind) => boolean) {
  let best: { readonly shift: Vec2; readonly size: number; readonly reason: SnapReason } | null = null;
  for (const edge of field.edges) {
    const { free } = edge;
    if (!free || Math.abs(free[0]) > 1 - 1e-9 || Math.abs(free[1]) > 1 - 1e-9 || !beside(edge, moved)) continue;
    const gap = Math.min(...moved.map((p) => dot2(sub2(p, edge.from), free)));
    for (const size of [0, ...field.offsets]) {
      const shift = size - gap;
      const kind = size === 0 ? 'wall' : 'offset';
      if (!on(kind) || Math.abs(shift) > reach || (best && Math.abs(shift) >= Math.abs(best.size))) continue;
      const text = size === 0 ? say.flush(edge.of) : say.offset(lengthText(size, field.units), edge.of);
      best = { shift: scale2(free, shift), size: shift, reason: { kind, text, lines: [[edge.from, edge.to]] } };
    }
  }
  return best;
}

/** True when some of the outline lies over the length of an edge. */
function beside({ from, to }: SnapEdge, ring: readonly Vec2[]): boolean {
  const along = unit2(sub2(to, from));
  const places = ring.map((p) => dot2(sub2(p, from), along));
  return overlap([Math.min(...places), Math.max(...places)], [0, dot2(sub2(to, from), along)]);
}
