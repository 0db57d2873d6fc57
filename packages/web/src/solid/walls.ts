import { at3, between2 } from '@cloche/engine';
import type { Design, Ring, Vec2, Vec3 } from '../engine/contract.js';
import { offsetRing, wallThickness } from '../plan/wall-band.js';

/** A straight block of wall without an opening, by eight corners numbered as those of a box: along, outward, up. */
export interface WallBlock {
  readonly corners: readonly Vec3[];
  /** Its face to the room: four corners, seen from the room against the clock. */
  readonly face: readonly [Vec3, Vec3, Vec3, Vec3];
}

interface Gap {
  /** Shares of the wall. */
  readonly from: number;
  readonly to: number;
  readonly bottom: number;
  readonly top: number;
}

/** Heights of a wall that no opening takes over a stretch. */
function solidHeights(gaps: readonly Gap[], height: number): readonly (readonly [number, number])[] {
  const solid: (readonly [number, number])[] = [];
  let from = 0;
  for (const { bottom, top } of [...gaps].sort((a, b) => a.bottom - b.bottom)) {
    if (bottom > from) solid.push([from, Math.min(bottom, height)]);
    from = Math.max(from, top);
  }
  if (from < height) solid.push([from, height]);
  return solid;
}

/** Walls as blocks with doors and windows left out; corners are mitred as in the plan. */
export function wallBlocks({ outline, height, doors, windows }: Design['room']): readonly WallBlock[] {
  const outer = offsetRing(outline, wallThickness);
  const openings = [...doors, ...windows];
  return outline.flatMap((a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    const gaps = openings.filter((o) => o.wall === i).map((o) => gapIn(a, b, o));
    const places = [0, ...gaps.flatMap((g) => [g.from, g.to]), 1].sort((x, y) => x - y);
    return places.slice(1).flatMap((to, k) => {
      const from = places[k]!;
      if (to - from < 1e-9) return [];
      const over = gaps.filter((g) => g.from < to - 1e-9 && g.to > from + 1e-9);
      return solidHeights(over, height).map(([bottom, top]) => block(outline, outer, i, { from, to, bottom, top }));
    });
  });
}

function gapIn(a: Vec2, b: Vec2, opening: Design['room']['windows'][number]): Gap {
  const length2 = (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2;
  const share = (p: Vec2) => ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / length2;
  const ends = [share(opening.from), share(opening.to)].map((t) => Math.min(1, Math.max(0, t)));
  return { from: Math.min(...ends), to: Math.max(...ends), bottom: opening.bottom, top: opening.top };
}

function block(inner: Ring, outer: Ring, i: number, { from, to, bottom, top }: Gap): WallBlock {
  const j = (i + 1) % inner.length;
  const [a, b] = [inner[i]!, inner[j]!];
  const p = [between2(a, b, from), between2(a, b, to)] as const;
  // Ends at openings go straight through the wall; only the corners of the room are mitred.
  const straight = (q: Vec2): Vec2 => {
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
    return [q[0] + ((b[1] - a[1]) / length) * wallThickness, q[1] - ((b[0] - a[0]) / length) * wallThickness];
  };
  const q = [from === 0 ? outer[i]! : straight(p[0]), to === 1 ? outer[j]! : straight(p[1])] as const;
  return {
    corners: [bottom, top].flatMap((z) => [at3(p[0], z), at3(p[1], z), at3(q[0], z), at3(q[1], z)]),
    face: [at3(p[1], bottom), at3(p[0], bottom), at3(p[0], top), at3(p[1], top)],
  };
}
