import { type CalculationStep, fromStep, val } from '../floor/calculation.js';
import type { Vec2 } from '../floor/geometry/vec.js';
import type { FootPlane } from './foot-loads.js';
import { frameSources, gravitySource, standardGravity } from './tables.js';

/** The weight as a step. Source: ISO 80000-3 (from memory). */
export const weightStep = (mass: number, origin: string): CalculationStep => ({
  symbol: 'W',
  name: 'weight',
  expression: 'm*g',
  values: { m: val(mass, 'kg', 'mass', origin), g: val(standardGravity, 'm/s2', 'free fall') },
  result: mass * standardGravity,
  unit: 'N',
  source: gravitySource,
});

/** The steps of one foot's load in `footLoads`. Source: statics of a rigid frame on equal springs (derived). */
export function footLoadSteps(
  plane: FootPlane,
  count: number,
  mass: number,
  foot: Vec2,
  origin: string,
): readonly CalculationStep[] {
  const weight = weightStep(mass, origin);
  const [x, y] = [foot[0] - plane.centre[0], foot[1] - plane.centre[1]];
  return [
    weight,
    {
      symbol: 'R',
      name: 'load on the most loaded foot',
      expression: 'W/n + a*x + b*y',
      values: {
        W: fromStep(weight),
        n: val(count, '1', 'feet', origin),
        a: val(plane.alongX, 'N/m', 'slope of the load plane eastward', 'plane fit over the feet'),
        b: val(plane.alongY, 'N/m', 'slope of the load plane northward', 'plane fit over the feet'),
        x: val(x, 'm', 'foot east of the middle of the feet', origin),
        y: val(y, 'm', 'foot north of the middle of the feet', origin),
      },
      result: plane.base + plane.alongX * x + plane.alongY * y,
      unit: 'N',
      source: frameSources.planeFit,
    },
  ];
}

/** The steps of the n-1 rule. Source: total mass over n-1 (common practice). */
export function sharedLoadSteps(
  mass: number,
  feet: number,
  missing: number,
  origin: string,
): readonly CalculationStep[] {
  const weight = weightStep(mass, origin);
  return [
    weight,
    {
      symbol: 'R',
      name: 'load that each foot is chosen for',
      expression: 'W/(n - k)',
      values: {
        W: fromStep(weight),
        n: val(feet, '1', 'feet', origin),
        k: val(missing, '1', 'feet that do not touch', 'rule frame.feet-carrying'),
      },
      result: weight.result / (feet - missing),
      unit: 'N',
      source: frameSources.feetMissing,
    },
  ];
}
