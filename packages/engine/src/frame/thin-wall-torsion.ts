import { type Outcome, ok, type Problem, refuse } from '../floor/problem.js';
import { needPositive } from './arguments.js';
import { frameMessages } from './messages.js';

/** A straight wall of an open thin section [m]. */
export interface ThinWall {
  readonly length: number;
  readonly thickness: number;
}

export interface ThinWallTorsion {
  /** J [m4] */
  readonly constant: number;
  /** Largest shear stress = torque / modulus [m3]. */
  readonly modulus: number;
}

/**
 * Torsion of an open thin-walled section, as slot lips and angles.
 *
 *     J = 1/3 sum b t^3;  largest stress = T t_max / J
 * Good for walls about ten times longer than thick; ends and junctions are left out.
 * @param walls each with length and thickness [m]
 * @returns J and modulus, or `frame/not-positive`
 * Source: Roark's Formulas for Stress and Strain (from memory).
 */
export function openWallTorsion(walls: readonly ThinWall[]): Outcome<ThinWallTorsion> {
  const problems: Problem[] = [
    ...needPositive({ walls: [walls.length, '1'] }),
    ...walls.flatMap((w) => needPositive({ length: [w.length, 'm'], thickness: [w.thickness, 'm'] })),
  ];
  if (problems.length > 0) return refuse(problems);
  const constant = walls.reduce((sum, w) => sum + (w.length * w.thickness ** 3) / 3, 0);
  return ok({ constant, modulus: constant / Math.max(...walls.map((w) => w.thickness)) });
}

/**
 * Torsion of a thin circular tube by thin-wall theory.
 *
 *     J = 2 pi r^3 t,  stress = T / (2 pi r^2 t), r to the middle of the wall
 * @param diameter outside [m]
 * @param thickness wall [m]
 * @returns J and modulus, or `frame/not-positive`, `frame/wall-too-thick`
 * Source: Bredt's formulas (derived).
 */
export function tubeThinWallTorsion(diameter: number, thickness: number): Outcome<ThinWallTorsion> {
  const problems = needPositive({ diameter: [diameter, 'm'], thickness: [thickness, 'm'] });
  if (problems.length === 0 && 2 * thickness >= diameter)
    problems.push(frameMessages.wallTooThick(thickness, diameter));
  if (problems.length > 0) return refuse(problems);
  const r = (diameter - thickness) / 2;
  return ok({ constant: 2 * Math.PI * r ** 3 * thickness, modulus: 2 * Math.PI * r ** 2 * thickness });
}

export interface ThinBox {
  /** Outside, along the flanges [m]. */
  readonly width: number;
  /** Outside, along the webs [m]. */
  readonly height: number;
  readonly flange: number;
  readonly web: number;
}

export interface BoxTorsion {
  readonly constant: number;
  /** Shear stress in the flanges and in the webs for one newton metre [Pa]. */
  readonly flangeStress: number;
  readonly webStress: number;
}

/**
 * Torsion of a single-cell box by thin-wall theory.
 *
 *     J = 4 Am^2 / closed sum of (length / thickness);  stress = T / (2 Am t), Am inside the middle line of the wall
 * @param box outside sizes and walls [m]
 * @returns J and stresses for 1 N m, or `frame/not-positive`, `frame/wall-too-thick`
 * Source: Bredt's formulas (derived).
 */
export function boxThinWallTorsion(box: ThinBox): Outcome<BoxTorsion> {
  const problems = needPositive({
    width: [box.width, 'm'],
    height: [box.height, 'm'],
    flange: [box.flange, 'm'],
    web: [box.web, 'm'],
  });
  if (problems.length === 0 && 2 * box.web >= box.width) problems.push(frameMessages.wallTooThick(box.web, box.width));
  if (problems.length === 0 && 2 * box.flange >= box.height)
    problems.push(frameMessages.wallTooThick(box.flange, box.height));
  if (problems.length > 0) return refuse(problems);
  const b = box.width - box.web;
  const h = box.height - box.flange;
  const inside = b * h;
  return ok({
    constant: (4 * inside ** 2) / ((2 * b) / box.flange + (2 * h) / box.web),
    flangeStress: 1 / (2 * inside * box.flange),
    webStress: 1 / (2 * inside * box.web),
  });
}
