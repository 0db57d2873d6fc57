import type { SideName } from '../brief/schema.js';
import type { DesignTable } from '../design/types.js';
import { add2, dot2, left2, scale2, type Vec2, type Vec3 } from '../floor/geometry/vec.js';

/**
 * The own axes of an enclosure: u along its longer inside, v across; origin in its middle. Cross beams run along v, so that
 * they span the shorter way.
 */
export interface Axes {
  readonly centre: Vec2;
  readonly u: Vec2;
  readonly v: Vec2;
  /** Angle of u from east [rad]. */
  readonly turn: number;
  /** Names of the sides at -v, +u, +v, -u. */
  readonly sideAt: readonly [SideName, SideName, SideName, SideName];
  /** Clear inside along u and v [m]. */
  readonly length: number;
  readonly width: number;
  /** Bounding size of the tables along u and v [m]. */
  readonly tableLength: number;
  readonly tableWidth: number;
}

/** Own axes from the tables inside and the clear distance on each side (sides by the first table's axes). */
export function axesOf(tables: readonly DesignTable[], gaps: Readonly<Record<SideName, number>>): Axes {
  const first = tables[0]!;
  const tu: Vec2 = [Math.cos(first.turn), Math.sin(first.turn)];
  const tv = left2(tu);
  const corners = tables.flatMap((t) => t.outline);
  const along = corners.map((c) => dot2(c, tu));
  const across = corners.map((c) => dot2(c, tv));
  const tables1 = [Math.min(...along), Math.max(...along)] as const;
  const tables2 = [Math.min(...across), Math.max(...across)] as const;
  const low1 = tables1[0] - gaps.west;
  const high1 = tables1[1] + gaps.east;
  const low2 = tables2[0] - gaps.south;
  const high2 = tables2[1] + gaps.north;
  const centre = add2(scale2(tu, (low1 + high1) / 2), scale2(tv, (low2 + high2) / 2));
  const size1 = high1 - low1;
  const size2 = high2 - low2;
  if (size1 >= size2)
    return {
      centre,
      u: tu,
      v: tv,
      turn: first.turn,
      sideAt: ['south', 'east', 'north', 'west'],
      length: size1,
      width: size2,
      tableLength: tables1[1] - tables1[0],
      tableWidth: tables2[1] - tables2[0],
    };
  return {
    centre,
    u: tv,
    v: scale2(tu, -1),
    turn: first.turn + Math.PI / 2,
    sideAt: ['east', 'north', 'west', 'south'],
    length: size2,
    width: size1,
    tableLength: tables2[1] - tables2[0],
    tableWidth: tables1[1] - tables1[0],
  };
}

/** A point of the enclosure's own axes in the room. */
export const toRoom = (axes: Axes, u: number, v: number): Vec2 =>
  add2(axes.centre, add2(scale2(axes.u, u), scale2(axes.v, v)));

export const toSpace = (axes: Axes, u: number, v: number, z: number): Vec3 => {
  const p = toRoom(axes, u, v);
  return [p[0], p[1], z];
};

/** A rectangle of the own axes as a ring in the room, counter-clockwise. */
export const ringOf = (axes: Axes, u0: number, u1: number, v0: number, v1: number): Vec2[] => [
  toRoom(axes, u0, v0),
  toRoom(axes, u1, v0),
  toRoom(axes, u1, v1),
  toRoom(axes, u0, v1),
];
