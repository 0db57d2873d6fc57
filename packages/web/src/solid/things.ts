import type { Design } from '../engine/contract.js';

export const thingKinds = [
  'tables',
  'equipment',
  'lasers',
  'enclosures',
  'runs',
  'openings',
  'devices',
  'building',
] as const;
export type ThingKind = (typeof thingKinds)[number];

export interface NamedThing {
  readonly id: string;
  readonly name: string;
}

/** Everything of a design that can be taken in hand, by kind, in the order of the design. */
export function thingsOf(design: Design): ReadonlyMap<ThingKind, readonly NamedThing[]> {
  const { room } = design;
  const lists: Readonly<Record<ThingKind, readonly NamedThing[]>> = {
    tables: design.tables,
    equipment: [...design.tables.flatMap((t) => t.equipment), ...design.equipment],
    lasers: design.lasers,
    enclosures: design.enclosures,
    runs: design.runs,
    openings: [...room.doors, ...room.windows],
    devices: [
      ...design.covers.map(({ id }) => ({ id, name: id })),
      // Equal devices are told apart by their ids.
      ...design.devices.map(({ id, text }) => ({ id, name: text ? `${text} (${id})` : id })),
    ],
    building: [...room.columns, ...room.beams, ...room.obstructions, ...room.boards],
  };
  return new Map(
    thingKinds
      .map((kind) => [kind, lists[kind].map(({ id, name }) => ({ id, name: name || id }))] as const)
      .filter(([, list]) => list.length > 0),
  );
}
