import { contains, type Ring } from '@cloche/engine';
import type { Design, Vec2 } from '../engine/contract.js';
import { type Units, unitsOf } from './length-text.js';

/** What a tool draws on: the brief as data, and the last state of it that could be drawn. */
export interface Scene {
  readonly data: unknown;
  readonly design: Design;
  readonly units: Units;
}

export const sceneOf = (data: unknown, design: Design): Scene => ({ data, design, units: unitsOf(data) });

/** The table under a point; the last drawn lies on top. */
export const tableAt = ({ design }: Scene, at: Vec2) =>
  design.tables.filter((table) => contains(table.outline, at)).at(-1);

/** A point of the room, measured on a table along its length and width. */
export function onTable(table: { readonly centre: Vec2; readonly turn: number }, [x, y]: Vec2): Vec2 {
  const [dx, dy] = [x - table.centre[0], y - table.centre[1]];
  const [c, s] = [Math.cos(table.turn), Math.sin(table.turn)];
  return [dx * c + dy * s, dy * c - dx * s];
}

export const boxAt = ([x, y]: Vec2, [length, width]: Vec2): Ring => [
  [x - length / 2, y - width / 2],
  [x + length / 2, y - width / 2],
  [x + length / 2, y + width / 2],
  [x - length / 2, y + width / 2],
];
