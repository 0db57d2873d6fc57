import { area, EndType, FillRule, inflatePaths, intersect, JoinType } from 'clipper2-ts';
import { counterClockwise, type Ring } from '../floor/geometry/polygon.js';

const perMetre = 1e6;
/** What only touches does not overlap: shapes are taken this much smaller first [m], the snap of the plan. */
const touching = 1e-3;
/** Lines are given this width, so that what crosses has an area [m]. */
const lineWidth = 2e-4;

const path = (ring: Ring) => ring.map((p) => ({ x: Math.round(p[0] * perMetre), y: Math.round(p[1] * perMetre) }));

/** A shape in plan: a closed ring, or a line of track. */
export interface PlanShape {
  readonly points: Ring;
  readonly line: boolean;
}

const body = (shape: PlanShape) =>
  shape.line
    ? inflatePaths([path(shape.points)], (lineWidth / 2) * perMetre, JoinType.Miter, EndType.Butt)
    : inflatePaths([path(counterClockwise(shape.points))], -touching * perMetre, JoinType.Miter, EndType.Polygon);

/** Whether the upright boxes round two shapes meet: far cheaper than the shapes, and most are far apart. */
const boxesMeet = (a: Ring, b: Ring): boolean =>
  [0, 1].every((k) => {
    const along = (ring: Ring) => ring.map((p) => p[k]!);
    return (
      Math.min(...along(a)) - lineWidth <= Math.max(...along(b)) + lineWidth &&
      Math.min(...along(b)) - lineWidth <= Math.max(...along(a)) + lineWidth
    );
  });

/**
 * Area that two shapes share; 0 when they only touch (within 1 mm). The area of a line is that of a strip 0.2 mm wide, so only
 * whether it is zero means something there.
 * @param a one shape [m]
 * @param b the other [m]
 * @returns area [m2], of shapes 1 mm smaller all round
 * Source: intersection of polygons (derived).
 */
export function overlapArea(a: PlanShape, b: PlanShape): number {
  if (!boxesMeet(a.points, b.points)) return 0;
  const shared = intersect(body(a), body(b), FillRule.NonZero);
  return shared.reduce((sum, p) => sum + area(p), 0) / perMetre ** 2;
}
