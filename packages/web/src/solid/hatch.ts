import type { Vec2 } from '../engine/contract.js';

/**
 * Parallel lines over a convex face, at 45 degrees, on one grid for the whole plane so that neighbours share it.
 * @param face    corners in order [m]
 * @param spacing distance between lines [m]
 * @param rising  lines rise to the right, or fall
 */
export function hatchLines(face: readonly Vec2[], spacing: number, rising = true): readonly (readonly [Vec2, Vec2])[] {
  const s = Math.SQRT1_2;
  const normal: Vec2 = rising ? [-s, s] : [s, s];
  const far = face.map((p) => p[0] * normal[0] + p[1] * normal[1]);
  const [first, last] = [Math.ceil(Math.min(...far) / spacing), Math.floor(Math.max(...far) / spacing)];
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, k) => (first + k) * spacing).flatMap((level) => {
    const ends = face.flatMap((a, i): Vec2[] => {
      const j = (i + 1) % face.length;
      const [da, db] = [far[i]! - level, far[j]! - level];
      if (da < 0 === db < 0) return [];
      const t = da / (da - db);
      const b = face[j]!;
      return [[a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]];
    });
    return ends.length === 2 ? [[ends[0]!, ends[1]!] as const] : [];
  });
}

/** Shortest way across a convex face: from its longest edge to the corner farthest from it [m]. */
export function narrowest(face: readonly Vec2[]): number {
  const widths = face.flatMap((a, i) => {
    const b = face[(i + 1) % face.length]!;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length < 1e-9) return [];
    return [
      Math.max(...face.map((c) => Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) / length)),
    ];
  });
  return widths.length === 0 ? 0 : Math.min(...widths);
}
