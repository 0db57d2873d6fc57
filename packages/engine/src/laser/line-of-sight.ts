import { step, val } from '../floor/calculation.js';
import { type Outcome, ok, positive, refuse } from '../floor/problem.js';
import { commonPractice, geometrySource } from '../floor/source.js';
import { behindBarrier, negative } from './messages.js';
import type { Worked } from './types.js';

export interface RayOverBarrier extends Worked {
  /** Height of the straight ray where it passes the barrier [m]. */
  readonly rayHeight: number;
  /** The ray passes above the top: the source is seen. */
  readonly visible: boolean;
}

/**
 * Whether an eye sees a source over the top of a barrier.
 *
 *     h = hs + (he - hs) xc / xe; seen when h > H
 * Straight rays in one upright plane; a bright ceiling scatters a second time and is another question.
 * @param args source height hs, eye height he, horizontal distances to barrier xc and eye xe, top of the barrier H [m]
 * @returns    height of the ray [m] and whether it passes, or `laser/height`, `laser/distance`, `laser/eye-before-barrier`
 * Source: geometry (derived).
 */
export function rayOverBarrier(args: {
  readonly sourceHeight: number;
  readonly eyeHeight: number;
  readonly barrierDistance: number;
  readonly eyeDistance: number;
  readonly barrierTop: number;
}): Outcome<RayOverBarrier> {
  const { sourceHeight: hs, eyeHeight: he, barrierDistance: xc, eyeDistance: xe, barrierTop: top } = args;
  const problems = [
    ...positive('laser/height', 'sourceHeight', hs, 'm'),
    ...positive('laser/height', 'eyeHeight', he, 'm'),
    ...positive('laser/height', 'barrierTop', top, 'm'),
    ...positive('laser/distance', 'barrierDistance', xc, 'm'),
    ...positive('laser/distance', 'eyeDistance', xe, 'm'),
  ];
  if (problems.length === 0 && xe <= xc) problems.push(behindBarrier());
  if (problems.length > 0) return refuse(problems);
  const rayHeight = hs + ((he - hs) * xc) / xe;
  const values = {
    h_s: val(hs, 'm', 'height of the source'),
    h_e: val(he, 'm', 'height of the eye'),
    x_c: val(xc, 'm', 'distance of the barrier'),
    x_e: val(xe, 'm', 'distance of the eye'),
  };
  const s = step(
    'h',
    'height of the ray at the barrier',
    'h_s + (h_e - h_s) * x_c / x_e',
    values,
    rayHeight,
    'm',
    geometrySource,
  );
  return ok({ rayHeight, visible: rayHeight > top, steps: [s] });
}

/**
 * Angle from the normal beyond which a ray slips between two overlapping panels on planes a distance apart.
 *
 *     angle = atan(w / s)
 * @param overlap      w [m]
 * @param planeSpacing s [m]
 * @returns            angle [rad], or `laser/negative`, `laser/plane-spacing`
 * Source: geometry (derived).
 */
export function openRayAngle(overlap: number, planeSpacing: number): Outcome<Worked & { readonly angle: number }> {
  const problems = positive('laser/plane-spacing', 'planeSpacing', planeSpacing, 'm');
  if (!(overlap >= 0)) problems.push(negative('overlap', overlap, 'm'));
  if (problems.length > 0) return refuse(problems);
  const angle = Math.atan(overlap / planeSpacing);
  const values = {
    w: val(overlap * 1000, 'mm', 'overlap'),
    s: val(planeSpacing * 1000, 'mm', 'distance between the planes'),
  };
  const s = step(
    'beta',
    'angle of the first open ray from the normal',
    'atan(w / s)',
    values,
    angle,
    'rad',
    geometrySource,
  );
  return ok({ angle, steps: [s] });
}

/**
 * Angle by which a steady draught swings a free-hanging curtain out of the vertical.
 *
 *     tan(delta) = (rho / 2) v^2 / (m g), with rho / 2 = 0.6 kg/m3 and drag factor 1
 * No hem weight, no side restraint: an estimate for choosing weights and contacts.
 * @param args air speed v [m/s], mass per area m [kg/m2], acceleration g [m/s2]
 * @returns    angle [rad], or `laser/negative`, `laser/mass-per-area`, `laser/gravity`
 * Source: steady wind pressure (derived); drag factor 1 is common practice.
 */
export function curtainSwingAngle(args: {
  readonly airSpeed: number;
  readonly massPerArea: number;
  readonly gravity?: number;
}): Outcome<Worked & { readonly angle: number }> {
  const { airSpeed: v, massPerArea: m, gravity: g = 9.81 } = args;
  const problems = [
    ...positive('laser/mass-per-area', 'massPerArea', m, 'kg/m2'),
    ...positive('laser/gravity', 'gravity', g, 'm/s2'),
  ];
  if (!(v >= 0)) problems.push(negative('airSpeed', v, 'm/s'));
  if (problems.length > 0) return refuse(problems);
  const angle = Math.atan((0.6 * v ** 2) / (m * g));
  const values = {
    v: val(v, 'm/s', 'air speed'),
    m_a: val(m, 'kg/m2', 'mass per area'),
    g: val(g, 'm/s2', 'acceleration of free fall'),
  };
  const s = step(
    'delta',
    'swing from the vertical',
    'atan(0.6 * v^2 / (m_a * g))',
    values,
    angle,
    'rad',
    commonPractice,
  );
  return ok({ angle, steps: [s] });
}
