import type { Vec2 } from '../engine/contract.js';

/**
 * A curtain as a wave along its track, whose length is about `fullness` times the line.
 *
 *     length ratio of a flat sine = 1 + (π a / λ)², so a = λ √(fullness - 1) / π
 * The first term of the series; a fullness above 1.6 is drawn as 1.6, since it is a sign and no measure.
 * @param line     points of the track [m]
 * @param fullness curtain width over track length [-]
 * @param period   λ of the wave [m]
 * @returns        points of the wave [m]
 * Source: arc length of the sine for small slopes, series expansion (derived).
 */
export function wave(line: readonly Vec2[], fullness: number, period = 0.16): Vec2[] {
  const amplitude = (period * Math.sqrt(Math.min(0.6, Math.max(0.01, fullness - 1)))) / Math.PI;
  const points: Vec2[] = [];
  let along = 0;
  for (let i = 0; i + 1 < line.length; i++) {
    const from = line[i]!;
    const to = line[i + 1]!;
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (length === 0) continue;
    const d: Vec2 = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
    const steps = Math.max(1, Math.ceil(length / (period / 8)));
    for (let k = 0; k < steps; k++) {
      const s = (k / steps) * length;
      const a = amplitude * Math.sin((2 * Math.PI * (along + s)) / period);
      points.push([from[0] + d[0] * s - d[1] * a, from[1] + d[1] * s + d[0] * a]);
    }
    along += length;
  }
  const last = line.at(-1);
  return last ? [...points, last] : points;
}
