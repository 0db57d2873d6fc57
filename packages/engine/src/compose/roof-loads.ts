import type { Profile } from '../catalogue/schema.js';
import type { RoofBeam } from '../design/types.js';
import { standardGravity as g } from '../frame/index.js';
import type { Rect } from './roof.js';

export interface RoofLoadInput {
  readonly length: number;
  readonly width: number;
  readonly profile: Profile;
  readonly crossBeams: readonly number[];
  readonly units: readonly Rect[];
  /** Mass of one unit with the dust that its filter will hold [kg]. */
  readonly unitMass: number;
  readonly panels: readonly Rect[];
  readonly panelMassPerArea: number;
  /** Bays of the long sides (along u) and of the ends (along v): from, to, and mass per metre of what hangs there. */
  readonly longBays: readonly {
    readonly bay: number;
    readonly from: number;
    readonly to: number;
    readonly hung: number;
    readonly carriesTrack: boolean;
  }[];
  readonly endBays: readonly {
    readonly bay: number;
    readonly sign: 1 | -1;
    readonly from: number;
    readonly to: number;
    readonly hung: number;
    readonly carriesTrack: boolean;
  }[];
}

export type BeamLoad = Pick<RoofBeam, 'span' | 'uniform' | 'points' | 'carriesTrack'> & {
  readonly kind: 'cross' | 'long' | 'end';
  /** Number of the cross beam, or of the bay, in the order in which the frame has them. */
  readonly index: number;
};

type Point = { readonly at: number; readonly load: number };

/**
 * Load of a unit's or panel's edge on the beam under it: half the weight, as two equal loads at the quarter points of the edge,
 * which gives the bending moment of the spread load.
 */
const edgeLoads = (v0: number, v1: number, weight: number): { readonly v: number; readonly load: number }[] => {
  const quarter = (v1 - v0) / 4;
  return [
    { v: v0 + quarter, load: weight / 4 },
    { v: v1 - quarter, load: weight / 4 },
  ];
};

const near = (x: number, y: number) => Math.abs(x - y) < 1e-6;

/** What every roof beam carries, as simple beams: characteristic dead loads [N]. */
export function roofLoads(input: RoofLoadInput): BeamLoad[] {
  const b = input.width / 2;
  const own = input.profile.massPerLength * g;
  const pieces = [
    ...input.units.map((r) => ({ ...r, weight: input.unitMass * g })),
    ...input.panels.map((r) => ({ ...r, weight: (r.u1 - r.u0) * (r.v1 - r.v0) * input.panelMassPerArea * g })),
  ];
  const onto = (u: number): Point[] =>
    pieces
      .filter((p) => near(p.u0, u) || near(p.u1, u))
      .flatMap((p) => edgeLoads(Math.max(p.v0, -b), Math.min(p.v1, b), p.weight))
      .map(({ v, load }) => ({ at: v + b, load }));
  const cross = input.crossBeams.map(
    (u, index): BeamLoad => ({
      kind: 'cross',
      index,
      span: input.width,
      uniform: own,
      points: onto(u),
      carriesTrack: false,
    }),
  );
  const reaction = (beam: BeamLoad) =>
    beam.uniform * beam.span * 0.5 + beam.points.reduce((sum, p) => sum + p.load, 0) / 2;
  const long = input.longBays.map(
    (bay): BeamLoad => ({
      kind: 'long',
      index: bay.bay,
      span: bay.to - bay.from,
      uniform: own + bay.hung * g,
      points: input.crossBeams.flatMap((u, i) =>
        u > bay.from && u < bay.to ? [{ at: u - bay.from, load: reaction(cross[i]!) }] : [],
      ),
      carriesTrack: bay.carriesTrack,
    }),
  );
  const end = input.endBays.map((bay): BeamLoad => {
    const edge = pieces.filter((p) =>
      bay.sign > 0 ? p.u1 >= input.length / 2 - 1e-9 : p.u0 <= -input.length / 2 + 1e-9,
    );
    const points = edge
      .flatMap((p) => edgeLoads(Math.max(p.v0, -b), Math.min(p.v1, b), p.weight))
      .filter(({ v }) => v > bay.from && v < bay.to)
      .map(({ v, load }) => ({ at: v - bay.from, load }));
    return {
      kind: 'end',
      index: bay.bay,
      span: bay.to - bay.from,
      uniform: own + bay.hung * g,
      points,
      carriesTrack: bay.carriesTrack,
    };
  });
  return [...cross, ...long, ...end];
}
