import type { Vec2 } from '../floor/geometry/vec.js';
import { type Outcome, ok, type Problem, refuse } from '../floor/problem.js';
import { needFinite, needPositive } from './arguments.js';
import { frameMessages } from './messages.js';
import { standardGravity } from './tables.js';

export interface FootLoads {
  /** Upward reaction of each foot, in their order; negative means lift-off [N]. */
  readonly reactions: readonly number[];
  readonly largest: number;
  /** No foot lifts off. */
  readonly stable: boolean;
  /** Mass that each foot is chosen for when one does not touch: total over n-1 [kg]. */
  readonly massWithoutOne: number;
}

/** Feet whose base is thinner than this share of its length stand in one line. */
const inLine = 1e-9;

interface Spread {
  readonly centre: Vec2;
  readonly sxx: number;
  readonly syy: number;
  readonly sxy: number;
}

function spreadOf(feet: readonly Vec2[]): Spread {
  const n = feet.length;
  const centre: Vec2 = [feet.reduce((s, p) => s + p[0], 0) / n, feet.reduce((s, p) => s + p[1], 0) / n];
  const [xs, ys] = [feet.map((p) => p[0] - centre[0]), feet.map((p) => p[1] - centre[1])];
  return {
    centre,
    sxx: xs.reduce((s, x) => s + x * x, 0),
    syy: ys.reduce((s, y) => s + y * y, 0),
    sxy: xs.reduce((s, x, i) => s + x * ys[i]!, 0),
  };
}

/** The plane over the feet: load on a foot = base + alongX (x - centre x) + alongY (y - centre y). */
export interface FootPlane {
  readonly centre: Vec2;
  readonly base: number;
  readonly alongX: number;
  readonly alongY: number;
}

function footProblems(feet: readonly Vec2[], mass: number, centreOfMass: Vec2): Problem[] {
  const problems = [
    ...needPositive({ mass: [mass, 'kg'] }),
    ...needFinite({ 'centreOfMass x': centreOfMass[0], 'centreOfMass y': centreOfMass[1] }),
    ...feet.flatMap((p, i) => needFinite({ [`foot ${i + 1} x`]: p[0], [`foot ${i + 1} y`]: p[1] })),
  ];
  if (feet.length < 3) problems.push(frameMessages.tooFewFeet(feet.length));
  if (problems.length > 0) return problems;
  const { sxx, syy, sxy } = spreadOf(feet);
  return sxx * syy - sxy * sxy <= inLine * (sxx + syy) ** 2 ? [frameMessages.feetInLine()] : [];
}

/**
 * The plane that the foot loads of a rigid frame follow.
 *
 *     a = W (ex Syy - ey Sxy)/D,  b = W (ey Sxx - ex Sxy)/D,  D = Sxx Syy - Sxy^2, e from the middle of the feet
 * @param feet plan points [m]
 * @param mass [kg]
 * @param centreOfMass plan point [m]
 * @returns plane in N and N/m, or the problems of `footLoads`
 * Source: statics of a rigid frame on equal springs (derived).
 */
export function footPlane(feet: readonly Vec2[], mass: number, centreOfMass: Vec2): Outcome<FootPlane> {
  const problems = footProblems(feet, mass, centreOfMass);
  if (problems.length > 0) return refuse(problems);
  const { centre, sxx, syy, sxy } = spreadOf(feet);
  const weight = mass * standardGravity;
  const [ex, ey] = [centreOfMass[0] - centre[0], centreOfMass[1] - centre[1]];
  const determinant = sxx * syy - sxy * sxy;
  return ok({
    centre,
    base: weight / feet.length,
    alongX: (weight * (ex * syy - ey * sxy)) / determinant,
    alongY: (weight * (ey * sxx - ex * sxy)) / determinant,
  });
}

/**
 * Loads of a rigid frame on its feet, and what each must carry on an uneven floor.
 *
 *     R = W/n + a x + b y (see `footPlane`);  with one foot off the floor each is chosen for m/(n-1)
 * Exact for three feet, and for more on equal springs. The n-1 rule is a rule of the trade: with four feet one pair of
 * opposite feet can carry nearly all. Feet on a floor that may give way hurt: facilities confirm what the floor bears.
 * @param feet plan points [m]
 * @param mass of all that stands on them [kg]
 * @param centreOfMass plan point [m]
 * @returns loads, or `frame/not-positive`, `frame/not-a-number`, `frame/too-few-feet`, `frame/feet-in-line`
 * Source: statics of a rigid frame on equal springs (derived); total mass over n-1 (common practice).
 */
export function footLoads(feet: readonly Vec2[], mass: number, centreOfMass: Vec2): Outcome<FootLoads> {
  const plane = footPlane(feet, mass, centreOfMass);
  if (!plane.ok) return plane;
  const { centre, base, alongX, alongY } = plane.value;
  const reactions = feet.map((p) => base + alongX * (p[0] - centre[0]) + alongY * (p[1] - centre[1]));
  // A foot that carries nothing by round-off still stands.
  const stable = reactions.every((r) => r > -1e-9 * base);
  return ok({ reactions, largest: Math.max(...reactions), stable, massWithoutOne: mass / (feet.length - 1) });
}

/** One foot taken away: what the others carry. */
export interface MissingFoot {
  readonly missing: number;
  readonly loads: FootLoads;
}

/**
 * Foot loads with each foot in turn off the floor. With four feet this is the exact solution on three supports.
 * @param feet plan points of at least four feet [m]
 * @param mass [kg]
 * @param centreOfMass plan point [m]
 * @returns one entry a foot, except where the others stand in one line; or `frame/too-few-feet` and the problems of `footLoads`
 * Source: statics of a rigid frame (derived).
 */
export function footLoadsWithoutOne(
  feet: readonly Vec2[],
  mass: number,
  centreOfMass: Vec2,
): Outcome<readonly MissingFoot[]> {
  if (feet.length < 4) return refuse([frameMessages.tooFewFeet(feet.length - 1)]);
  const all = footLoads(feet, mass, centreOfMass);
  if (!all.ok) return all;
  return ok(
    feet.flatMap((_, missing) => {
      const loads = footLoads(
        feet.filter((__, i) => i !== missing),
        mass,
        centreOfMass,
      );
      return loads.ok ? [{ missing, loads: loads.value }] : [];
    }),
  );
}
