import { area, difference, EndType, FillRule, inflatePaths, JoinType, type Paths64, union } from 'clipper2-ts';
import { counterClockwise, type Ring, contains as ringHolds } from '../floor/geometry/polygon.js';
import type { Vec2 } from '../floor/geometry/vec.js';
import { isLine, type Obstacle, type RoundObstacle } from './types.js';

/** The geometry library counts in whole numbers: micrometres. */
const perMetre = 1e6;
/** How far the chords of an arc may lie inside it [m]. */
const arcTolerance = 1e-4;

const path = (ring: Ring) => ring.map((p) => ({ x: Math.round(p[0] * perMetre), y: Math.round(p[1] * perMetre) }));
const ringOf = (points: readonly { readonly x: number; readonly y: number }[]): Ring =>
  points.map((p): Vec2 => [p.x / perMetre, p.y / perMetre]);

const grow = (paths: Paths64, distance: number, end: EndType, tolerance = arcTolerance): Paths64 =>
  inflatePaths(paths, distance * perMetre, JoinType.Round, end, 2, tolerance * perMetre);

/** A circle as a ring around it: no chord cuts into it. */
function around(centre: Vec2, radius: number): Ring {
  const parts = Math.max(16, Math.ceil(Math.PI / Math.acos(Math.max(0, 1 - arcTolerance / radius))));
  const outer = radius / Math.cos(Math.PI / parts);
  return Array.from({ length: parts }, (_, i): Vec2 => {
    const angle = (2 * Math.PI * i) / parts;
    return [centre[0] + outer * Math.cos(angle), centre[1] + outer * Math.sin(angle)];
  });
}

/** One piece of floor in which the centre of a disc can move about. */
export interface FreePiece {
  readonly outline: Ring;
  readonly holes: readonly Ring[];
}

/**
 * Where the centre of a disc may lie: at least its radius from every wall and obstacle, with round corners.
 *
 *     free = room eroded by r, less every obstacle grown by r
 * Arcs are made of chords up to 0.1 mm inside the true arc; obstacles are grown by that much more, so that none comes out too
 * small.
 * @param room      inside of the walls [m]
 * @param obstacles rings, or lines for curtains [m]
 * @param columns   round obstacles [m]
 * @param radius    of the disc, above 0 [m]
 * Source: Minkowski sum with a disc (derived).
 */
export function freePieces(
  room: Ring,
  obstacles: readonly Obstacle[],
  columns: readonly RoundObstacle[],
  radius: number,
): readonly FreePiece[] {
  const eroded = grow([path(counterClockwise(room))], -(radius + arcTolerance), EndType.Polygon);
  const solid = obstacles.filter((o) => !isLine(o)).map((o) => path(counterClockwise(o.outline)));
  const lines = obstacles.filter(isLine).map((o) => path(o.outline));
  const grown = [
    ...grow(union(solid, FillRule.NonZero), radius + arcTolerance, EndType.Polygon),
    ...(lines.length > 0 ? grow(lines, radius + arcTolerance, EndType.Round) : []),
    ...columns.map((c) => path(around(c.centre, c.radius + radius))),
  ];
  const free = grown.length > 0 ? difference(eroded, union(grown, FillRule.NonZero), FillRule.NonZero) : eroded;
  const outlines = free.filter((p) => area(p) > 0).map(ringOf);
  const holes = free.filter((p) => area(p) < 0).map(ringOf);
  return outlines.map((outline) => ({ outline, holes: holes.filter((h) => ringHolds(outline, h[0]!)) }));
}

export const pieceHolds = (piece: FreePiece, p: Vec2): boolean =>
  ringHolds(piece.outline, p) && !piece.holes.some((h) => ringHolds(h, p, 0));

/**
 * Area within a distance of a shape, or of what is left of it at a distance from its edges and holes; round corners.
 *
 *     convex, grown:  A + P r + pi r^2          right-angled, shrunk:  A - P r + c r^2 - f (pi/4) r^2
 * @param outline  the shape [m]
 * @param holes    holes in it [m]
 * @param distance above zero grows, below zero shrinks [m]
 * @returns        area [m2]; chords of arcs lie up to 0.01 mm inside the true arc
 * Source: Minkowski sum with a disc; Steiner formula (derived).
 */
export function offsetArea(outline: Ring, holes: readonly Ring[], distance: number): number {
  const outer = path(counterClockwise(outline));
  const inner = holes.map((h) => path([...counterClockwise(h)].reverse()));
  const paths = grow([outer, ...inner], distance, EndType.Polygon, arcTolerance / 10);
  return paths.reduce((sum, p) => sum + area(p), 0) / perMetre ** 2;
}
