import type { Vec2 } from '@cloche/engine';
import { briefData, withEntry, withValues } from '../brief/document.js';
import { fieldsAt } from '../brief/fields.js';
import { idsInUse } from '../brief/find.js';
import { listAt, type Path, valueAt } from '../brief/path.js';
import { arrangeTexts as say } from '../texts/arrange.js';
import { tell } from './arranged.js';
import { memberOf, tablesIn } from './members.js';
import { shiftOf } from './shifted.js';

/** A thing taken out of a brief with the list that it belongs to. */
export interface Piece {
  readonly id: string;
  readonly list: Path;
  readonly entry: Readonly<Record<string, unknown>>;
  /** Table that equipment stands on. */
  readonly on?: string;
}

/** Lists whose entries are placed by something that they name. */
const atSomething: Readonly<Record<string, string>> = { covers: 'over', signs: 'door', interlocks: 'on' };

/**
 * Ids of what is copied: with an enclosure go its tables, with a table the lasers on it.
 */
function withBelongings(data: unknown, ids: readonly string[]): readonly string[] {
  const all = new Set(ids);
  for (const id of ids) {
    const member = memberOf(data, id);
    if (member?.list === 'enclosures') for (const table of tablesIn(data, member.path)) all.add(table);
  }
  for (const laser of listAt(data, ['lasers']))
    if (all.has(String(valueAt(laser, ['table'])))) all.add(String(valueAt(laser, ['id'])));
  return [...all];
}

export interface Taken {
  readonly pieces: readonly Piece[];
  readonly told: readonly string[];
}

/** The entries of what is in hand, as they stand in the brief. */
export function piecesOf(data: unknown, ids: readonly string[]): Taken {
  const all = new Set(withBelongings(data, ids));
  const left: string[] = [];
  const pieces = [...all].flatMap((id): readonly Piece[] => {
    const member = memberOf(data, id);
    const entry = member ? valueAt(data, member.path) : undefined;
    if (!member || typeof entry !== 'object' || entry === null || member.list === 'phases') return [];
    const nested = member.path[0] === 'tables' && member.path.length > 2;
    const on = nested && member.on ? String(valueAt(data, [...member.on, 'id'])) : undefined;
    // What stands on a table is part of the table's own entry.
    if (on !== undefined && all.has(on)) return [];
    const key = atSomething[member.list];
    if (key && !all.has(String(valueAt(entry, [key])))) {
      left.push(id);
      return [];
    }
    const piece = { id, list: member.path.slice(0, -1), entry: entry as Piece['entry'] };
    return [on === undefined ? piece : { ...piece, on }];
  });
  return { pieces, told: tell(left, say.copyWhatItIsAt) };
}

/** Free ids with the same stems: table-1 becomes table-2. @returns new ids by old ones */
export function freshIds(used: ReadonlySet<string>, ids: readonly string[]): ReadonlyMap<string, string> {
  const taken = new Set([...used, 'room']);
  return new Map(
    ids.map((id) => {
      const stem = id.replace(/-\d+$/, '').slice(0, 34);
      let number = 1;
      while (taken.has(`${stem}-${number}`)) number++;
      const fresh = `${stem}-${number}`;
      taken.add(fresh);
      return [id, fresh] as const;
    }),
  );
}

/** Every id in a piece: its own, and those of the equipment on a table. */
export const idsInside = ({ id, entry }: Piece): readonly string[] => [
  id,
  ...listAt(entry, ['equipment']).map((each) => String(valueAt(each, ['id']))),
];

/** The piece under other names; what it names of the same group is named anew as well. */
export function renamed(piece: Piece, names: ReadonlyMap<string, string>): Piece {
  const entry = structuredClone(piece.entry) as Record<string, unknown>;
  entry['id'] = names.get(piece.id) ?? piece.id;
  for (const each of listAt(entry, ['equipment']) as Record<string, unknown>[])
    each['id'] = names.get(String(each['id'])) ?? each['id'];
  for (const { path, shape } of fieldsAt([...piece.list, 0])) {
    const key = String(path[0]);
    const value = entry[key];
    if (path.length !== 1 || value === undefined) continue;
    if ('reference' in shape && typeof value === 'string') entry[key] = names.get(value) ?? value;
    if ('references' in shape && Array.isArray(value)) entry[key] = value.map((each) => names.get(each) ?? each);
  }
  return { ...piece, id: String(entry['id']), entry };
}

export interface Copied {
  readonly text: string;
  /** The copies, to be taken in hand. */
  readonly ids: readonly string[];
  readonly told: readonly string[];
}

/** Copies of everything in hand, the k-th of them moved by k times the distance in the room [m]. */
export function copied(text: string, ids: readonly string[], by: Vec2, times = 1): Copied {
  const data = briefData(text);
  const { pieces, told } = piecesOf(data, ids);
  const copies: string[] = [];
  let now = text;
  for (let k = 1; k <= times; k++) {
    const used = idsInUse(briefData(now));
    const names = freshIds(used, pieces.flatMap(idsInside));
    const done = placed(
      now,
      pieces.map((piece) => renamed(piece, names)),
      [by[0] * k, by[1] * k],
    );
    now = done.text;
    copies.push(...done.ids);
  }
  return { text: now, ids: copies, told };
}

/** Pieces put into a brief, moved by a distance in the room. */
export function placed(
  text: string,
  pieces: readonly Piece[],
  by: Vec2,
): { readonly text: string; readonly ids: readonly string[] } {
  const added = pieces.reduce((now, { list, entry }) => withEntry(now, list, entry), text);
  const data = briefData(added);
  const own = new Set(pieces.map(({ id }) => id));
  const moves = pieces
    .filter(({ entry, list }) => list.at(-1) !== 'enclosures' && !own.has(String(entry['table'])))
    .flatMap(({ id }) => shiftOf(data, id, by));
  return { text: moves.length === 0 ? added : withValues(added, moves), ids: pieces.map(({ id }) => id) };
}
