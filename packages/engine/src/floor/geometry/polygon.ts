import { add2, cross2, distance2, dot2, scale2, sub2, turn2, type Vec2 } from './vec.js';

/** A closed ring of plan points, counter-clockwise when it is an outline; the last point is not repeated. */
export type Ring = readonly Vec2[];

/** Signed area, positive when counter-clockwise [m2]. */
export function signedArea(ring: Ring): number {
  let twice = 0;
  for (let i = 0; i < ring.length; i++) twice += cross2(ring[i]!, ring[(i + 1) % ring.length]!);
  return twice / 2;
}

export const counterClockwise = (ring: Ring): Ring => (signedArea(ring) < 0 ? [...ring].reverse() : ring);

export interface Edge {
  readonly from: Vec2;
  readonly to: Vec2;
}

export const edges = (ring: Ring): Edge[] => ring.map((from, i) => ({ from, to: ring[(i + 1) % ring.length]! }));

/** Point in polygon by the even-odd rule; a point on the boundary within `tolerance` counts as inside. */
export function contains(ring: Ring, p: Vec2, tolerance = 1e-9): boolean {
  let inside = false;
  for (const { from, to } of edges(ring)) {
    if (distanceToSegment(p, from, to) <= tolerance) return true;
    if (from[1] > p[1] !== to[1] > p[1] && p[0] < ((to[0] - from[0]) * (p[1] - from[1])) / (to[1] - from[1]) + from[0])
      inside = !inside;
  }
  return inside;
}

export const closestOnSegment = (p: Vec2, a: Vec2, b: Vec2): Vec2 => {
  const d = sub2(b, a);
  const l2 = dot2(d, d);
  const t = l2 === 0 ? 0 : Math.min(1, Math.max(0, dot2(sub2(p, a), d) / l2));
  return add2(a, scale2(d, t));
};

export const distanceToSegment = (p: Vec2, a: Vec2, b: Vec2): number => distance2(p, closestOnSegment(p, a, b));

/** True when the two segments share a point; ends that touch count. */
export function segmentsMeet(a: Vec2, b: Vec2, c: Vec2, d: Vec2): boolean {
  const side = (p: Vec2, q: Vec2, r: Vec2) => Math.sign(cross2(sub2(q, p), sub2(r, p)));
  const on = (p: Vec2, q: Vec2, r: Vec2) =>
    Math.min(p[0], q[0]) <= r[0] &&
    r[0] <= Math.max(p[0], q[0]) &&
    Math.min(p[1], q[1]) <= r[1] &&
    r[1] <= Math.max(p[1], q[1]);
  const s1 = side(a, b, c);
  const s2 = side(a, b, d);
  const s3 = side(c, d, a);
  const s4 = side(c, d, b);
  if (s1 !== s2 && s3 !== s4) return true;
  return (
    (s1 === 0 && on(a, b, c)) || (s2 === 0 && on(a, b, d)) || (s3 === 0 && on(c, d, a)) || (s4 === 0 && on(c, d, b))
  );
}

/** Pairs of edges that cross or touch although they are not neighbours: empty for a simple ring. */
export function selfCrossings(ring: Ring): (readonly [number, number])[] {
  const e = edges(ring);
  const found: (readonly [number, number])[] = [];
  for (let i = 0; i < e.length; i++)
    for (let j = i + 2; j < e.length; j++) {
      if (i === 0 && j === e.length - 1) continue;
      if (segmentsMeet(e[i]!.from, e[i]!.to, e[j]!.from, e[j]!.to)) found.push([i, j]);
    }
  return found;
}

/** Least distance of two closed regions, with the closest points; 0 when they overlap or one holds the other. */
export function ringDistance(a: Ring, b: Ring): { readonly distance: number; readonly a: Vec2; readonly b: Vec2 } {
  if (contains(a, b[0]!)) return { distance: 0, a: b[0]!, b: b[0]! };
  if (contains(b, a[0]!)) return { distance: 0, a: a[0]!, b: a[0]! };
  return boundaryDistance(a, b);
}

/** Least distance of two boundaries, with the closest points; 0 when they cross. */
export function boundaryDistance(a: Ring, b: Ring): { readonly distance: number; readonly a: Vec2; readonly b: Vec2 } {
  let best = { distance: Number.POSITIVE_INFINITY, a: a[0]!, b: b[0]! };
  const consider = (p: Vec2, q: Vec2) => {
    const distance = distance2(p, q);
    if (distance < best.distance) best = { distance, a: p, b: q };
  };
  for (const ea of edges(a))
    for (const eb of edges(b)) {
      if (segmentsMeet(ea.from, ea.to, eb.from, eb.to)) return { distance: 0, a: ea.from, b: ea.from };
      consider(ea.from, closestOnSegment(ea.from, eb.from, eb.to));
      consider(ea.to, closestOnSegment(ea.to, eb.from, eb.to));
      consider(closestOnSegment(eb.from, ea.from, ea.to), eb.from);
      consider(closestOnSegment(eb.to, ea.from, ea.to), eb.to);
    }
  return best;
}

/** Corner points of a rectangle `length` by `width` about `centre`, its length turned by `turn` from east; counter-clockwise from its south-west. */
export function rectangle(centre: Vec2, length: number, width: number, turn = 0): Ring {
  const corners: Vec2[] = [
    [-length / 2, -width / 2],
    [length / 2, -width / 2],
    [length / 2, width / 2],
    [-length / 2, width / 2],
  ];
  return corners.map((c) => add2(centre, turn2(c, turn)));
}

export interface Bounds {
  readonly min: Vec2;
  readonly max: Vec2;
}

export function bounds(points: readonly Vec2[]): Bounds {
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  return { min: [Math.min(...xs), Math.min(...ys)], max: [Math.max(...xs), Math.max(...ys)] };
}

/** Area-weighted middle of a ring. */
export function centroid(ring: Ring): Vec2 {
  let x = 0;
  let y = 0;
  let twice = 0;
  for (const { from, to } of edges(ring)) {
    const c = cross2(from, to);
    x += (from[0] + to[0]) * c;
    y += (from[1] + to[1]) * c;
    twice += c;
  }
  return [x / (3 * twice), y / (3 * twice)];
}
