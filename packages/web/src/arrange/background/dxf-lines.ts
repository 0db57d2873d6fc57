import type { Vec2 } from '@cloche/engine';

/** What a line drawing holds, in its own units: the outline of closed lines apart. */
export interface LineDrawing {
  readonly lines: readonly (readonly Vec2[])[];
  /** Closed lines of at least three corners, each without its first corner again. */
  readonly closed: readonly (readonly Vec2[])[];
  readonly min: Vec2;
  readonly max: Vec2;
  /** Metres in a unit, where the file tells it. */
  readonly metres: number | null;
  /** Kinds of things that are not drawn, with their number. */
  readonly leftOut: Readonly<Record<string, number>>;
}

export type DxfProblem = 'unreadable' | 'empty' | 'too-large';

/** A drawing of a room has a few thousand points; more than this would make the sheet slow. */
export const mostPoints = 200_000;
/** Blocks within blocks deeper than this are a fault of the file. */
const deepest = 8;
/** An arc is drawn in steps of this angle [rad]. */
const arcStep = Math.PI / 24;

/** Entities as the reader of the file gives them: only what is used here. */
interface Entity {
  readonly type: string;
  readonly vertices?: readonly { readonly x: number; readonly y: number; readonly bulge?: number }[];
  readonly shape?: boolean;
  readonly center?: { readonly x: number; readonly y: number };
  readonly radius?: number;
  readonly startAngle?: number;
  readonly endAngle?: number;
  readonly majorAxisEndPoint?: { readonly x: number; readonly y: number };
  readonly axisRatio?: number;
  readonly name?: string;
  readonly position?: { readonly x: number; readonly y: number };
  readonly xScale?: number;
  readonly yScale?: number;
  readonly rotation?: number;
  readonly extrusionDirection?: { readonly z: number };
  readonly extrusionDirectionZ?: number;
  readonly inPaperSpace?: boolean;
}

export interface DxfContent {
  readonly entities?: readonly Entity[];
  readonly blocks?: Readonly<
    Record<
      string,
      { readonly position?: { readonly x: number; readonly y: number }; readonly entities?: readonly Entity[] }
    >
  >;
  readonly header?: Readonly<Record<string, unknown>>;
}

/** Metres in a drawing unit by $INSUNITS (DXF reference, header variables; from memory). */
const unitMetres: Readonly<Record<number, number>> = {
  1: 0.0254,
  2: 0.3048,
  4: 1e-3,
  5: 1e-2,
  6: 1,
  10: 0.9144,
  14: 0.1,
};

type Place = (p: Vec2) => Vec2;

/** All lines of a drawing, with arcs in short steps and blocks put in place. */
export function lineDrawing(content: DxfContent): LineDrawing | DxfProblem {
  const lines: (readonly Vec2[])[] = [];
  const closed: (readonly Vec2[])[] = [];
  const leftOut: Record<string, number> = {};
  let points = 0;
  const add = (line: readonly Vec2[], isClosed: boolean, place: Place): void => {
    const placed = line.map(place).filter(([x, y]) => Number.isFinite(x) && Number.isFinite(y));
    points += placed.length;
    if (placed.length < 2) return;
    const ring = isClosed ? withoutRepeated(placed) : placed;
    if (isClosed && ring.length > 2) closed.push(ring);
    lines.push(isClosed ? [...ring, ring[0]!] : placed);
  };
  const walk = (entities: readonly Entity[], place: Place, depth: number): void => {
    for (const entity of entities) {
      if (points > mostPoints) return;
      if (entity.inPaperSpace) continue;
      const line = lineOf(entity);
      if (line) add(line.points, line.closed, mirroredBack(entity, place));
      else if (entity.type === 'INSERT' && depth < deepest) {
        const block = content.blocks?.[entity.name ?? ''];
        if (block) walk(block.entities ?? [], inserted(entity, block.position, place), depth + 1);
      } else leftOut[entity.type] = (leftOut[entity.type] ?? 0) + 1;
    }
  };
  walk(content.entities ?? [], (p) => p, 0);
  if (points > mostPoints) return 'too-large';
  if (lines.length === 0) return 'empty';
  const [min, max] = extent(lines);
  const unit = unitMetres[Number(content.header?.['$INSUNITS'])] ?? null;
  return { lines, closed, min, max, metres: unit, leftOut };
}

function extent(lines: readonly (readonly Vec2[])[]): readonly [Vec2, Vec2] {
  let [x0, y0, x1, y1] = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  for (const line of lines)
    for (const [x, y] of line) {
      x0 = Math.min(x0, x);
      y0 = Math.min(y0, y);
      x1 = Math.max(x1, x);
      y1 = Math.max(y1, y);
    }
  return [
    [x0, y0],
    [x1, y1],
  ];
}

/** An extrusion that looks down mirrors the drawing (arbitrary axis algorithm for (0, 0, -1); DXF reference, from memory). */
const mirroredBack = ({ extrusionDirection, extrusionDirectionZ }: Entity, place: Place): Place =>
  (extrusionDirection?.z ?? extrusionDirectionZ ?? 1) < 0 ? ([x, y]) => place([-x, y]) : place;

