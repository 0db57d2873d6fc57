import { type CalculationStep, val } from '../floor/calculation.js';
import { cross2, distance2, sub2, type Vec2 } from '../floor/geometry/vec.js';
import { type Outcome, ok, refuse } from '../floor/problem.js';
import { geometrySource } from '../floor/source.js';
import { frameMessages } from './messages.js';

/** A line between neighbouring outer feet, about which a frame could tip. */
export interface TippingEdge {
  readonly from: Vec2;
  readonly to: Vec2;
  /** Distance of the centre of mass inward of the edge; negative when it lies outside [m]. */
  readonly lever: number;
}

/** Feet nearer to the line between their neighbours than this share of the base do not turn the hull [-]. */
const straight = 1e-9;

/** Convex hull, counter-clockwise (monotone chain). */
function hull(points: readonly Vec2[]): Vec2[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const reach = distance2(sorted[0]!, sorted.at(-1)!) ** 2;
  const chain = (list: readonly Vec2[]): Vec2[] => {
    const kept: Vec2[] = [];
    for (const p of list) {
      while (kept.length > 1 && cross2(sub2(kept.at(-1)!, kept.at(-2)!), sub2(p, kept.at(-2)!)) <= straight * reach)
        kept.pop();
      kept.push(p);
    }
    return kept.slice(0, -1);
  };
  return [...chain(sorted), ...chain([...sorted].reverse())];
}

/**
 * Every edge about which a body on feet could tip, with the lever of its centre of mass.
 *
 *     b = ((x2-x1)(yc-y1) - (y2-y1)(xc-x1)) / length, over the convex hull of the feet
 * @param feet plan points [m]
 * @param centreOfMass plan point [m]
 * @param inward how far a caster's swivel can turn its point of support inward [m]
 * @returns edges, the weakest first, or `frame/too-few-feet`, `frame/feet-in-line`
 * Source: geometry (derived).
 */
export function tippingEdges(
  feet: readonly Vec2[],
  centreOfMass: Vec2,
  inward = 0,
): Outcome<readonly [TippingEdge, ...TippingEdge[]]> {
  if (feet.length < 3) return refuse([frameMessages.tooFewFeet(feet.length)]);
  const corners = hull(feet);
  if (corners.length < 3) return refuse([frameMessages.feetInLine()]);
  const edges = corners.map((from, i): TippingEdge => {
    const to = corners[(i + 1) % corners.length]!;
    const lever = cross2(sub2(to, from), sub2(centreOfMass, from)) / distance2(from, to) - inward;
    return { from, to, lever };
  });
  const [first, ...others] = edges.sort((a, b) => a.lever - b.lever);
  return ok([first!, ...others]);
}

/** The step of the lever of `tippingEdges`, in mm from the start of the edge. Source: geometry (derived). */
export function leverStep(edge: TippingEdge, centreOfMass: Vec2, inward: number, origin: string): CalculationStep {
  const [along, centre] = [sub2(edge.to, edge.from), sub2(centreOfMass, edge.from)];
  const mm = (value: number, name: string) => val(value * 1000, 'mm', name, origin);
  return {
    symbol: 'b',
    name: 'centre of mass to the weakest tipping edge',
    expression: '(dx*cy - dy*cx)/sqrt(dx^2 + dy^2) - o',
    values: {
      dx: mm(along[0], 'edge eastward'),
      dy: mm(along[1], 'edge northward'),
      cx: mm(centre[0], 'centre of mass east of the start of the edge'),
      cy: mm(centre[1], 'centre of mass north of the start of the edge'),
      o: mm(inward, 'swivel of a caster turned inward'),
    },
    result: edge.lever * 1000,
    unit: 'mm',
    source: geometrySource,
  };
}
