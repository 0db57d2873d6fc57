import { bounds, edges, type Ring, signedArea, type Vec2 } from '@cloche/engine';
import type { Design } from '../../engine/contract.js';
import { drawingTexts } from '../../texts/drawing.js';
import type { Units } from '../length-text.js';
import type { Gap, SnapEdge, SnapField, Spot } from './types.js';
import { inwardNormals, wallNames } from './wall-names.js';

const { snap: say } = drawingTexts;

/** Widths of clear ways that are often wanted beside a wall or a table [m]. Source: common practice. */
const usualOffsets: Readonly<Record<Units, readonly number[]>> = {
  metric: [0.6, 0.9, 1.2],
  imperial: [24 * 0.0254, 36 * 0.0254, 48 * 0.0254],
};

const middle = (a: Vec2, b: Vec2): Vec2 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

/** What goes along when things are moved: what stands on a table, what is built round it, covers and signs on a door. */
function carriedBy(design: Design, without: readonly string[]): ReadonlySet<string> {
  const moved = new Set(without);
  for (const table of design.tables) if (moved.has(table.id)) for (const { id } of table.equipment) moved.add(id);
  for (const laser of design.lasers) if (laser.table !== null && moved.has(laser.table)) moved.add(laser.id);
  for (const each of design.enclosures) if (each.tables.some((id) => moved.has(id))) moved.add(each.id);
  for (const run of design.runs) if (run.on !== null && moved.has(run.on)) moved.add(run.id);
  for (const device of design.devices) if (moved.has(device.on)) moved.add(device.id);
  return moved;
}

/** An outline with corners, middles of its edges and its own middle. */
function solid(of: string, ring: Ring): { readonly spots: readonly Spot[]; readonly edges: readonly SnapEdge[] } {
  const { min, max } = bounds(ring);
  // A round column is a ring of many short edges: only its middle and its box are of use.
  const round = ring.length > 12;
  const sign = signedArea(ring) < 0 ? -1 : 1;
  const own: Spot = { at: middle(min, max), kind: 'middle', text: say.middle(of), of };
  if (round) return { spots: [own], edges: boxEdges(of, min, max) };
  return {
    spots: [
      own,
      ...edges(ring).flatMap(({ from, to }): Spot[] => [
        { at: from, kind: 'end', text: say.corner(of), of },
        { at: middle(from, to), kind: 'middle', text: say.middle(of), of },
      ]),
    ],
    edges: edges(ring).flatMap(({ from, to }): SnapEdge[] => {
      const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
      const length = Math.hypot(dx, dy);
      if (length < 1e-9) return [];
      return [{ from, to, of, wall: false, free: [(dy / length) * sign, (-dx / length) * sign] }];
    }),
  };
}

const boxEdges = (of: string, a: Vec2, b: Vec2): readonly SnapEdge[] => [
  { from: a, to: [b[0], a[1]], of, wall: false, free: [0, -1] },
  { from: [b[0], a[1]], to: b, of, wall: false, free: [1, 0] },
  { from: b, to: [a[0], b[1]], of, wall: false, free: [0, 1] },
  { from: [a[0], b[1]], to: a, of, wall: false, free: [-1, 0] },
];

/** A line of track or beam; a corner that is in hand, with the legs that end in it, is left out. */
function polyline(of: string, points: readonly Vec2[], closed: boolean, held: ReadonlySet<number>) {
  const legs = points.flatMap((from, i) => {
    const j = (i + 1) % points.length;
    const last = i === points.length - 1;
    return (last && !closed) || held.has(i) || held.has(j) ? [] : [{ from, to: points[j]! }];
  });
  return {
    spots: [
      ...points.flatMap((at, i): Spot[] => (held.has(i) ? [] : [{ at, kind: 'end', text: say.corner(of), of }])),
      ...legs.map(({ from, to }): Spot => ({ at: middle(from, to), kind: 'middle', text: say.middle(of), of })),
    ],
    edges: legs.map(({ from, to }): SnapEdge => ({ from, to, of, wall: false, free: null })),
  };
}

/** Corners of a thing that are moved by themselves: `run-1#2`. */
const heldCorners = (id: string, without: readonly string[]): ReadonlySet<number> =>
  new Set(without.flatMap((each) => (each.startsWith(`${id}#`) ? [Number(each.slice(id.length + 1))] : [])));

/**
 * Everything that may be snapped to, for one drag.
 * @param without what is moved itself, with all that it carries; `run-1#2` leaves out one corner, `room` the walls
 */
