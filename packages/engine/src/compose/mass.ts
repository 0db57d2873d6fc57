import type { Shape } from '../design/types.js';
import { add3, between3, scale3, type Vec3 } from '../floor/geometry/vec.js';

/** Middle of a shape: where its mass is taken to act. */
export const centreOf = (shape: Shape): Vec3 => {
  switch (shape.shape) {
    case 'bar':
      return between3(shape.from, shape.to, 0.5);
    case 'bend':
      return shape.centre;
    case 'box':
      return shape.centre;
    case 'plate':
      return scale3(
        shape.corners.reduce<Vec3>((sum, c) => add3(sum, c), [0, 0, 0]),
        1 / shape.corners.length,
      );
    case 'cloth': {
      const n = shape.line.length;
      const x = shape.line.reduce((sum, p) => sum + p[0], 0) / n;
      const y = shape.line.reduce((sum, p) => sum + p[1], 0) / n;
      return [x, y, (shape.top + shape.bottom) / 2];
    }
    case 'loose':
      return shape.at;
  }
};

/** Mass and centre of mass of some parts [kg, m]. */
export function centreOfMass(parts: readonly { readonly shape: Shape; readonly mass: number }[]): {
  readonly mass: number;
  readonly centre: Vec3;
} {
  const mass = parts.reduce((sum, p) => sum + p.mass, 0);
  const moment = parts.reduce<Vec3>((sum, p) => add3(sum, scale3(centreOf(p.shape), p.mass)), [0, 0, 0]);
  return { mass, centre: mass > 0 ? scale3(moment, 1 / mass) : [0, 0, 0] };
}
