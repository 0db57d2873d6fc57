import type { Ring, Vec2 } from '../../engine/contract.js';
import type { Units } from '../length-text.js';

export type SnapKind = 'grid' | 'end' | 'middle' | 'wall' | 'offset' | 'angle' | 'axis' | 'extension';

/** Why a point came to rest where it is: said beside the pointer, and shown by fine lines. */
export interface SnapReason {
  readonly kind: SnapKind;
  readonly text: string;
  /** Where the helper line starts; it ends in the snapped point. */
  readonly from?: Vec2;
  /** Helper lines that do not end in the snapped point: gaps, edges in line. */
  readonly lines?: readonly (readonly [Vec2, Vec2])[];
}

export interface Snapped {
  readonly at: Vec2;
  readonly reasons: readonly SnapReason[];
}

/** A corner, an end, a middle. */
export interface Spot {
  readonly at: Vec2;
  readonly kind: 'end' | 'middle';
  readonly text: string;
  readonly of: string;
}

/** A straight edge of a wall or a thing. */
export interface SnapEdge {
  readonly from: Vec2;
  readonly to: Vec2;
  readonly of: string;
  readonly wall: boolean;
  /** Unit normal to the side where room is; a line of track has none. */
  readonly free: Vec2 | null;
}

/** A free width that is already there, between two faces that look at each other. */
export interface Gap {
  readonly axis: 0 | 1;
  readonly size: number;
  readonly between: readonly [string, string];
}

/** Everything in the drawing that a point or a thing may come to rest on; built once for a drag. */
export interface SnapField {
  readonly units: Units;
  /** Free widths that are often wanted beside a wall or a thing [m]. */
  readonly offsets: readonly number[];
  readonly spots: readonly Spot[];
  readonly edges: readonly SnapEdge[];
  readonly boxes: readonly { readonly of: string; readonly ring: Ring }[];
  readonly gaps: readonly Gap[];
}

export interface SnapOptions {
  /** How far a point may be drawn aside [m]. */
  readonly reach: number;
  /** Whole steps [m]. */
  readonly grid: number;
  /** The point before, for angles and lengths. */
  readonly from?: Vec2;
  /** Nothing snaps: Alt is held. */
  readonly free?: boolean;
  /** Kinds that are switched on; all when left out. */
  readonly kinds?: ReadonlySet<SnapKind>;
}
