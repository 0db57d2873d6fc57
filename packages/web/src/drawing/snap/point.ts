import { add2, cross2, distance2, dot2, scale2, sub2, unit2, type Vec2 } from '@cloche/engine';
import { drawingTexts } from '../../texts/drawing.js';
import { lengthText } from '../length-text.js';
import type { SnapEdge, SnapField, SnapKind, SnapOptions, Snapped, SnapReason, Spot } from './types.js';

const { snap: say } = drawingTexts;

/** A straight line that a point may come to rest on, between two distances from its start. */
interface Line {
  readonly kind: SnapKind;
  readonly text: string;
  readonly start: Vec2;
  readonly along: Vec2;
  readonly least: number;
  readonly most: number;
  /** Where its helper line is drawn from; none where the line is drawn already. */
  readonly from?: Vec2;
}

/** Of lines that are equally near, the firmer. */
const rank: Readonly<Record<SnapKind, number>> = {
  end: 0,
  middle: 1,
  wall: 2,
  angle: 3,
  axis: 4,
  extension: 5,
  offset: 6,
  grid: 7,
};

/** Where a pointer comes to rest: on a corner or middle, else where two lines cross, else on the nearest line, else on whole steps. */
export function snapPoint(field: SnapField, at: Vec2, options: SnapOptions): Snapped {
  if (options.free) return { at, reasons: [] };
  const on = (kind: SnapKind) => options.kinds?.has(kind) ?? true;
  const spot = nearestSpot(field, at, options.reach, on);
  if (spot) return { at: spot.at, reasons: [{ kind: spot.kind, text: spot.text }] };
  const lines = linesNear(field, at, options).filter(({ kind }) => on(kind));
  const [first] = lines;
  if (!first) return on('grid') ? onGrid(at, options) : { at, reasons: [] };
  const crossed = crossing(first, lines.slice(1), at, options.reach);
  if (crossed) return { at: crossed.at, reasons: [reasonOf(first), reasonOf(crossed.line)] };
  const foot = footOn(first, at);
  const stepped = on('grid') ? stepAlong(first, foot, options) : foot;
  return { at: distance2(stepped, at) <= options.reach ? stepped : foot, reasons: [reasonOf(first)] };
}

function nearestSpot(field: SnapField, at: Vec2, reach: number, on: (kind: SnapKind) => boolean): Spot | null {
  let best: Spot | null = null;
  let least = reach;
  for (const spot of field.spots) {
    const distance = distance2(spot.at, at);
    if (!on(spot.kind) || distance > least || (best && distance === least)) continue;
    [best, least] = [spot, distance];
  }
  return best;
}

const reasonOf = ({ kind, text, from }: Line): SnapReason => (from ? { kind, text, from } : { kind, text });

const footAt = (line: Line, at: Vec2): number =>
  Math.min(line.most, Math.max(line.least, dot2(sub2(at, line.start), line.along)));
const footOn = (line: Line, at: Vec2): Vec2 => add2(line.start, scale2(line.along, footAt(line, at)));

/** Lines within reach, the nearest first. */
function linesNear(field: SnapField, at: Vec2, options: SnapOptions): readonly Line[] {
  const all = [
    ...field.edges.flatMap((edge) => edgeLines(edge, field)),
    ...(options.from ? anglesFrom(options.from, at, options.reach) : []),
    ...axes(field, at, options.reach),
  ];
  return all
    .map((line) => ({ line, distance: distance2(footOn(line, at), at) }))
    .filter(({ distance }) => distance <= options.reach)
    .sort((a, b) => a.distance - b.distance || rank[a.line.kind] - rank[b.line.kind])
    .map(({ line }) => line);
}

const straight = ([x, y]: Vec2): boolean => Math.abs(x) < 1e-9 || Math.abs(y) < 1e-9;

/** An edge itself, lines beside it at usual widths, and what it points to beyond its ends. */
function edgeLines({ from, to, of, free }: SnapEdge, { offsets, units }: SnapField): readonly Line[] {
  const length = distance2(from, to);
  if (length < 1e-9) return [];
  const along = unit2(sub2(to, from));
  const within = { along, least: 0, most: length };
  const own: Line = { kind: 'wall', text: say.on(of), start: from, ...within };
  const beside = free
    ? offsets.map((by): Line => {
        const start = add2(from, scale2(free, by));
        return { kind: 'offset', text: say.offset(lengthText(by, units), of), start, from: start, ...within };
      })
    : [];
  // What runs straight east or north is already in line with its corners.
  if (straight(along)) return [own, ...beside];
  const beyond = { kind: 'extension', text: say.extension(of), along } as const;
  return [
    own,
    ...beside,
    { ...beyond, start: to, from: to, least: 0, most: Number.POSITIVE_INFINITY },
    { ...beyond, start: from, from, least: Number.NEGATIVE_INFINITY, most: 0 },
  ];
}

