import type { Ring } from '../floor/geometry/polygon.js';
import type { Vec2 } from '../floor/geometry/vec.js';

/** Something in the plan that a person cannot walk through: a ring, or two points for a curtain without thickness. */
export interface Obstacle {
  readonly id: string;
  readonly outline: Ring;
}

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
