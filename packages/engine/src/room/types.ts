import { type Edge, edges, type Ring } from '../floor/geometry/polygon.js';
import type { Vec2 } from '../floor/geometry/vec.js';

/** Something in the plan that a person cannot walk through: a ring, or a line of curtain without thickness. */
export interface Obstacle {
  readonly id: string;
  readonly outline: Ring;
  /** A line that does not return to its first point by itself; two points are always a line. */
  readonly open?: boolean;
}

export const isLine = (o: Obstacle): boolean => o.open === true || o.outline.length === 2;

/** The edges of a ring or the stretches of a line. */
export const sidesOfObstacle = (o: Obstacle): Edge[] => (isLine(o) ? edges(o.outline).slice(0, -1) : edges(o.outline));

/** A round column. */
export interface RoundObstacle {
  readonly id: string;
  readonly centre: Vec2;
  readonly radius: number;
}

/** The two closest points that make a width, and whose they are. */
export interface WidthPlace {
  readonly width: number;
  readonly a: string;
  readonly b: string;
  readonly from: Vec2;
  readonly to: Vec2;
}
