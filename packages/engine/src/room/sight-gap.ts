import type { Vec2 } from '../floor/geometry/vec.js';
import { type Outcome, ok, positive, refuse } from '../floor/problem.js';
import { emptyGap, notBetween } from './messages.js';

/** A point source, a barrier at one x with a gap in y, all in plan [m]. */
export interface PlanGap {
  readonly source: Vec2;
  readonly barrierX: number;
  readonly gap: readonly [number, number];
}

/**
 * The stretch of a screen that has a direct line of sight to a point source through a gap.
 *
 *     y = ys + (yg - ys) (X - xs)/(xb - xs)        for both ends yg of the gap, screen parallel to the barrier
 * Direct sight in plan only: no scatter, no reflection. It never means safe; the laser safety officer decides.
 * @param gap     source, barrier and gap [m]
 * @param screenX where the screen stands, behind the barrier as seen from the source [m]
 * @returns       lower and upper end [m], or `room/gap-order`, `room/gap-empty`
 * Source: similar triangles (derived).
 */
export function seenInterval(gap: PlanGap, screenX: number): Outcome<readonly [number, number]> {
  const near = gap.barrierX - gap.source[0];
  const far = screenX - gap.source[0];
  const problems = [];
  if (!(near !== 0 && far / near >= 1)) problems.push(notBetween());
  if (!(gap.gap[1] > gap.gap[0])) problems.push(emptyGap());
  if (problems.length > 0) return refuse(problems);
  const at = (y: number) => gap.source[1] + ((y - gap.source[1]) * far) / near;
  return ok([at(gap.gap[0]), at(gap.gap[1])]);
}

/**
 * Whether a point has a direct line of sight to the source; a ray that grazes the end of the gap counts as seen. Points on the
 * source's side of the barrier are seen.
 * @param gap source, barrier and gap [m]
 * @param p   the point [m]
 * Source: segment crossing (derived).
 */
export function seenThroughGap(gap: PlanGap, p: Vec2): boolean {
  const near = gap.barrierX - gap.source[0];
  const far = p[0] - gap.source[0];
  if (near === 0 || far / near < 1) return true;
  const crossing = gap.source[1] + ((p[1] - gap.source[1]) * near) / far;
  return crossing >= gap.gap[0] - 1e-12 && crossing <= gap.gap[1] + 1e-12;
}

/** A strip that shines or scatters, parallel to barrier and screen and centred on the gap [m]. */
export interface StripSource {
  readonly sourceWidth: number;
  readonly sourceToGap: number;
  readonly gapWidth: number;
  readonly gapToScreen: number;
}

/**
 * Widths on the screen that some point, and that every point of a strip source sees through a gap.
 *
 *     some = g + (g + w) D/d            every = max(0, g - (w - g) D/d)
 * w source width, d source to gap, g gap width, D gap to screen, all [m].
 * @param strip the four lengths [m]
 * @returns     both widths [m], or `room/strip-source` for a length that is not above zero
 * Source: similar triangles (derived).
 */
export function stripSourceWidths(strip: StripSource): Outcome<{ readonly some: number; readonly every: number }> {
  const problems = (['sourceWidth', 'sourceToGap', 'gapWidth', 'gapToScreen'] as const).flatMap((name) =>
    positive('room/strip-source', name, strip[name], 'm'),
  );
  if (problems.length > 0) return refuse(problems);
  const { sourceWidth: w, sourceToGap: d, gapWidth: g, gapToScreen: D } = strip;
  return ok({ some: g + ((g + w) * D) / d, every: Math.max(0, g - ((w - g) * D) / d) });
}
