import { contains, edges, type Ring, rectangle } from '../floor/geometry/polygon.js';
import { add2, cross2, dot2, left2, scale2, sub2, turn2, type Vec2 } from '../floor/geometry/vec.js';
import { numberText } from '../floor/number-text.js';
import { type Problem, problem } from '../floor/problem.js';
import type { Path } from '../reading/path.js';
import { lengthTolerance } from './check-room.js';
import type { Brief, BriefEnclosure, BriefTable } from './schema.js';

interface Place {
  readonly what: string;
  readonly path: Path;
  /** Corners in plan; one for a point. */
  readonly ring: Ring;
}

/** Things that stand outside the room or through its walls. */
export function placeProblems(brief: Brief): Problem[] {
  const { outline } = brief.room;
  return [...solids(brief), ...enclosures(brief), ...points(brief)].flatMap(({ what, path, ring }) => {
    const out = ring.find((corner) => !contains(outline, corner, lengthTolerance));
    if (!out && !crossesWall(outline, ring)) return [];
    const where = out ? `its point (${out.map((v) => `${numberText(v, 5)} m`).join(', ')})` : 'a part of it';
    return [
      problem(
        'brief/outside-room',
        path,
        `The ${what} is not wholly inside the room: ${ring.length === 1 ? 'its place' : where} lies outside.`,
        'Check its place and size; places are measured from the origin of the outline, x east, y north.',
      ),
    ];
  });
}

/** True when a wall runs through the inside of the ring although all corners of the ring are inside the room. */
function crossesWall(outline: Ring, ring: Ring): boolean {
  if (ring.length < 3) return false;
  const strictlyInside = (p: Vec2) =>
    edges(ring).every(({ from, to }) => cross2(sub2(to, from), sub2(p, from)) > lengthTolerance);
  const crossing = (a: Vec2, b: Vec2, c: Vec2, d: Vec2) => {
    const side = (p: Vec2, q: Vec2, r: Vec2) => {
      const s = cross2(sub2(q, p), sub2(r, p));
      return Math.abs(s) <= lengthTolerance ? 0 : Math.sign(s);
    };
    return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
  };
  return (
    outline.some(strictlyInside) ||
    edges(outline).some((wall) => edges(ring).some((edge) => crossing(wall.from, wall.to, edge.from, edge.to)))
  );
}

const tableRing = ({ at, length, width, turn = 0 }: BriefTable): Ring => rectangle(at, length, width, turn);

function solids(brief: Brief): Place[] {
  const { columns = [], obstructions = [] } = brief.room;
  return [
    ...columns.map(({ id, at, size, diameter = 0, turn = 0 }, i) => ({
      what: `column ${id}`,
      path: ['room', 'columns', i, 'at'],
      ring: rectangle(at, size?.[0] ?? diameter, size?.[1] ?? diameter, turn),
    })),
    ...obstructions.map(({ id, at, size, turn = 0 }, i) => ({
      what: `obstruction ${id}`,
      path: ['room', 'obstructions', i, 'at'],
      ring: rectangle(at, size[0], size[1], turn),
    })),
    ...(brief.tables ?? []).map((table, i) => ({
      what: `table ${table.id}`,
      path: ['tables', i, 'at'],
      ring: tableRing(table),
    })),
    ...(brief.tables ?? []).flatMap((table, i) =>
      (table.equipment ?? []).map(({ id, at, size, turn = 0 }, j) => ({
        what: `equipment ${id}`,
        path: ['tables', i, 'equipment', j, 'at'],
        ring: rectangle(onTable(table, at), size[0], size[1], (table.turn ?? 0) + turn),
      })),
    ),
    ...(brief.equipment ?? []).map(({ id, at, size, turn = 0 }, i) => ({
      what: `equipment ${id}`,
      path: ['equipment', i, 'at'],
      ring: rectangle(at, size[0], size[1], turn),
    })),
  ];
}

const onTable = ({ at, turn = 0 }: BriefTable, place: Vec2): Vec2 => add2(at, turn2(place, turn));

/** The inside of each enclosure as far as the brief gives it: its tables and the clear distances that are written down. */
function enclosures(brief: Brief): Place[] {
  const tables = new Map((brief.tables ?? []).map((table) => [table.id, table]));
  return (brief.layout?.enclosures ?? []).flatMap((enclosure, i) => {
    const around = enclosure.around.flatMap((id) => tables.get(id) ?? []);
    if (around.length === 0) return [];
    const path = ['layout', 'enclosures', i];
    return [{ what: `enclosure ${enclosure.id}`, path, ring: insideOf(enclosure, around) }];
  });
}

/** Smallest rectangle along the first table's axes round all tables, widened by the clear distances. */
function insideOf({ gap = 0, gaps = {} }: BriefEnclosure, around: readonly BriefTable[]): Ring {
  const u = turn2([1, 0], around[0]!.turn ?? 0);
  const v = left2(u);
  const corners = around.flatMap(tableRing);
  const along = corners.map((corner) => dot2(corner, u));
  const across = corners.map((corner) => dot2(corner, v));
  const u0 = Math.min(...along) - (gaps.west ?? gap);
  const u1 = Math.max(...along) + (gaps.east ?? gap);
  const v0 = Math.min(...across) - (gaps.south ?? gap);
  const v1 = Math.max(...across) + (gaps.north ?? gap);
  const at = (a: number, b: number): Vec2 => add2(scale2(u, a), scale2(v, b));
  return [at(u0, v0), at(u1, v0), at(u1, v1), at(u0, v1)];
}

function points(brief: Brief): Place[] {
  const { room, layout = {} } = brief;
  const of = (kind: string, list: readonly { readonly id: string; readonly at: Vec2 }[] | undefined, ...path: Path) =>
    (list ?? []).map(({ id, at }, i) => ({ what: `${kind} ${id}`, path: [...path, i, 'at'], ring: [at] }));
  const free = (brief.lasers ?? []).flatMap((laser, i) =>
    laser.table === undefined ? [{ what: `laser ${laser.id}`, path: ['lasers', i, 'at'], ring: [laser.at] }] : [],
  );
  const corners = (layout.runs ?? []).flatMap(({ id, path }, i) =>
    path.map((at, j) => ({ what: `corner ${j} of run ${id}`, path: ['layout', 'runs', i, 'path', j], ring: [at] })),
  );
  return [
    ...of('sprinkler', room.sprinklers, 'room', 'sprinklers'),
    ...of('detector', room.detectors, 'room', 'detectors'),
    ...of('exit sign', room.exitSigns, 'room', 'exitSigns'),
    ...of('air terminal', room.airTerminals, 'room', 'airTerminals'),
    ...of('luminaire', room.luminaires, 'room', 'luminaires'),
    ...free,
    ...corners,
    ...of('stop', layout.stops, 'layout', 'stops'),
    ...of('sensor', layout.sensors, 'layout', 'sensors'),
  ];
}
