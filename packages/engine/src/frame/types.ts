import type { Ring } from '../floor/geometry/polygon.js';
import type { Vec2 } from '../floor/geometry/vec.js';

/** Outline of a section in metres: x across, y up. A slot that is open to the outside belongs to the outer ring. */
export interface SectionOutline {
  readonly outer: Ring;
  readonly holes: readonly Ring[];
}

/** What a section is worth in bending and axial force. Axes x and y through the centroid, x across and y up. */
export interface SectionProperties {
  /** [m2] */
  readonly area: number;
  /** In the coordinates of the outline [m]. */
  readonly centroid: Vec2;
  /** Second moments about the x and y axes, and the product integral of x y dA without a minus sign [m4]. */
  readonly ix: number;
  readonly iy: number;
  readonly ixy: number;
  /** Principal second moments, the larger first [m4], and the direction of its axis from x [rad]. */
  readonly i1: number;
  readonly i2: number;
  readonly theta: number;
  /** Elastic moduli towards each side [m3]. */
  readonly moduli: { readonly top: number; readonly bottom: number; readonly right: number; readonly left: number };
  /** The smaller of top and bottom, and of right and left [m3]. */
  readonly wx: number;
  readonly wy: number;
  /** Radii of gyration about x and y, and the smallest of all directions [m]. */
  readonly radiusX: number;
  readonly radiusY: number;
  readonly radiusLeast: number;
  /** Length of all edges, holes included [m]. */
  readonly perimeter: number;
}

/** Section with a closed form: no principal axes needed, because x and y are axes of symmetry. */
export interface SymmetricSection {
  readonly area: number;
  readonly ix: number;
  readonly iy: number;
  readonly wx: number;
  readonly wy: number;
  /** Torsion constant [m4]. */
  readonly torsionConstant: number;
}

/** How a single span is held: at its first end and at its last. */
export type BeamEnds = 'simple' | 'fixed and simple' | 'fixed' | 'cantilever';

/** Downward force [N] at a distance from the first end [m]. */
export interface BeamPointLoad {
  readonly at: number;
  readonly load: number;
}

/** One straight span with constant section. Loads act downward and count positive. */
export interface SingleSpan {
  readonly ends: BeamEnds;
  /** [m] */
  readonly span: number;
  /** Modulus of elasticity [Pa]. */
  readonly elasticity: number;
  /** Second moment of area about the axis of bending [m4]. */
  readonly secondMoment: number;
  /** Over the whole span [N/m]. */
  readonly uniform: number;
  readonly points: readonly BeamPointLoad[];
}
