import { distance2, dot2, edges, type Ring, sub2, unit2, type Vec2 } from '@cloche/engine';
import { metresOf } from '../brief/lengths.js';
import { listAt, type Path, shownText, valueAt } from '../brief/path.js';
import { drawingTexts } from '../texts/drawing.js';
import { writtenStretch } from './inside.js';
import { lengthText, type Units, unitsOf } from './length-text.js';
import { inwardNormals, wallNames } from './snap/wall-names.js';

const { rewall: say } = drawingTexts;
const lists = ['doors', 'windows', 'boards'] as const;

/** A wall is taken for the same one when it looks the same way within this angle and lies within this distance of where it was. */
const sameWay = Math.cos((15 * Math.PI) / 180);
const samePlace = 0.5;
/** A corner is taken for the same one within this distance [m]. */
const sameCorner = 0.3;

interface Stretch {
  readonly wall: number;
  readonly at: number;
}

/** What a new outline means for what is written with numbers of walls and corners. */
export interface Rewalled {
  readonly put: readonly (readonly [Path, unknown])[];
  /** What did not simply stay where it was. */
  readonly told: readonly string[];
}

const pointAt = (value: unknown): Vec2 => [metresOf(valueAt(value, [0])) ?? 0, metresOf(valueAt(value, [1])) ?? 0];
export const outlineOf = (data: unknown): Ring => listAt(data, ['room', 'outline']).map(pointAt);

/**
 * Doors, windows and boards go along to the wall of the new outline that lies where theirs did. What has no such wall any more, or no
 * room on it, is put on the wall nearest to it where it fits, and told; what fits nowhere stays as written, and is told as well.
 */
export function rewalled(data: unknown, outline: Ring): Rewalled {
  const before = outlineOf(data);
  const units = unitsOf(data);
  const walls = { outline, normals: inwardNormals(outline), names: wallNames(outline) };
  const things = lists.flatMap((list) =>
    listAt(data, ['room', list]).map((entry, i) => movedThing(before, entry, ['room', list, i], walls, units)),
  );
  const measured = diagonals(data, before, outline);
  return {
    put: [...things.flatMap(({ put }) => put), ...measured.put],
    told: [...things.flatMap(({ told }) => told), ...measured.told],
  };
}

interface Walls {
  readonly outline: Ring;
  readonly normals: readonly Vec2[];
  readonly names: readonly string[];
}

function movedThing(before: Ring, entry: unknown, path: Path, walls: Walls, units: Units): Rewalled {
  const id = shownText(valueAt(entry, ['id']));
  const wall = valueAt(entry, ['wall']);
  const [at, width] = [metresOf(valueAt(entry, ['at'])), metresOf(valueAt(entry, ['width']))];
  const edge = typeof wall === 'number' ? edges(before)[wall] : undefined;
  if (!edge || at === null || width === null || typeof wall !== 'number') return { put: [], told: [say.unread(id)] };
  const along = unit2(sub2(edge.to, edge.from));
  const ends = [at, at + width].map((t): Vec2 => [edge.from[0] + along[0] * t, edge.from[1] + along[1] * t]);
  const normal = inwardNormals(before)[wall]!;
  const [a, b] = [ends[0]!, ends[1]!];
  const same = sameWall(a, b, normal, walls, width);
  const place = same ?? nearestFit(a, b, walls, width);
  if (!place) return { put: [], told: [say.lost(id)] };
  const wallNow = edges(walls.outline)[place.wall]!;
  const end = distance2(wallNow.from, wallNow.to);
  const unchanged = place.wall === wall && Math.abs(place.at - at) < 5e-5;
  const put = unchanged
    ? []
    : [
        [[...path, 'wall'], place.wall] as const,
        [[...path, 'at'], writtenStretch(place.at, width, end, units).at] as const,
      ];
  const told = same ? [] : [say.moved(id, walls.names[place.wall]!, lengthText(place.at, units))];
  return { put, told };
}

/** Where the two ends of an opening fall along a wall, and how far from it. */
function along({ outline }: Walls, wall: number, a: Vec2, b: Vec2) {
  const { from, to } = edges(outline)[wall]!;
  const length = distance2(from, to);
  const way = length === 0 ? ([1, 0] as const) : unit2(sub2(to, from));
  const [s, t] = [dot2(sub2(a, from), way), dot2(sub2(b, from), way)];
  const across = (p: Vec2) => Math.abs((p[0] - from[0]) * way[1] - (p[1] - from[1]) * way[0]);
  return { at: Math.min(s, t), length, off: Math.max(across(a), across(b)) };
}

/** A measured wall is seldom to the millimetre where it was: an opening that passes an end by less is set to the end. */
const atEnd = 0.05;

function sameWall(a: Vec2, b: Vec2, normal: Vec2, walls: Walls, width: number): Stretch | null {
  let best: (Stretch & { readonly off: number }) | null = null;
  for (const wall of walls.outline.keys()) {
    if (dot2(walls.normals[wall]!, normal) < sameWay) continue;
    const { at, length, off } = along(walls, wall, a, b);
    const over = Math.max(-at, at + width - length);
    if (off > samePlace || width > length || over > atEnd || (best && off >= best.off)) continue;
    best = { wall, at: Math.min(Math.max(0, at), length - width), off };
  }
  return best;
}

function nearestFit(a: Vec2, b: Vec2, walls: Walls, width: number): Stretch | null {
  let best: (Stretch & { readonly distance: number }) | null = null;
  for (const wall of walls.outline.keys()) {
    const { at, length } = along(walls, wall, a, b);
    if (width > length) continue;
    const placed = Math.min(Math.max(0, at), length - width);
    const { from, to } = edges(walls.outline)[wall]!;
    const way = unit2(sub2(to, from));
    const middle: Vec2 = [from[0] + way[0] * (placed + width / 2), from[1] + way[1] * (placed + width / 2)];
    const distance = distance2(middle, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
    if (best && distance >= best.distance) continue;
    best = { wall, at: placed, distance };
  }
  return best;
}

/** Measured diagonals keep their corners where these still stand; the others are taken out, since they measure nothing any more. */
function diagonals(data: unknown, before: Ring, outline: Ring): Rewalled {
  const path = ['room', 'diagonals'];
  const all = listAt(data, path);
  if (all.length === 0) return { put: [], told: [] };
  const cornerNow = (n: unknown): number => {
    const was = typeof n === 'number' ? before[n] : undefined;
    return was ? outline.findIndex((corner) => distance2(corner, was) <= sameCorner) : -1;
  };
  const read = all.map((entry) => {
    const [from, to] = [cornerNow(valueAt(entry, ['from'])), cornerNow(valueAt(entry, ['to']))];
    return { entry, from, to, stays: from >= 0 && to >= 0 && from !== to };
  });
  const kept = read.filter(({ stays }) => stays).map(({ entry, from, to }) => ({ ...(entry as object), from, to }));
  const told = read
    .filter(({ stays }) => !stays)
    .map(({ entry }) => say.diagonal(shownText(valueAt(entry, ['measured']))));
  return { put: [[path, kept]], told };
}
