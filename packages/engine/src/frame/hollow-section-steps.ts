import { type CalculationStep, fromStep, val } from '../floor/calculation.js';
import type { RectangularHollow, RectangularHollowSection } from './rectangular-hollow-section.js';
import { frameSources } from './tables.js';

const source = frameSources.hollow;

function torsionSteps(s: RectangularHollow, found: RectangularHollowSection, walls: Walls): CalculationStep[] {
  const rc: CalculationStep = {
    symbol: 'Rc',
    name: 'mean corner radius',
    expression: '(Ro + Ri)/2',
    values: walls.corners,
    result: (s.outerRadius + s.innerRadius) * 500,
    unit: 'mm',
    source,
  };
  const line: CalculationStep = {
    symbol: 'h',
    name: 'length of the middle line of the wall',
    expression: '2*((B - T) + (H - T)) - 2*Rc*(4 - pi)',
    values: { ...walls.sizes, Rc: fromStep(rc) },
    result: found.middleLine * 1e3,
    unit: 'mm',
    source,
  };
  const inside: CalculationStep = {
    symbol: 'Ah',
    name: 'area inside the middle line',
    expression: '(B - T)*(H - T) - Rc^2*(4 - pi)',
    values: { ...walls.sizes, Rc: fromStep(rc) },
    result: found.middleArea * 1e6,
    unit: 'mm2',
    source,
  };
  const middle = { T: walls.sizes.T, h: fromStep(line), Ah: fromStep(inside) };
  return [
    rc,
    line,
    inside,
    {
      symbol: 'It',
      name: 'torsion constant',
      expression: 'T^3*h/3 + 4*Ah^2*T/h',
      values: middle,
      result: found.torsionConstant * 1e12,
      unit: 'mm4',
      source,
    },
    {
      symbol: 'Ct',
      name: 'torsion modulus',
      expression: '(T^3*h/3 + 4*Ah^2*T/h)/(T + 2*Ah/h)',
      values: middle,
      result: found.torsionModulus * 1e9,
      unit: 'mm3',
      source,
    },
  ];
}

interface Walls {
  readonly sizes: Readonly<Record<'B' | 'H' | 'T', ReturnType<typeof val>>>;
  readonly corners: Readonly<Record<'Ro' | 'Ri', ReturnType<typeof val>>>;
}

/** Second moment of a rectangle without what its four rounded corners lack, as text. */
const rounded = (b: string, h: string, r: string): string =>
  `(${b}*${h}^3/12 - 4*((1/3 - pi/16 - 1/(3*(12 - 3*pi)))*${r}^4 + (1 - pi/4)*${r}^2*(${h}/2 - ${r}*(10 - 3*pi)/(12 - 3*pi))^2))`;

/** The steps of `rectangularHollowSection`, in mm. Source: EN 10210-2 and EN 10219-2, annex on sectional properties (from memory). */
export function hollowSectionSteps(s: RectangularHollow, found: RectangularHollowSection): readonly CalculationStep[] {
  const mm = (value: number, name: string) => val(value * 1000, 'mm', name);
  const walls: Walls = {
    sizes: { B: mm(s.width, 'width'), H: mm(s.height, 'height'), T: mm(s.thickness, 'wall') },
    corners: { Ro: mm(s.outerRadius, 'outer corner radius'), Ri: mm(s.innerRadius, 'inner corner radius') },
  };
  const all = { ...walls.sizes, ...walls.corners };
  const ix: CalculationStep = {
    symbol: 'Ix',
    name: 'second moment about the horizontal axis',
    expression: `${rounded('B', 'H', 'Ro')} - ${rounded('(B - 2*T)', '(H - 2*T)', 'Ri')}`,
    values: all,
    result: found.ix * 1e12,
    unit: 'mm4',
    source,
  };
  const iy: CalculationStep = {
    symbol: 'Iy',
    name: 'second moment about the upright axis',
    expression: `${rounded('H', 'B', 'Ro')} - ${rounded('(H - 2*T)', '(B - 2*T)', 'Ri')}`,
    values: all,
    result: found.iy * 1e12,
    unit: 'mm4',
    source,
  };
  return [
    {
      symbol: 'A',
      name: 'area',
      expression: '2*T*(B + H - 2*T) - (4 - pi)*(Ro^2 - Ri^2)',
      values: all,
      result: found.area * 1e6,
      unit: 'mm2',
      source,
    },
    ix,
    {
      symbol: 'Wx',
      name: 'elastic modulus about the horizontal axis',
      expression: '2*Ix/H',
      values: { Ix: fromStep(ix), H: walls.sizes.H },
      result: found.wx * 1e9,
      unit: 'mm3',
      source,
    },
    iy,
    {
      symbol: 'Wy',
      name: 'elastic modulus about the upright axis',
      expression: '2*Iy/B',
      values: { Iy: fromStep(iy), B: walls.sizes.B },
      result: found.wy * 1e9,
      unit: 'mm3',
      source,
    },
    ...torsionSteps(s, found, walls),
  ];
}