function inserted(entity: Entity, base: { readonly x: number; readonly y: number } | undefined, place: Place): Place {
  const angle = ((entity.rotation ?? 0) * Math.PI) / 180;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const [kx, ky] = [entity.xScale ?? 1, entity.yScale ?? 1];
  return ([x, y]) => {
    const [u, v] = [(x - (base?.x ?? 0)) * kx, (y - (base?.y ?? 0)) * ky];
    return place([(entity.position?.x ?? 0) + u * c - v * s, (entity.position?.y ?? 0) + u * s + v * c]);
  };
}

interface Line {
  readonly points: readonly Vec2[];
  readonly closed: boolean;
}

function lineOf(entity: Entity): Line | null {
  const { type, vertices = [], center, radius = 0 } = entity;
  if (type === 'LINE') return { points: vertices.map(({ x, y }): Vec2 => [x, y]), closed: false };
  if (type === 'LWPOLYLINE' || type === 'POLYLINE') return polyline(vertices, entity.shape === true);
  if (type === 'CIRCLE' && center) return { points: arc(center, radius, 0, 2 * Math.PI), closed: true };
  if (type === 'ARC' && center) {
    const [start, end] = [entity.startAngle ?? 0, entity.endAngle ?? 2 * Math.PI];
    return { points: arc(center, radius, start, end <= start ? end + 2 * Math.PI : end), closed: false };
  }
  if (type === 'ELLIPSE' && center && entity.majorAxisEndPoint)
    return ellipse(entity, center, entity.majorAxisEndPoint);
  return null;
}

function arc(
  center: { readonly x: number; readonly y: number },
  radius: number,
  start: number,
  end: number,
): readonly Vec2[] {
  const steps = Math.max(1, Math.ceil(Math.abs(end - start) / arcStep));
  return Array.from({ length: steps + 1 }, (_, i): Vec2 => {
    const angle = start + ((end - start) * i) / steps;
    return [center.x + radius * Math.cos(angle), center.y + radius * Math.sin(angle)];
  });
}

function ellipse(
  entity: Entity,
  center: { readonly x: number; readonly y: number },
  major: { readonly x: number; readonly y: number },
): Line {
  const [start, end] = [entity.startAngle ?? 0, entity.endAngle ?? 2 * Math.PI];
  const last = end <= start ? end + 2 * Math.PI : end;
  const ratio = entity.axisRatio ?? 1;
  const points = arc({ x: 0, y: 0 }, 1, start, last).map(
    ([u, v]): Vec2 => [center.x + major.x * u - major.y * ratio * v, center.y + major.y * u + major.x * ratio * v],
  );
  return { points, closed: last - start >= 2 * Math.PI - 1e-9 };
}

type Vertex = NonNullable<Entity['vertices']>[number];

function polyline(vertices: readonly Vertex[], closed: boolean): Line {
  const points = vertices.flatMap((from, i): readonly Vec2[] => {
    const to = vertices[(i + 1) % vertices.length]!;
    const last = i === vertices.length - 1 && !closed;
    return last || !from.bulge ? [[from.x, from.y]] : bulged(from, to, from.bulge);
  });
  const ends =
    points.length > 3 && Math.hypot(points[0]![0] - points.at(-1)![0], points[0]![1] - points.at(-1)![1]) < 1e-9;
  return { points, closed: closed || ends };
}

/** From one corner toward the next along an arc; the bulge is the tangent of a quarter of its angle, positive to the left. */
function bulged(from: Vertex, to: Vertex, bulge: number): readonly Vec2[] {
  const sweep = 4 * Math.atan(bulge);
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const chord = Math.hypot(dx, dy);
  if (chord < 1e-12) return [[from.x, from.y]];
  const lift = (1 - bulge * bulge) / (4 * bulge);
  const center = { x: from.x + dx / 2 - dy * lift, y: from.y + dy / 2 + dx * lift };
  const start = Math.atan2(from.y - center.y, from.x - center.x);
  return arc(center, Math.hypot(from.x - center.x, from.y - center.y), start, start + sweep).slice(0, -1);
}

/** Corners that repeat, and those in the middle of a straight line, tell nothing. */
function withoutRepeated(points: readonly Vec2[]): readonly Vec2[] {
  const distinct = points.filter((p, i) => {
    const next = points[(i + 1) % points.length]!;
    return Math.hypot(p[0] - next[0], p[1] - next[1]) > 1e-9;
  });
  return distinct.filter((p, i) => {
    const a = distinct[(i + distinct.length - 1) % distinct.length]!;
    const b = distinct[(i + 1) % distinct.length]!;
    const cross = (p[0] - a[0]) * (b[1] - p[1]) - (p[1] - a[1]) * (b[0] - p[0]);
    return Math.abs(cross) > 1e-9 * Math.hypot(p[0] - a[0], p[1] - a[1]) * Math.hypot(b[0] - p[0], b[1] - p[1]);
  });
}
