import { edges, type Ring } from '../floor/geometry/polygon.js';
import { distance2, scale2, sub2, type Vec2 } from '../floor/geometry/vec.js';
import { type Outcome, ok } from '../floor/problem.js';
import { repairedOutline } from './section-outline.js';
import type { SectionOutline, SectionProperties } from './types.js';

/** Below this share of I1 + I2 the principal moments count as equal, so that noise does not turn the axes of a square. */
const equalMoments = 1e-9;
/** Below this share of Ix + Iy the product of area is round-off of the sums. */
const roundOff = 1e-12;

interface Integrals {
  readonly area: number;
  readonly sx: number;
  readonly sy: number;
  readonly ixx: number;
  readonly iyy: number;
  readonly ixy: number;
}

function integrate(rings: readonly Ring[]): Integrals {
  let [area, sx, sy, ixx, iyy, ixy] = [0, 0, 0, 0, 0, 0];
  for (const ring of rings)
    for (const {
      from: [x0, y0],
      to: [x1, y1],
    } of edges(ring)) {
      const c = x0 * y1 - x1 * y0;
      area += c / 2;
      sx += (c * (y0 + y1)) / 6;
      sy += (c * (x0 + x1)) / 6;
      ixx += (c * (y0 * y0 + y0 * y1 + y1 * y1)) / 12;
      iyy += (c * (x0 * x0 + x0 * x1 + x1 * x1)) / 12;
      ixy += (c * (x0 * y1 + 2 * x0 * y0 + 2 * x1 * y1 + x1 * y0)) / 24;
    }
  return { area, sx, sy, ixx, iyy, ixy };
}

const mean = (ring: Ring): Vec2 =>
  scale2(
    ring.reduce<Vec2>((sum, p) => [sum[0] + p[0], sum[1] + p[1]], [0, 0]),
    1 / ring.length,
  );

interface Principal {
  readonly i1: number;
  readonly i2: number;
  readonly theta: number;
}

function principal(ix: number, iy: number, ixy: number): Principal {
  const middle = (ix + iy) / 2;
  const radius = Math.hypot((ix - iy) / 2, ixy);
  // 0 - x rather than -x: the product of area of a section with upright axes is +0, and so is its angle.
  const theta = radius < equalMoments * middle ? 0 : Math.atan2(0 - 2 * ixy, ix - iy) / 2;
  return { i1: middle + radius, i2: middle - radius, theta };
}

function moduli(ix: number, iy: number, outer: Ring, [xc, yc]: Vec2): SectionProperties['moduli'] {
  const xs = outer.map((p) => p[0] - xc);
  const ys = outer.map((p) => p[1] - yc);
  return {
    top: ix / Math.max(...ys),
    bottom: ix / -Math.min(...ys),
    right: iy / Math.max(...xs),
    left: iy / -Math.min(...xs),
  };
}

/**
 * Area, centroid, second moments, principal axes, elastic moduli and radii of a section from its outline with holes.
 *
 *     A = 1/2 sum c,  Ix = 1/12 sum c (y0^2 + y0 y1 + y1^2) - A yc^2 ...,  c = x0 y1 - x1 y0 over every edge
 *     I1,2 = (Ix + Iy)/2 +- sqrt(((Ix - Iy)/2)^2 + Ixy^2),  theta = 1/2 atan2(-2 Ixy, Ix - Iy)
 * Exact for straight edges; flatten arcs first, chord error below 1e-4 of the section size. Points are shifted to the
 * middle of the ring before summing. Full section: walls so thin that they buckle need an effective section, which
 * this does not find. Says nothing about torsion: see `outlineTorsionConstant`.
 * @param outline rings [m]
 * @returns properties in m2, m3, m4, or the problems of `repairedOutline`
 * Source: Green's theorem (derived).
 */
export function sectionProperties(outline: SectionOutline): Outcome<SectionProperties> {
  const repaired = repairedOutline(outline);
  if (!repaired.ok) return repaired;
  const { outer, holes } = repaired.value;
  const origin = mean(outer);
  const rings = [outer, ...holes].map((ring) => ring.map((p) => sub2(p, origin)));
  const { area, sx, sy, ixx, iyy, ixy: product } = integrate(rings);
  const centre: Vec2 = [sy / area, sx / area];
  const ix = ixx - area * centre[1] ** 2;
  const iy = iyy - area * centre[0] ** 2;
  const raw = product - area * centre[0] * centre[1];
  const ixy = Math.abs(raw) < roundOff * (ix + iy) ? 0 : raw;
  const axes = principal(ix, iy, ixy);
  const sides = moduli(ix, iy, rings[0]!, centre);
  return ok({
    area,
    centroid: [centre[0] + origin[0], centre[1] + origin[1]],
    ix,
    iy,
    ixy,
    ...axes,
    moduli: sides,
    wx: Math.min(sides.top, sides.bottom),
    wy: Math.min(sides.right, sides.left),
    radiusX: Math.sqrt(ix / area),
    radiusY: Math.sqrt(iy / area),
    radiusLeast: Math.sqrt(axes.i2 / area),
    perimeter: rings.flatMap((ring) => edges(ring)).reduce((sum, e) => sum + distance2(e.from, e.to), 0),
  });
}
