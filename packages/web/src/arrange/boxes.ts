import { bounds, contains, type Vec2 } from '@cloche/engine';
import type { Design } from '../engine/contract.js';
import { boxOf as boxRound } from '../plan/card-corner.js';
import { extentOf } from '../plan/places.js';
import type { Box } from '../plan/view.js';
import type { BoxOf } from './lined-up.js';

/** The room that a thing takes in the drawn plan: tables, enclosures and the like by their outline. */
export const boxIn =
  (design: Design): BoxOf =>
  (id) => {
    const points = extentOf(design, id);
    return points.length === 0 ? undefined : boxRound(points);
  };

/** The box round everything of a list that is drawn. */
export function boxRoundAll(design: Design, ids: readonly string[]): Box | undefined {
  const points = ids.flatMap((id) => extentOf(design, id));
  return points.length === 0 ? undefined : bounds(points);
}

/** Copies stand this far from what they were copied from [m]. */
const between = 0.3;

/** Where copies go: beside what they are copied from, on the first side where they are wholly inside the room and on nothing else. */
export function besideShift(design: Design, ids: readonly string[]): Vec2 {
  const box = boxRoundAll(design, ids);
  if (!box) return [between, -between];
  const round = (metres: number) => Math.ceil(metres * 100 - 1e-6) / 100;
  const [dx, dy] = [0, 1].map((k) => round(box.max[k]! - box.min[k]! + between));
  const tries: readonly Vec2[] = [
    [dx!, 0],
    [-dx!, 0],
    [0, dy!],
    [0, -dy!],
    [between, -between],
    [-between, between],
  ];
  const solids = [
    ...design.tables,
    ...design.enclosures,
    ...design.equipment,
    ...design.room.columns,
    ...design.room.obstructions,
  ]
    .filter(({ id }) => !ids.includes(id))
    .map(({ outline }) => bounds(outline));
  const moved = (by: Vec2): Box => ({
    min: [box.min[0] + by[0], box.min[1] + by[1]],
    max: [box.max[0] + by[0], box.max[1] + by[1]],
  });
  const inside = ({ min, max }: Box) =>
    ([min, [max[0], min[1]], max, [min[0], max[1]]] as const).every((p) => contains(design.room.outline, p));
  const meets = (a: Box, b: Box) => [0, 1].every((k) => a.min[k]! < b.max[k]! - 1e-9 && b.min[k]! < a.max[k]! - 1e-9);
  const within = tries.filter((by) => inside(moved(by)));
  return within.find((by) => !solids.some((solid) => meets(moved(by), solid))) ?? within.at(-1) ?? [0, 0];
}
