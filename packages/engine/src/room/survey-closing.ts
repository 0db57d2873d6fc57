import type { Ring } from '../floor/geometry/polygon.js';
import { distance2 } from '../floor/geometry/vec.js';

/**
 * How far a diagonal as measured differs from the one that the entered corners give.
 *
 *     error = measured - sqrt((x2 - x1)^2 + (y2 - y1)^2)
 * @param outline  corners of the room [m]
 * @param diagonal corner numbers and the length measured between them [m]
 * @returns        length from the corners and error [m], or null when a corner does not exist
 * Source: plan geometry (derived).
 */
export function diagonalError(
  outline: Ring,
  diagonal: { readonly from: number; readonly to: number; readonly measured: number },
): { readonly fromCorners: number; readonly error: number } | null {
  const a = outline[diagonal.from];
  const b = outline[diagonal.to];
  if (!a || !b) return null;
  const fromCorners = distance2(a, b);
  return { fromCorners, error: diagonal.measured - fromCorners };
}
