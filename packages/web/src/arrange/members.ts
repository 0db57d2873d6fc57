import { idsInUse, pathOfThing } from '../brief/find.js';
import { listAt, type Path, pathKey, valueAt } from '../brief/path.js';

/** A thing with a place of its own. */
export interface Member {
  readonly id: string;
  readonly path: Path;
  /** The list of the brief that it stands in. */
  readonly list: string;
  /** The table that carries it and that it is measured on. */
  readonly on: Path | null;
}

const wallLists = new Set(['doors', 'windows', 'boards']);
const placedByOthers = new Set(['covers', 'signs', 'interlocks', 'phases']);

export const isInWall = ({ list }: Member): boolean => wallLists.has(list);

/** Something of the brief by its id, with what carries it. */
export function memberOf(data: unknown, id: string): Member | undefined {
  const path = pathOfThing(data, id);
  if (!path) return undefined;
  const list = String([...path].reverse().find((step) => typeof step === 'string'));
  return { id, path, list, on: carrierPath(data, path) };
}

function carrierPath(data: unknown, path: Path): Path | null {
  if (path[0] === 'tables' && path.length > 2) return path.slice(0, 2);
  if (path[0] !== 'lasers') return null;
  const table = valueAt(data, [...path, 'table']);
  return typeof table === 'string' ? (pathOfThing(data, table) ?? null) : null;
}

/** Ids of the tables that an enclosure stands around. */
export const tablesIn = (data: unknown, enclosure: Path): readonly string[] =>
  listAt(data, [...enclosure, 'around']).filter((id): id is string => typeof id === 'string');

export interface Group {
  /** What moves, each once: an enclosure is its tables, and what stands on a table that moves goes with it. */
  readonly members: readonly Member[];
  /** Ids of things that have no place of their own: a sign hangs at its door. */
  readonly placedByOthers: readonly string[];
}

/** What moves when several things are moved together. */
export function groupOf(data: unknown, ids: readonly string[]): Group {
  const named = ids.flatMap((id) => memberOf(data, id) ?? []);
  const all = named.flatMap((member) =>
    member.list === 'enclosures'
      ? tablesIn(data, member.path).flatMap((id) => memberOf(data, id) ?? [])
      : placedByOthers.has(member.list)
        ? []
        : [member],
  );
  const once = [...new Map(all.map((member) => [pathKey(member.path), member])).values()];
  const moving = new Set(once.map(({ path }) => pathKey(path)));
  return {
    members: once.filter(({ on }) => on === null || !moving.has(pathKey(on))),
    placedByOthers: named.filter(({ list }) => placedByOthers.has(list)).map(({ id }) => id),
  };
}

/** What is lined up as one body: an enclosure with its tables, a table with what stands on it. */
export function unitsOf(data: unknown, ids: readonly string[]): readonly string[] {
  const named = ids.flatMap((id) => memberOf(data, id) ?? []).filter(({ list }) => !placedByOthers.has(list));
  const inside = new Set(named.flatMap(({ list, path }) => (list === 'enclosures' ? tablesIn(data, path) : [])));
  const moving = new Set(groupOf(data, ids).members.map(({ path }) => pathKey(path)));
  return named
    .filter(({ id, on, list }) => !inside.has(id) && (on === null || list === 'tables' || !moving.has(pathKey(on))))
    .map(({ id }) => id);
}

/** Everything of the brief that is drawn, or all of the kind of one thing. */
export function idsLike(data: unknown, like: string | null): readonly string[] {
  const all = [...idsInUse(data)].flatMap((id) => memberOf(data, id) ?? []);
  const shown = all.filter(({ list }) => !placedByOthers.has(list));
  const kind = like === null ? undefined : memberOf(data, like);
  if (!kind) return shown.map(({ id }) => id);
  return shown.filter(({ list, on }) => list === kind.list && (on === null) === (kind.on === null)).map(({ id }) => id);
}
