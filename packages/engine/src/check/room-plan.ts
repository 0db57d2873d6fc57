import type { SideName } from '../brief/schema.js';
import type { Design, DesignEnclosure, DesignRun } from '../design/types.js';
import { type Ring, rectangle } from '../floor/geometry/polygon.js';
import { between2, distance2, left2, scale2, sub2, unit2, type Vec2 } from '../floor/geometry/vec.js';
import type { Obstacle, StripSide } from '../room/index.js';

export type ThingKind = 'table' | 'enclosure' | 'run' | 'column' | 'obstruction' | 'equipment';

/** One thing that stands in the plan, as people and doors meet it. */
export interface PlanThing {
  readonly id: string;
  readonly name: string;
  readonly kind: ThingKind;
  readonly points: Ring;
  readonly line: boolean;
  readonly bottom: number;
  readonly top: number;
}

const solid = (
  kind: ThingKind,
  s: { readonly id: string; readonly name: string; readonly outline: Ring },
  bottom: number,
  top: number,
): PlanThing => ({
  id: s.id,
  name: s.name,
  kind,
  points: s.outline,
  line: false,
  bottom,
  top,
});

/** Line of a run, closed runs back to their first point. */
export function runLine(run: DesignRun): Ring {
  const first = run.line[0];
  const last = run.line.at(-1);
  return run.closed && first && last && distance2(first, last) > 1e-6 ? [...run.line, first] : run.line;
}

/** Everything that stands on or hangs down to the floor; shelf curtains stand on their table and are left out. */
export const planThings = (design: Design): PlanThing[] => [
  ...design.tables.map((t) => solid('table', t, 0, t.height)),
  ...design.enclosures.map((e) => solid('enclosure', e, 0, e.top)),
  ...design.room.columns.map((c) => solid('column', c, c.bottom, c.top)),
  ...design.room.obstructions.map((o) => solid('obstruction', o, o.bottom, o.top)),
  ...design.equipment.map((e) => solid('equipment', e, e.bottom, e.top)),
  ...design.runs
    .filter((r) => r.kind !== 'shelf')
    .map(
      (r): PlanThing => ({
        id: r.id,
        name: r.name,
        kind: 'run',
        points: runLine(r),
        line: true,
        bottom: r.hemGap,
        top: r.curtainTop,
      }),
    ),
];

/** The thing as obstacles: a ring, or the stretches of a curtain line. */
export const obstaclesOf = (thing: PlanThing): Obstacle[] =>
  thing.line
    ? thing.points.slice(1).map((to, i) => ({ id: thing.id, outline: [thing.points[i]!, to] }))
    : [{ id: thing.id, outline: thing.points }];

/** Curtain stretches between the marked openings, as lines. */
export function closedStretches(run: DesignRun): Obstacle[] {
  const line = runLine(run);
  const chords = line.slice(1).map((to, i) => ({ from: line[i]!, to, length: distance2(line[i]!, to) }));
  const total = chords.reduce((sum, c) => sum + c.length, 0);
  // Chords of bends are a little shorter than the path that openings are measured along.
  const scale = run.pathLength > 0 ? total / run.pathLength : 1;
  const cuts = run.openings
    .map((o) => [(o.at - o.width / 2) * scale, (o.at + o.width / 2) * scale] as const)
    .sort((p, q) => p[0] - q[0]);
  const stretches: (readonly [number, number])[] = [];
  let start = 0;
  for (const [low, high] of cuts) {
    stretches.push([start, low]);
    start = Math.max(start, high);
  }
  stretches.push([start, total]);
  return stretches
    .filter(([from, to]) => to - from > 1e-6)
    .map(([from, to]) => ({ id: run.id, outline: partOfLine(chords, from, to), open: true }));
}

/** The points of a line from one distance along it to another. */
function partOfLine(
  chords: readonly { readonly from: Vec2; readonly to: Vec2; readonly length: number }[],
  from: number,
  to: number,
): Ring {
  const points: Vec2[] = [];
  let start = 0;
  for (const c of chords) {
    const [a, b] = [Math.max(from, start) - start, Math.min(to, start + c.length) - start];
    if (b > a) {
      if (points.length === 0) points.push(between2(c.from, c.to, a / c.length));
      points.push(between2(c.from, c.to, b / c.length));
    }
    start += c.length;
  }
  return points;
}

interface Boxed {
  readonly id: string;
  readonly centre: Vec2;
  readonly length: number;
  readonly width: number;
  readonly turn: number;
}

const sideOrder: readonly SideName[] = ['south', 'east', 'north', 'west'];

/** The sides of a table or enclosure with the way out of it. */
export function sidesOf(thing: Boxed): Readonly<Record<SideName, StripSide>> {
  const ring = rectangle(thing.centre, thing.length, thing.width, thing.turn);
  const side = (name: SideName): StripSide => {
    const i = sideOrder.indexOf(name);
    const [from, to] = [ring[i]!, ring[(i + 1) % 4]!];
    return { id: thing.id, from, to, outward: scale2(left2(unit2(sub2(to, from))), -1) };
  };
  return { south: side('south'), east: side('east'), north: side('north'), west: side('west') };
}

/** The two longer sides; along the length when both are equal. */
export const longSides = (thing: Boxed): readonly SideName[] =>
  thing.length >= thing.width ? ['south', 'north'] : ['east', 'west'];

export const enclosureRound = (design: Design, table: string): DesignEnclosure | undefined =>
  design.enclosures.find((e) => e.tables.includes(table));

/** `south` for a direction within a degree of it; null for a slanting one. */
export function compassWord(direction: Vec2): SideName | null {
  const words: readonly (readonly [SideName, Vec2])[] = [
    ['south', [0, -1]],
    ['east', [1, 0]],
    ['north', [0, 1]],
    ['west', [-1, 0]],
  ];
  return words.find(([, v]) => direction[0] * v[0] + direction[1] * v[1] > Math.cos(Math.PI / 180))?.[0] ?? null;
}

/** The name of a thing for people; walls go by the way they face, because their numbers depend on how the room was walked. */
export function nameOf(design: Design, id: string): string {
  const wall = /^wall (\d+)$/.exec(id);
  if (wall) {
    const { outline } = design.room;
    const [from, to] = [outline[Number(wall[1])]!, outline[(Number(wall[1]) + 1) % outline.length]!];
    const word = compassWord(scale2(left2(unit2(sub2(to, from))), -1));
    return word ? `the ${word} wall` : 'a slanting wall';
  }
  const { room, tables, enclosures, runs, equipment } = design;
  const named = [...tables, ...enclosures, ...runs, ...equipment, ...room.columns, ...room.obstructions];
  return named.find((n) => n.id === id)?.name ?? id;
}
