import { type Outcome, ok, refuse } from '../floor/problem.js';
import { needPositive } from './arguments.js';
import { frameMessages } from './messages.js';
import type { SymmetricSection } from './types.js';

/**
 * Ellipse, solid or with a similar hole.
 *
 *     A = pi a b (1 - q^2),  Ix = pi a b^3 / 4 (1 - q^4),  J = pi a^3 b^3 / (a^2 + b^2) (1 - q^4)
 * @param halfWidth a, half axis along x [m]
 * @param halfHeight b, half axis along y [m]
 * @param innerOverOuter q, size of the hole over that of the outline, 0 to below 1 [-]
 * @returns properties, or `frame/not-positive`, `frame/hollow-ratio`
 * Source: Roark's Formulas for Stress and Strain, torsion table (from memory).
 */
export function ellipseSection(halfWidth: number, halfHeight: number, innerOverOuter = 0): Outcome<SymmetricSection> {
  const problems = needPositive({ halfWidth: [halfWidth, 'm'], halfHeight: [halfHeight, 'm'] });
  if (!(innerOverOuter >= 0 && innerOverOuter < 1)) problems.push(frameMessages.hollowRatio(innerOverOuter));
  if (problems.length > 0) return refuse(problems);
  const [a, b, wall] = [halfWidth, halfHeight, 1 - innerOverOuter ** 4];
  const ix = ((Math.PI * a * b ** 3) / 4) * wall;
  const iy = ((Math.PI * a ** 3 * b) / 4) * wall;
  return ok({
    area: Math.PI * a * b * (1 - innerOverOuter ** 2),
    ix,
    iy,
    wx: ix / b,
    wy: iy / a,
    torsionConstant: ((Math.PI * a ** 3 * b ** 3) / (a * a + b * b)) * wall,
  });
}

/**
 * Circular hollow section, exact.
 *
 *     I = pi/64 (D^4 - d^4),  J = 2 I,  W = 2 I / D,  Ct = 2 W
 * @param diameter D, outside [m]
 * @param thickness wall [m]
 * @returns properties with the torsion modulus Ct, or `frame/not-positive`, `frame/wall-too-thick`
 * Source: EN 10210-2, annex on sectional properties, circular hollow sections (from memory).
 */
export function circularHollowSection(
  diameter: number,
  thickness: number,
): Outcome<SymmetricSection & { readonly torsionModulus: number }> {
  const problems = needPositive({ diameter: [diameter, 'm'], thickness: [thickness, 'm'] });
  if (problems.length === 0 && 2 * thickness >= diameter)
    problems.push(frameMessages.wallTooThick(thickness, diameter));
  if (problems.length > 0) return refuse(problems);
  const inner = diameter - 2 * thickness;
  const i = (Math.PI / 64) * (diameter ** 4 - inner ** 4);
  const w = (2 * i) / diameter;
  return ok({
    area: (Math.PI / 4) * (diameter ** 2 - inner ** 2),
    ix: i,
    iy: i,
    wx: w,
    wy: w,
    torsionConstant: 2 * i,
    torsionModulus: 2 * w,
  });
}
