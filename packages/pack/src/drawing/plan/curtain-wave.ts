import type { Vec2 } from '@cloche/engine';

/** Points per wave: enough for a smooth line at the width of a pen. */
const perWave = 12;

export const pathLength = (points: readonly Vec2[]): number =>
  points.slice(1).reduce((sum, p, i) => sum + Math.hypot(p[0] - points[i]![0], p[1] - points[i]![1]), 0);

/** The part of a line between two distances from its start, with the corners between. */
export function stretchOf(points: readonly Vec2[], from: number, to: number): Vec2[] {
  const cut: Vec2[] = [];
  let start = 0;
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b] = [points[i]!, points[i + 1]!];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const at = (s: number): Vec2 => [a[0] + ((b[0] - a[0]) * s) / length, a[1] + ((b[1] - a[1]) * s) / length];
    const [low, high] = [Math.max(from - start, 0), Math.min(to - start, length)];
    if (length > 0 && low <= high) {
      if (cut.length === 0) cut.push(at(low));
      if (high > low) cut.push(at(high));
    }
    start += length;
  }
  return cut;
}

/** Place and left-hand normal at a distance along a line. */
function placeAt(points: readonly Vec2[], distance: number): { readonly at: Vec2; readonly normal: Vec2 } {
  let left = distance;
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b] = [points[i]!, points[i + 1]!];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length > 0 && (left <= length || i + 2 === points.length)) {
      const u: Vec2 = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
      return { at: [a[0] + u[0] * left, a[1] + u[1] * left], normal: [-u[1], u[0]] };
    }
    left -= length;
  }
  return { at: points[0]!, normal: [0, 1] };
}

function waved(points: readonly Vec2[], length: number, waves: number, amplitude: number): Vec2[] {
  const count = waves * perWave;
  return Array.from({ length: count + 1 }, (_, i): Vec2 => {
    const { at, normal } = placeAt(points, (length * i) / count);
    const swing = amplitude * Math.sin((2 * Math.PI * i) / perWave);
    return [at[0] + normal[0] * swing, at[1] + normal[1] * swing];
  });
}

/**
 * The line of a curtain as a wave whose drawn length is the width of the cloth.
 *
 *     length of the wave = fullness * length of the track
 * @param points   the track line, any unit [mm]
 * @param fullness cloth width divided by track length, 1 and above [-]
 * @param pitch    wave length wanted along the track [mm]
 * @returns        points of the wave; the bare line at fullness 1 or below, where there is nothing to fold [mm]
 * Source: geometry; the sine is our choice.
 */
export function curtainWave(points: readonly Vec2[], fullness: number, pitch: number): Vec2[] {
  const length = pathLength(points);
  if (length === 0 || fullness <= 1) return [...points];
  const waves = Math.max(1, Math.round(length / pitch));
  let low = 0;
  let high = pitch * fullness;
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (pathLength(waved(points, length, waves, middle)) < fullness * length) low = middle;
    else high = middle;
  }
  return waved(points, length, waves, (low + high) / 2);
}
