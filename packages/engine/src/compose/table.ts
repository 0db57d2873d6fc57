import type { CompleteBrief, CompleteTable } from '../brief/complete.js';
import type { DesignTable } from '../design/types.js';
import { rectangle } from '../floor/geometry/polygon.js';
import { add2, turn2, type Vec2 } from '../floor/geometry/vec.js';

type BriefEquipment = CompleteBrief['equipment'][number];

/** A thing that stands on the floor or on a table, as a solid of the room. */
export function composeEquipment(e: BriefEquipment, origin: Vec2, turn: number, bottom: number) {
  const centre = add2(origin, turn2(e.at, turn));
  return {
    id: e.id,
    name: e.name ?? e.id,
    outline: rectangle(centre, e.size[0], e.size[1], turn + (e.turn ?? 0)),
    bottom,
    top: bottom + e.size[2],
    mass: e.mass ?? null,
    heat: e.heat ?? 0,
    electricalLoad: e.electricalLoad ?? 0,
    noise: e.noise ?? null,
  };
}

export function composeTable(table: CompleteTable): DesignTable {
  return {
    id: table.id,
    name: table.name ?? table.id,
    outline: rectangle(table.at, table.length, table.width, table.turn),
    centre: table.at,
    turn: table.turn,
    length: table.length,
    width: table.width,
    height: table.height,
    mass: table.mass ?? null,
    travel: table.travel,
    equipment: (table.equipment ?? []).map((e) => composeEquipment(e, table.at, table.turn, table.height)),
  };
}