const eachAngle = Math.PI / 12;

/** The ray from the point before at the nearest multiple of 15 degrees. */
function anglesFrom(from: Vec2, at: Vec2, reach: number): readonly Line[] {
  const away = sub2(at, from);
  if (Math.hypot(...away) <= reach) return [];
  const number = Math.round(Math.atan2(away[1], away[0]) / eachAngle);
  const along: Vec2 = [exact(Math.cos(number * eachAngle)), exact(Math.sin(number * eachAngle))];
  const degrees = (((number * 15) % 360) + 360) % 360;
  const due = { 0: say.due.east, 90: say.due.north, 180: say.due.west, 270: say.due.south }[degrees];
  const text = due ?? say.angle(String(degrees));
  return [{ kind: 'angle', text, start: from, from, along, least: 0, most: Number.POSITIVE_INFINITY }];
}

/** A cosine that should be zero is not quite; coordinates drawn along it should be. */
const exact = (value: number): number => (Math.abs(value) < 1e-12 ? 0 : value);

/** Straight north and straight east through corners and middles: the nearest of each, and of those the one close by. */
function axes(field: SnapField, at: Vec2, reach: number): readonly Line[] {
  return ([0, 1] as const).flatMap((k): Line[] => {
    let best: Spot | null = null;
    for (const spot of field.spots) {
      const [now, least] = [Math.abs(spot.at[k] - at[k]), best ? Math.abs(best.at[k] - at[k]) : reach];
      const nearer = now < least - 1e-9 || (now <= least + 1e-9 && (!best || closer(spot, best, at)));
      if (now <= reach && nearer) best = spot;
    }
    if (!best) return [];
    const along: Vec2 = k === 0 ? [0, 1] : [1, 0];
    const [least, most] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    return [{ kind: 'axis', text: say.inLine(best.text), start: best.at, from: best.at, along, least, most }];
  });
}

const closer = (a: Spot, b: Spot, at: Vec2): boolean => distance2(a.at, at) < distance2(b.at, at);

/** Lines that meet at less than about 10 degrees cross too far from where they seem to. */
const leastSine = 0.17;

function crossing(first: Line, others: readonly Line[], at: Vec2, reach: number) {
  let best: { readonly line: Line; readonly at: Vec2; readonly distance: number } | null = null;
  for (const line of others) {
    const sine = cross2(first.along, line.along);
    if (Math.abs(sine) < leastSine) continue;
    const t = cross2(sub2(line.start, first.start), line.along) / sine;
    const point = add2(first.start, scale2(first.along, t));
    const s = dot2(sub2(point, line.start), line.along);
    const distance = distance2(point, at);
    const inside = t >= first.least - 1e-9 && t <= first.most + 1e-9 && s >= line.least - 1e-9 && s <= line.most + 1e-9;
    if (!inside || distance > reach || (best && distance >= best.distance)) continue;
    best = { line, at: point, distance };
  }
  return best;
}

/** Along a line, the coordinate that is free comes to whole steps; on a slanting line, the distance from its start. */
function stepAlong(line: Line, foot: Vec2, { grid }: SnapOptions): Vec2 {
  const round = (value: number) => Math.round(value / grid) * grid;
  if (line.kind !== 'angle' && Math.abs(line.along[0]) < 1e-9) return bounded(line, [foot[0], round(foot[1])]);
  if (line.kind !== 'angle' && Math.abs(line.along[1]) < 1e-9) return bounded(line, [round(foot[0]), foot[1]]);
  const t = Math.min(line.most, Math.max(line.least, round(dot2(sub2(foot, line.start), line.along))));
  return add2(line.start, scale2(line.along, t));
}

const bounded = (line: Line, at: Vec2): Vec2 => {
  const t = dot2(sub2(at, line.start), line.along);
  return t < line.least || t > line.most ? footOn(line, at) : at;
};

function onGrid(at: Vec2, { grid, reach }: SnapOptions): Snapped {
  const to: Vec2 = [Math.round(at[0] / grid) * grid, Math.round(at[1] / grid) * grid];
  return distance2(to, at) <= reach ? { at: to, reasons: [{ kind: 'grid', text: say.grid }] } : { at, reasons: [] };
}