export function snapField(design: Design, without: readonly string[], units: Units = 'metric'): SnapField {
  const { room } = design;
  const moved = carriedBy(design, without);
  const stays = ({ id }: { readonly id: string }) => !moved.has(id);
  const boxed = [
    ...design.tables,
    ...design.enclosures,
    ...design.equipment,
    ...room.columns,
    ...room.obstructions,
  ].filter(stays);
  const rings = [...boxed, ...design.tables.flatMap((t) => t.equipment).filter(stays), ...room.beams.filter(stays)];
  const solids = rings.map(({ id, outline }) => solid(id, outline));
  const lines = [
    ...design.runs.filter(stays).map((run) => polyline(run.id, run.corners, run.closed, heldCorners(run.id, without))),
    ...design.lasers.filter(stays).map((laser) =>
      polyline(
        laser.id,
        laser.path.map(([x, y]): Vec2 => [x, y]),
        false,
        heldCorners(laser.id, without),
      ),
    ),
  ];
  const inWalls = [...room.doors, ...room.windows, ...room.boards].filter(stays).flatMap(({ id, from, to }): Spot[] => [
    { at: from, kind: 'end', text: say.end(id), of: id },
    { at: to, kind: 'end', text: say.end(id), of: id },
    { at: middle(from, to), kind: 'middle', text: say.middle(id), of: id },
  ]);
  const points = [
    ...room.sprinklers,
    ...room.detectors,
    ...room.exitSigns,
    ...room.airTerminals,
    ...room.luminaires,
    ...design.devices.map(({ id, at }) => ({ id, at: [at[0], at[1]] as const })),
  ]
    .filter(stays)
    .map(({ id, at }): Spot => ({ at, kind: 'middle', text: say.middle(id), of: id }));
  const walls = without.includes('room') ? { spots: [], edges: [] } : wallsOf(room.outline);
  const faces = [...walls.edges, ...solids.flatMap((s) => s.edges)];
  return {
    units,
    offsets: usualOffsets[units],
    spots: [...walls.spots, ...solids.flatMap((s) => s.spots), ...lines.flatMap((s) => s.spots), ...inWalls, ...points],
    edges: [...faces, ...lines.flatMap((s) => s.edges)],
    boxes: boxed.map(({ id, outline }) => ({ of: id, ring: outline })),
    gaps: gapsBetween(faces),
  };
}

function wallsOf(outline: Ring): { readonly spots: readonly Spot[]; readonly edges: readonly SnapEdge[] } {
  const [names, normals] = [wallNames(outline), inwardNormals(outline)];
  return {
    spots: edges(outline).flatMap(({ from, to }, i): Spot[] => [
      { at: from, kind: 'end', text: say.end(names[i]!), of: names[i]! },
      { at: middle(from, to), kind: 'middle', text: say.middle(names[i]!), of: names[i]! },
    ]),
    edges: edges(outline).map(
      ({ from, to }, i): SnapEdge => ({ from, to, of: names[i]!, wall: true, free: normals[i]! }),
    ),
  };
}

/** An edge that runs straight east or north, as a face looking along the other direction. */
export interface Face {
  readonly axis: 0 | 1;
  readonly at: number;
  readonly span: readonly [number, number];
  readonly looks: 1 | -1;
  readonly of: string;
  readonly wall: boolean;
}

export function facesOf(all: readonly SnapEdge[]): readonly Face[] {
  return all.flatMap(({ from, to, free, of, wall }): Face[] => {
    if (!free) return [];
    const axis = Math.abs(free[0]) > 1 - 1e-9 ? 0 : Math.abs(free[1]) > 1 - 1e-9 ? 1 : null;
    if (axis === null) return [];
    const other = axis === 0 ? 1 : 0;
    const span = [Math.min(from[other], to[other]), Math.max(from[other], to[other])] as const;
    return [{ axis, at: from[axis], span, looks: free[axis] > 0 ? 1 : -1, of, wall }];
  });
}

/** True when two stretches share more than a point. */
export const overlap = (a: readonly [number, number], b: readonly [number, number]): boolean =>
  Math.min(a[1], b[1]) - Math.max(a[0], b[0]) > 1e-6;

/** Gaps narrower than this are not free widths that anyone would repeat [m]. */
const leastGap = 0.05;

/** From each face to the next one that looks back at it; two walls leave no gap but a room. */
function gapsBetween(all: readonly SnapEdge[]): readonly Gap[] {
  const faces = facesOf(all);
  const backs = faces.filter((face) => face.looks < 0);
  return faces
    .filter((face) => face.looks > 0)
    .flatMap((face): Gap[] => {
      const next = backs
        .filter((b) => b.axis === face.axis && b.at > face.at && overlap(b.span, face.span))
        .reduce<Face | null>((best, b) => (!best || b.at < best.at ? b : best), null);
      if (!next || (next.wall && face.wall) || next.of === face.of || next.at - face.at < leastGap) return [];
      return [{ axis: face.axis, size: next.at - face.at, between: [face.of, next.of] }];
    });
}
