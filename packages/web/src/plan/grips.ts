import type { Vec2 } from '@cloche/engine';
import { parseQuantity } from '@cloche/engine';
import type { Change } from '../brief/document.js';
import { pathOfThing } from '../brief/find.js';
import { lengthLike, metresOf, snapped } from '../brief/lengths.js';
import { listAt, type Path, valueAt } from '../brief/path.js';

/** One length of the brief, and which way the thing goes in the room when it grows. */
interface Handle {
  readonly path: Path;
  readonly written: unknown;
  readonly metres: number;
  readonly along: Vec2;
}

/** A point (two lengths) or a place on a wall (one). */
type Spot = readonly Handle[];

/** Lists whose entries stand in the room by a place of their own. */
const inRoom = new Set([
  'tables',
  'equipment',
  'columns',
  'obstructions',
  'sprinklers',
  'detectors',
  'exitSigns',
  'stops',
  'sensors',
  'luminaires',
  'airTerminals',
]);
const onWalls = new Set(['doors', 'windows', 'boards']);

/** Part of a thing that is moved by itself: `run-1#2` is the third corner of its path. */
export const cornerId = (id: string, corner: number): string => `${id}#${corner}`;

/** What the brief says about where a thing stands; empty for what is placed by something else. */
export function gripOf(data: unknown, thing: string): readonly Spot[] {
  const [id = '', corner] = thing.split('#');
  const path = pathOfThing(data, id);
  if (!path) return [];
  const spots = spotsOf(data, path);
  if (corner === undefined) return spots;
  const one = spots[Number(corner)];
  return one ? [one, ...squareWith(data, path, spots, Number(corner))] : [];
}

/** Legs that run straight east or north stay so when a corner between them is moved: their other ends go along in one direction. */
function squareWith(data: unknown, path: Path, spots: readonly Spot[], corner: number): readonly Spot[] {
  if (!path.includes('runs') || spots.length < 3) return [];
  const closed = valueAt(data, [...path, 'closed']) === true;
  const here = spots[corner]!;
  return [corner - 1, corner + 1].flatMap((i) => {
    const there = closed ? spots[(i + spots.length) % spots.length] : spots[i];
    const shared = (there ?? []).filter((h, k) => Math.abs(h.metres - here[k]!.metres) < 1e-6);
    return shared.length === 1 ? [shared] : [];
  });
}

function spotsOf(data: unknown, path: Path): readonly Spot[] {
  const list = String([...path].reverse().find((step) => typeof step === 'string'));
  const onTable = path.length > 2 && path[0] === 'tables';
  if (onTable) return spotAt(data, [...path, 'at'], turnOf(data, ['tables', path[1]!]));
  if (inRoom.has(list)) return spotAt(data, [...path, 'at'], 0);
  if (onWalls.has(list)) return wallSpot(data, path);
  if (list === 'beams') return ['from', 'to'].flatMap((end) => spotAt(data, [...path, end], 0));
  if (list === 'runs') return listAt(data, [...path, 'path']).flatMap((_, i) => spotAt(data, [...path, 'path', i], 0));
  if (list === 'lasers') return laserSpots(data, path);
  if (list === 'enclosures')
    return listAt(data, [...path, 'around']).flatMap((table) => {
      const where = pathOfThing(data, String(table));
      return where ? spotsOf(data, where) : [];
    });
  return [];
}

function spotAt(data: unknown, path: Path, turn: number): readonly Spot[] {
  const axes: readonly Vec2[] = [
    [Math.cos(turn), Math.sin(turn)],
    [-Math.sin(turn), Math.cos(turn)],
  ];
  const spot = axes.flatMap((along, i) => handle(data, [...path, i], along));
  return spot.length === 2 ? [spot] : [];
}

function handle(data: unknown, path: Path, along: Vec2): readonly Handle[] {
  const written = valueAt(data, path);
  const metres = metresOf(written);
  return metres === null ? [] : [{ path, written, metres, along }];
}

function turnOf(data: unknown, path: Path): number {
  const written = valueAt(data, [...path, 'turn']);
  const read = typeof written === 'string' ? parseQuantity(written, 'angle') : undefined;
  return read?.ok ? read.value : 0;
}

/** The beam goes with its source: all points of its way, measured on its table or in the room. */
function laserSpots(data: unknown, path: Path): readonly Spot[] {
  const table = pathOfThing(data, String(valueAt(data, [...path, 'table'])));
  const turn = table ? turnOf(data, table) : 0;
  const legs = listAt(data, [...path, 'legs']).map((_, i): Path => [...path, 'legs', i, 'to']);
  return [[...path, 'at'], ...legs].flatMap((point) => spotAt(data, point, turn));
}

function wallSpot(data: unknown, path: Path): readonly Spot[] {
  const outline = listAt(data, ['room', 'outline']);
  const wall = Number(valueAt(data, [...path, 'wall']));
  const corner = (i: number) => [0, 1].map((k) => metresOf(valueAt(outline, [i, k])) ?? 0);
  const [a, b] = [corner(wall), corner((wall + 1) % Math.max(1, outline.length))];
  const [dx, dy] = [b[0]! - a[0]!, b[1]! - a[1]!];
  const length = Math.hypot(dx, dy);
  const spot = length === 0 ? [] : handle(data, [...path, 'at'], [dx / length, dy / length]);
  return spot.length === 1 ? [spot] : [];
}

const dot = (a: Vec2, b: Vec2): number => a[0] * b[0] + a[1] * b[1];

/** Changes of the brief that move a grip by a distance in the room; the first point comes to rest on whole steps. */
export function movedGrip(grip: readonly Spot[], by: Vec2, snap: boolean): readonly Change[] {
  const first = grip[0] ?? [];
  const shift = first.map(({ metres, written, along }) => {
    const to = metres + dot(by, along);
    return (snap ? snapped(written, to) : to) - metres;
  });
  const whole: Vec2 = [0, 1].map((k) =>
    first.reduce((sum, h, i) => sum + shift[i]! * h.along[k]!, 0),
  ) as unknown as Vec2;
  return grip.flatMap((spot) =>
    spot.map(({ path, written, metres, along }): Change => [path, lengthLike(written, metres + dot(whole, along))]),
  );
}

/** How far a grip was moved between two states of the brief; null when its points went different ways, or it is not the same. */
export function shiftBetween(before: readonly Spot[], now: readonly Spot[]): Vec2 | null {
  if (before.length === 0 || before.length !== now.length) return null;
  const shifts = now.map((spot, i): Vec2 => {
    const was = before[i]!;
    const sum = (k: 0 | 1) => spot.reduce((s, h, j) => s + (h.metres - (was[j]?.metres ?? h.metres)) * h.along[k], 0);
    return [sum(0), sum(1)];
  });
  const [first] = shifts;
  const same = shifts.every((s) => Math.hypot(s[0] - first![0], s[1] - first![1]) < 1e-6);
  return same ? first! : null;
}

/** The table that carries a laser or a piece of equipment, whose moves it shares. */
export function carrierOf(data: unknown, id: string): string | null {
  const path = pathOfThing(data, id);
  if (!path) return null;
  const table =
    path[0] === 'lasers'
      ? valueAt(data, [...path, 'table'])
      : path.length > 2 && path[0] === 'tables'
        ? valueAt(data, ['tables', path[1]!, 'id'])
        : null;
  return typeof table === 'string' ? table : null;
}
