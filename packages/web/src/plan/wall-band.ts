import type { Ring, Vec2 } from '../engine/contract.js';

/** Walls are measured on their inside only; the drawn thickness is a sign. */
export const wallThickness = 0.15;

/** Unit vector along an edge and its normal out of a counter-clockwise ring. */
const along = (a: Vec2, b: Vec2): Vec2 => {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  return [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
};
export const outward = (a: Vec2, b: Vec2): Vec2 => {
  const [x, y] = along(a, b);
  return [y, -x];
};

/** The ring moved outward by a distance, corners mitred (a sharp corner at most three times as far). */
export function offsetRing(ring: Ring, distance: number): Ring {
  return ring.map((corner, i) => {
    const before = outward(ring[(i + ring.length - 1) % ring.length]!, corner);
    const after = outward(corner, ring[(i + 1) % ring.length]!);
    const sum: Vec2 = [before[0] + after[0], before[1] + after[1]];
    const size = Math.hypot(...sum);
    if (size < 1e-6) return [corner[0] + before[0] * distance, corner[1] + before[1] * distance];
    const reach = Math.min(3, 2 / size) * distance;
    return [corner[0] + (sum[0] / size) * reach, corner[1] + (sum[1] / size) * reach];
  });
}

export const counterClockwise = (ring: Ring): Ring => (turning(ring) < 0 ? [...ring].reverse() : ring);

const turning = (ring: Ring): number =>
  ring.reduce((sum, a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    return sum + a[0] * b[1] - a[1] * b[0];
  }, 0);
