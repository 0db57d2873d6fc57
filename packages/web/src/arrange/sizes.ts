import { distance2, dot2, sub2, unit2, type Vec2 } from '@cloche/engine';
import type { Change } from '../brief/document.js';
import { pathOfThing } from '../brief/find.js';
import { metresOf } from '../brief/lengths.js';
import { type Path, valueAt } from '../brief/path.js';
import type { Design } from '../engine/contract.js';
import { toWall } from '../plan/clearances.js';
import { arrangeTexts as say } from '../texts/arrange.js';
import { closely, lengthTo } from './exact.js';

/** A dimension of the thing in hand, drawn in the plan, and what typing it changes in the brief. */
export interface SizeLine {
  readonly key: string;
  readonly label: string;
  readonly from: Vec2;
  readonly to: Vec2;
  /** Unit vector to the side on which the dimension stands; null where it stands on its own line. */
  readonly away: Vec2 | null;
  /** 0 beside the thing, 1 one line further: where numbers would stand on each other. */
  readonly row: number;
  readonly metres: number;
  /** Empty for a length that cannot be. */
  readonly put: (metres: number) => readonly Change[];
}

/** Writes a length into the brief; `written` is what the typed length means there. */
const putAt =
  (data: unknown, path: Path, least: number, written: (metres: number) => number = (metres) => metres) =>
  (metres: number): readonly Change[] => {
    const value = written(metres);
    return value < least - 1e-9 ? [] : [[path, lengthTo(valueAt(data, path) ?? '0 m', Math.max(0, value), closely)]];
  };

/** Shorter than this nothing is made [m]. */
const shortest = 1e-3;

/** Lengths of the thing in hand that its drawing shows and the brief holds. */
export function sizeLines(data: unknown, design: Design, id: string): readonly SizeLine[] {
  const path = pathOfThing(data, id);
  if (!path) return [];
  const { room } = design;
  const opening = [...room.doors, ...room.windows, ...room.boards].find((each) => each.id === id);
  if (opening) return openingLines(data, design, path, opening);
  const enclosure = design.enclosures.find((each) => each.id === id);
  if (enclosure) return gapLines(data, design, path, enclosure);
  const table = design.tables.find((each) => each.id === id);
  if (table)
    return footprint(data, room, id, table.outline, [
      [...path, 'length'],
      [...path, 'width'],
    ]);
  const solid = [
    ...design.tables.flatMap((t) => t.equipment),
    ...design.equipment,
    ...room.columns,
    ...room.obstructions,
  ].find((each) => each.id === id);
  return solid
    ? footprint(data, room, id, solid.outline, [
        [...path, 'size', 0],
        [...path, 'size', 1],
      ])
    : [];
}

/** Length and width of a rectangle; each dimension stands outside it, on the side where more room is. */
function footprint(
  data: unknown,
  room: Design['room'],
  id: string,
  ring: readonly Vec2[],
  paths: readonly [Path, Path],
): readonly SizeLine[] {
  const [a, b, c, d] = ring;
  if (ring.length !== 4 || !a || !b || !c || !d) return [];
  const free = (from: Vec2, to: Vec2, away: Vec2): number =>
    toWall(room.outline, [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2], away) ?? 0;
  const line = (
    k: 0 | 1,
    one: readonly [Vec2, Vec2],
    other: readonly [Vec2, Vec2],
    away: Vec2,
  ): readonly SizeLine[] => {
    const metres = metresOf(valueAt(data, paths[k]));
    if (metres === null) return [];
    const label = k === 0 ? say.lengthOf(id) : say.widthOf(id);
    const back: Vec2 = [-away[0], -away[1]];
    const roomier = free(...other, back) > free(...one, away) + closely;
    const [from, to] = roomier ? other : one;
    const put = putAt(data, paths[k], shortest);
    return [{ key: `${id} size ${k}`, label, from, to, away: roomier ? back : away, row: 0, metres, put }];
  };
  return [...line(0, [a, b], [c, d], unit2(sub2(b, c))), ...line(1, [b, c], [d, a], unit2(sub2(b, a)))];
}

type Opening = Design['room']['windows'][number];

/** A door lies between the corners of its wall: how far from both, and how wide. */
function openingLines(data: unknown, { room }: Design, path: Path, opening: Opening): readonly SizeLine[] {
  const { outline } = room;
  const [a, b] = [outline[opening.wall], outline[(opening.wall + 1) % outline.length]];
  if (!a || !b) return [];
  const ends = [opening.from, opening.to].sort((p, q) => distance2(a, p) - distance2(a, q));
  const [near, far] = [ends[0]!, ends[1]!];
  const [wall, width] = [distance2(a, b), distance2(near, far)];
  const at: Path = [...path, 'at'];
  const line = (key: string, label: string, from: Vec2, to: Vec2, put: SizeLine['put']): readonly SizeLine[] =>
    distance2(from, to) < shortest
      ? []
      : [
          {
            key: `${opening.id} ${key}`,
            label,
            from,
            to,
            away: opening.inward,
            row: key === 'width' ? 1 : 0,
            metres: distance2(from, to),
            put,
          },
        ];
  return [
    ...line('start', say.fromStart(opening.id), a, near, putAt(data, at, 0)),
    ...line('width', say.openingWidth(opening.id), near, far, putAt(data, [...path, 'width'], shortest)),
    ...line(
      'end',
      say.fromEnd(opening.id),
      far,
      b,
      putAt(data, at, 0, (metres) => wall - width - metres),
    ),
  ];
}

/** Clear distances from the tables to the frame, side by side. */
function gapLines(
  data: unknown,
  design: Design,
  path: Path,
  enclosure: Design['enclosures'][number],
): readonly SizeLine[] {
  const { id, centre, sides, tables } = enclosure;
  const corners = design.tables.filter((table) => tables.includes(table.id)).flatMap(({ outline }) => outline);
  return sides.flatMap(({ name, from: a, to: b }): readonly SizeLine[] => {
    if (distance2(a, b) < shortest || corners.length === 0) return [];
    const along = unit2(sub2(b, a));
    const middle: Vec2 = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const left: Vec2 = [-along[1], along[0]];
    const into = dot2(left, sub2(centre, middle)) > 0 ? left : ([-left[0], -left[1]] as const);
    const metres = Math.min(...corners.map((corner) => dot2(sub2(corner, a), into)));
    if (metres < shortest) return [];
    const to: Vec2 = [middle[0] + into[0] * metres, middle[1] + into[1] * metres];
    const put = putAt(data, [...path, 'gaps', name], shortest);
    return [
      { key: `${id} ${name}`, label: say.gapAt(id, say.ways[name]), from: middle, to, away: null, row: 0, metres, put },
    ];
  });
}
