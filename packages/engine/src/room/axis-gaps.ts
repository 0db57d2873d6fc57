import { edges, type Ring } from '../floor/geometry/polygon.js';
import type { Vec2 } from '../floor/geometry/vec.js';
import type { Obstacle, WidthPlace } from './types.js';

export interface AxisGap extends WidthPlace {
  readonly axis: 'x' | 'y';
}

interface Line {
  readonly id: string;
  /** Place along the axis at both ends of the slab. */
  readonly low: number;
  readonly high: number;
  /** Free floor begins behind this line, or ends at it. */
  readonly opens: boolean;
}

/**
 * The free widths along the axes of the plan between things that face each other, walls included: the least width of each
 * pair, and where it is. Exact for straight edges: between two neighbouring corner heights every width changes evenly, so the
 * least lies at a corner. Things must not cross each other.
 * @param room   inside of the walls [m]; its edges are named `wall 0`, `wall 1` ...
 * @param solids what stands in it [m]
 * Source: plan geometry, slabs between corners (derived).
 */
export function axisGaps(room: Ring, solids: readonly Obstacle[]): AxisGap[] {
  return [...gapsAlong('x', room, solids), ...gapsAlong('y', room, solids)];
}

const swapped = (p: Vec2): Vec2 => [p[1], p[0]];

function gapsAlong(axis: 'x' | 'y', room: Ring, solids: readonly Obstacle[]): AxisGap[] {
  const own = (p: Vec2): Vec2 => (axis === 'x' ? p : swapped(p));
  const walls = edges(room).map((e, i) => ({ id: `wall ${i}`, from: own(e.from), to: own(e.to), solid: false }));
  const faces = solids.flatMap((s) =>
    edges(s.outline).map((e) => ({ id: s.id, from: own(e.from), to: own(e.to), solid: true })),
  );
  const all = [...walls, ...faces];
  const heights = [...new Set(all.map((f) => f.from[1]))].sort((a, b) => a - b);
  const least = new Map<string, AxisGap>();
  for (let i = 0; i + 1 < heights.length; i++) {
    const [bottom, top] = [heights[i]!, heights[i + 1]!];
    if (top - bottom < 1e-9) continue;
    for (const gap of slabGaps(all, bottom, top)) {
      const key = `${gap.a}|${gap.b}`;
      const at = (p: Vec2) => own(p);
      if ((least.get(key)?.width ?? Number.POSITIVE_INFINITY) - gap.width > 1e-12)
        least.set(key, { ...gap, axis, from: at(gap.from), to: at(gap.to) });
    }
  }
  return [...least.values()].sort((a, b) => a.width - b.width || (a.a < b.a ? -1 : 1));
}

interface Face {
  readonly id: string;
  readonly from: Vec2;
  readonly to: Vec2;
  readonly solid: boolean;
}

function slabGaps(faces: readonly Face[], bottom: number, top: number): WidthPlace[] {
  const lines = faces
    .filter((f) => Math.min(f.from[1], f.to[1]) <= bottom && Math.max(f.from[1], f.to[1]) >= top)
    .map((f) => ({ id: f.id, low: placeAt(f, bottom), high: placeAt(f, top), solid: f.solid }))
    .sort((a, b) => a.low + a.high - (b.low + b.high));
  const gaps: WidthPlace[] = [];
  let insideRoom = false;
  const covering = new Set<string>();
  let open: Line | null = null;
  for (const line of lines) {
    const wasFree = insideRoom && covering.size === 0;
    if (!line.solid) insideRoom = !insideRoom;
    else if (!covering.delete(line.id)) covering.add(line.id);
    const isFree = insideRoom && covering.size === 0;
    if (!wasFree && isFree) open = { ...line, opens: true };
    else if (wasFree && !isFree && open) gaps.push(widthBetween(open, { ...line, opens: false }, bottom, top));
  }
  return gaps;
}

const placeAt = (f: Face, height: number): number =>
  f.from[0] + ((f.to[0] - f.from[0]) * (height - f.from[1])) / (f.to[1] - f.from[1]);

function widthBetween(a: Line, b: Line, bottom: number, top: number): WidthPlace {
  const low = b.low - a.low;
  const high = b.high - a.high;
  // Equal all along: show the width in the middle.
  if (Math.abs(low - high) < 1e-9) {
    const middle = (bottom + top) / 2;
    return { width: low, a: a.id, b: b.id, from: [(a.low + a.high) / 2, middle], to: [(b.low + b.high) / 2, middle] };
  }
  return low < high
    ? { width: low, a: a.id, b: b.id, from: [a.low, bottom], to: [b.low, bottom] }
    : { width: high, a: a.id, b: b.id, from: [a.high, top], to: [b.high, top] };
}
