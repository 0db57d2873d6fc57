import { edges, type Ring } from '../floor/geometry/polygon.js';
import { add2, between2, distance2, dot2, scale2, sub2, unit2, type Vec2 } from '../floor/geometry/vec.js';
import type { Obstacle, WidthPlace } from './types.js';

/** The side that a strip runs along, and the way out of the thing that has the side. */
export interface StripSide {
  readonly id: string;
  readonly from: Vec2;
  readonly to: Vec2;
  /** Unit vector away from the side. */
  readonly outward: Vec2;
}

/** What lies only this far over the end of a side does not narrow the strip [m]: the snap of the plan. */
const endTolerance = 1e-3;

/**
 * Free width of the strip along one side: the least distance, square to the side, to anything that faces it, walls
 * included, and the place. Unlimited when nothing faces it.
 * @param side      ends [m] and direction away from it
 * @param obstacles what may face it [m]; the thing that has the side is left out by the caller
 * @param room      inside of the walls [m]
 * Source: plan geometry: edges clipped to the strip (derived).
 */
export function clearStrip(side: StripSide, obstacles: readonly Obstacle[], room: Ring): WidthPlace {
  const along = unit2(sub2(side.to, side.from));
  const length = distance2(side.from, side.to);
  let best: WidthPlace = {
    width: Number.POSITIVE_INFINITY,
    a: side.id,
    b: 'nothing',
    from: between2(side.from, side.to, 0.5),
    to: between2(side.from, side.to, 0.5),
  };
  const consider = (id: string, a: Vec2, b: Vec2) => {
    const part = clipToStrip(side, along, length, a, b);
    if (!part) return;
    for (const p of part) {
      if (p.depth >= best.width - 1e-12) continue;
      const foot = add2(side.from, scale2(along, p.along));
      best = { width: p.depth, a: side.id, b: id, from: foot, to: add2(foot, scale2(side.outward, p.depth)) };
    }
  };
  edges(room).forEach((e, i) => {
    consider(`wall ${i}`, e.from, e.to);
  });
  for (const o of obstacles) for (const e of edges(o.outline)) consider(o.id, e.from, e.to);
  return best;
}

interface InStrip {
  readonly along: number;
  readonly depth: number;
}

/** The ends of the part of an edge that lies before the side; null when none does. */
function clipToStrip(side: StripSide, along: Vec2, length: number, a: Vec2, b: Vec2): readonly InStrip[] | null {
  const own = (p: Vec2): InStrip => ({
    along: dot2(sub2(p, side.from), along),
    depth: dot2(sub2(p, side.from), side.outward),
  });
  let part: readonly [InStrip, InStrip] | null = [own(a), own(b)];
  const limits: readonly ((p: InStrip) => number)[] = [
    (p) => p.along - Math.min(endTolerance, length / 4),
    (p) => length - Math.min(endTolerance, length / 4) - p.along,
    (p) => p.depth + 1e-9,
  ];
  for (const limit of limits) part = part && clip(part, limit);
  if (!part) return null;
  const middle = { along: (part[0].along + part[1].along) / 2, depth: (part[0].depth + part[1].depth) / 2 };
  // An edge parallel to the side is shown in its middle.
  const parallel = Math.abs(part[0].depth - part[1].depth) < 1e-9;
  return (parallel ? [middle] : part).map((p) => ({ along: p.along, depth: Math.max(0, p.depth) }));
}

function clip([a, b]: readonly [InStrip, InStrip], inside: (p: InStrip) => number): readonly [InStrip, InStrip] | null {
  const [sa, sb] = [inside(a), inside(b)];
  if (sa < 0 && sb < 0) return null;
  if (sa >= 0 && sb >= 0) return [a, b];
  const t = sa / (sa - sb);
  const cut = { along: a.along + (b.along - a.along) * t, depth: a.depth + (b.depth - a.depth) * t };
  return sa >= 0 ? [a, cut] : [cut, b];
}
