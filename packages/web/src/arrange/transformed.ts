import { bounds, sub2, unit2, type Vec2 } from '@cloche/engine';
import type { Change } from '../brief/document.js';
import { metresOf } from '../brief/lengths.js';
import { listAt, type Path, valueAt } from '../brief/path.js';
import { arrangeTexts as say } from '../texts/arrange.js';
import { type Arranged, type ObjectEdit, tell } from './arranged.js';
import { angleTo, closely, exactly, lengthTo, radiansOf, wrapped } from './exact.js';
import { groupOf, isInWall, type Member } from './members.js';
import { fromTable, isSquare, type Motion, movedAngle, movedPoint, onTable } from './motion.js';
import { swappedObjects, swappedSides } from './swapped-sides.js';
import { outlineOf, wallOnto } from './walls.js';

/** Room points that a member is placed by. */
export function placesOf(data: unknown, member: Member): readonly Vec2[] {
  if (isInWall(member)) return [];
  return pointPaths(data, member).flatMap((path) => {
    const point = pointAt(data, path);
    return point ? [inRoom(data, member, point)] : [];
  });
}

/** Middle of the box round the places of a group: about it the group is turned and mirrored. */
export function middleOfPlaces(data: unknown, ids: readonly string[]): Vec2 | null {
  const points = groupOf(data, ids).members.flatMap((member) => placesOf(data, member));
  if (points.length === 0) return null;
  const { min, max } = bounds(points);
  return [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
}

/** The group after a turn or as its mirror image. What cannot follow is told and stays as it is. */
export function transformed(data: unknown, ids: readonly string[], motion: Motion): Arranged {
  const group = groupOf(data, ids);
  const done = group.members.map((member) => ({ member, changes: changesOf(data, member, motion) }));
  const fixed = done.filter(({ changes }) => changes === null).map(({ member }) => member.id);
  const straight = isSquare(motion) ? [] : group.members.filter(({ list }) => alongWalls.has(list)).map(({ id }) => id);
  return {
    changes: done.flatMap(({ changes }) => changes ?? []),
    objects: motion.mirrored ? group.members.flatMap((member) => reversedObjects(data, member, motion)) : [],
    told: [
      ...tell(group.placedByOthers, say.placedByOthers),
      ...tell(fixed, say.staysInWall),
      ...tell(straight, say.onlySquare),
    ],
  };
}

/** Drawn along the walls only: the brief gives them no turn. */
const alongWalls = new Set(['airTerminals', 'luminaires']);
const withTurn = new Set(['tables', 'equipment', 'columns', 'obstructions']);

function pointPaths(data: unknown, { list, path }: Member): readonly Path[] {
  if (list === 'beams')
    return [
      [...path, 'from'],
      [...path, 'to'],
    ];
  if (list === 'runs') return listAt(data, [...path, 'path']).map((_, i): Path => [...path, 'path', i]);
  if (list === 'lasers')
    return [[...path, 'at'], ...listAt(data, [...path, 'legs']).map((_, i): Path => [...path, 'legs', i, 'to'])];
  return [[...path, 'at']];
}

function pointAt(data: unknown, path: Path): Vec2 | null {
  const [x, y] = [0, 1].map((k) => metresOf(valueAt(data, [...path, k])));
  return x == null || y == null ? null : [x, y];
}

interface TablePose {
  readonly middle: Vec2;
  readonly turn: number;
}

function tablePose(data: unknown, table: Path | null): TablePose {
  const middle = table ? pointAt(data, [...table, 'at']) : null;
  return table && middle ? { middle, turn: radiansOf(valueAt(data, [...table, 'turn'])) } : { middle: [0, 0], turn: 0 };
}

function inRoom(data: unknown, { on }: Member, point: Vec2): Vec2 {
  const { middle, turn } = tablePose(data, on);
  return fromTable(middle, turn, point);
}

/** Null for what cannot follow the motion. */
function changesOf(data: unknown, member: Member, motion: Motion): readonly Change[] | null {
  if (isInWall(member)) return wallChanges(data, member, motion);
  const finest = isSquare(motion) ? exactly : closely;
  const carrier = tablePose(data, member.on);
  const follow = (point: Vec2): Vec2 =>
    onTable(carrier.middle, carrier.turn, movedPoint(motion, fromTable(carrier.middle, carrier.turn, point)));
  const places = pointPaths(data, member).flatMap((path) => pointChanges(data, path, follow, finest));
  if (member.list === 'lasers') return [...places, ...directionChange(data, member.path, carrier.turn, motion)];
  if (alongWalls.has(member.list)) return [...places, ...swappedSize(data, member.path, motion)];
  if (!withTurn.has(member.list)) return places;
  return member.list === 'tables'
    ? [...places, ...tableChanges(data, member, motion)]
    : [...places, ...turnChange(data, member.path, followedTurn(data, member, carrier.turn, motion))];
}

function pointChanges(data: unknown, path: Path, follow: (p: Vec2) => Vec2, finest: number): readonly Change[] {
  const before = pointAt(data, path);
  if (!before) return [];
  const after = follow(before);
  return [0, 1].flatMap((k): readonly Change[] =>
    Math.abs(after[k]! - before[k]!) < exactly / 2
      ? []
      : [[[...path, k], lengthTo(valueAt(data, [...path, k]), after[k]!, finest)]],
  );
}

function turnChange(data: unknown, path: Path, turn: number, key = 'turn'): readonly Change[] {
  const before = valueAt(data, [...path, key]);
  if (Math.abs(wrapped(turn - radiansOf(before))) < 1e-10) return [];
  return [[[...path, key], angleTo(before, turn)]];
}

/** A rectangle that is turned by half a turn looks the same: the nearer of both is taken when it is mirrored. */
function followedTurn(data: unknown, { path }: Member, carrier: number, motion: Motion): number {
  const before = radiansOf(valueAt(data, [...path, 'turn']));
  const after = movedAngle(motion, before + carrier) - carrier;
  return motion.mirrored ? nearer(before, after).turn : after;
}

interface Mirrored {
  readonly turn: number;
  /** True when the thing's own length runs the other way in it, false when its width does. */
  readonly lengthReversed: boolean;
}

function nearer(before: number, after: number): Mirrored {
  const other = after + Math.PI;
  const far = (turn: number) => Math.abs(wrapped(turn - before));
  return far(other) < far(after) - 1e-9
    ? { turn: other, lengthReversed: true }
    : { turn: after, lengthReversed: false };
}

function directionChange(data: unknown, path: Path, carrier: number, motion: Motion): readonly Change[] {
  const before = radiansOf(valueAt(data, [...path, 'direction']));
  return turnChange(data, path, movedAngle(motion, before + carrier) - carrier, 'direction');
}

function swappedSize(data: unknown, path: Path, motion: Motion): readonly Change[] {
  if (!isSquare(motion) || Math.abs(Math.cos(motion.turn)) > 0.5) return [];
  const [length, width] = [0, 1].map((k) => valueAt(data, [...path, 'size', k]));
  if (typeof length !== 'string' || typeof width !== 'string' || length === width) return [];
  return [
    [[...path, 'size', 0], width],
    [[...path, 'size', 1], length],
  ];
}

/** A table takes what stands on it along; in the mirror image everything on it changes sides. */
function tableChanges(data: unknown, { path, id }: Member, motion: Motion): readonly Change[] {
  const before = radiansOf(valueAt(data, [...path, 'turn']));
  const after = movedAngle(motion, before);
  if (!motion.mirrored) return turnChange(data, path, after);
  const { turn, lengthReversed } = nearer(before, after);
  const reflected = ([u, v]: Vec2): Vec2 => (lengthReversed ? [-u, v] : [u, -v]);
  const angle = (a: number) => (lengthReversed ? Math.PI - a : -a);
  const standing = listAt(data, [...path, 'equipment']).flatMap((_, i): readonly Change[] => {
    const each: Path = [...path, 'equipment', i];
    const own = radiansOf(valueAt(data, [...each, 'turn']));
    return [
      ...pointChanges(data, [...each, 'at'], reflected, exactly),
      ...turnChange(data, each, nearer(own, angle(own)).turn),
    ];
  });
  const lasers = listAt(data, ['lasers']).flatMap((laser, i): readonly Change[] => {
    if (valueAt(laser, ['table']) !== id) return [];
    const each: Member = { id: '', path: ['lasers', i], list: 'lasers', on: path };
    return [
      ...pointPaths(data, each).flatMap((point) => pointChanges(data, point, reflected, exactly)),
      ...turnChange(data, each.path, angle(radiansOf(valueAt(laser, ['direction']))), 'direction'),
    ];
  });
  return [...turnChange(data, path, turn), ...standing, ...lasers, ...swappedSides(data, id, lengthReversed)];
}

function reversedObjects(data: unknown, { list, path, id }: Member, motion: Motion): readonly ObjectEdit[] {
  if (list !== 'tables') return [];
  const before = radiansOf(valueAt(data, [...path, 'turn']));
  return swappedObjects(data, id, nearer(before, movedAngle(motion, before)).lengthReversed);
}

/** A door, window or board follows only from wall to wall. */
function wallChanges(data: unknown, { path }: Member, motion: Motion): readonly Change[] | null {
  const outline = outlineOf(data);
  const [wall, at, width] = [
    Number(valueAt(data, [...path, 'wall'])),
    ...['at', 'width'].map((k) => metresOf(valueAt(data, [...path, k]))),
  ];
  const [a, b] = [outline[wall!], outline[(wall! + 1) % Math.max(1, outline.length)]];
  if (!a || !b || at == null || width == null) return null;
  const along = unit2(sub2(b, a));
  const ends = [at, at + width].map((d) => movedPoint(motion, [a[0] + along[0] * d, a[1] + along[1] * d]));
  const onto = wallOnto(outline, ends[0]!, ends[1]!);
  if (!onto) return null;
  const changes: Change[] = [];
  if (onto.wall !== wall) changes.push([[...path, 'wall'], onto.wall]);
  if (Math.abs(onto.at - at) > exactly / 2)
    changes.push([
      [...path, 'at'],
      lengthTo(valueAt(data, [...path, 'at']), onto.at, isSquare(motion) ? exactly : closely),
    ]);
  if (motion.mirrored && path.includes('doors'))
    changes.push([[...path, 'hinge'], valueAt(data, [...path, 'hinge']) === 'right' ? 'left' : 'right']);
  return changes;
}
