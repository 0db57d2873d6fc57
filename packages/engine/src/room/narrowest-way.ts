import { boundaryDistance, closestOnSegment, type Edge, edges, type Ring } from '../floor/geometry/polygon.js';
import { add2, distance2, scale2, sub2, type Vec2 } from '../floor/geometry/vec.js';
import { type Outcome, ok, positive, refuse } from '../floor/problem.js';
import { type FreePiece, freePieces, pieceHolds } from './free-space.js';
import { notInFreeSpace, tooFewCorners } from './messages.js';
import { type Obstacle, type RoundObstacle, sidesOfObstacle, type WidthPlace } from './types.js';

/** A disc this much smaller than a width passes it; a disc of the width itself touches both sides [m]. */
const touching = 5e-4;

/** What stands in the way of people [m]. */
export interface WayPlan {
  /** Inside of the walls. */
  readonly room: Ring;
  readonly obstacles: readonly Obstacle[];
  readonly columns?: readonly RoundObstacle[];
}

/** The way begins at any of the starts and ends at any of the goals [m]. */
export interface WayEnds {
  readonly starts: readonly Vec2[];
  readonly goals: readonly Vec2[];
}

export type WayRequest = WayPlan & WayEnds;

/** Ways in one plan; what they share is worked out once. */
export interface Ways {
  readonly passes: (ends: WayEnds, diameter: number) => Outcome<boolean>;
  readonly narrowest: (ends: WayEnds) => Outcome<WidthPlace>;
}

/**
 * Whether a disc can travel from a start to a goal: both lie in one piece of the floor free for its centre. A gap as wide as
 * the disc counts as passed.
 * @param request  the plan and the places [m]
 * @param diameter of the disc [m]
 * @returns        true or false, or `room/corners`, `room/disc`
 * Source: widest path of a disc, Minkowski sum (derived).
 */
export const discPasses = (request: WayRequest, diameter: number): Outcome<boolean> =>
  waysIn(request).passes(request, diameter);

/**
 * The widest way from a start to a goal over all routes: the diameter of the largest disc that can travel it, and the place
 * that narrows it. A disc is not limited by turning a corner, only by gaps; a long piece or a trolley may need more.
 *
 * Every limit is a distance of two features (of an obstacle and another, a wall, or a place to stand); the sorted distances
 * are searched by halves with `discPasses`. Two limits closer than 0.5 mm may be taken for each other.
 * @param request the plan and the places [m]
 * @returns       width and place, or `room/place-blocked` when no start or goal lies on free floor, `room/corners`; width 0
 *                when no disc of any size can go
 * Source: widest path of a disc by obstacle pairs (derived).
 */
export const narrowestWay = (request: WayRequest): Outcome<WidthPlace> => waysIn(request).narrowest(request);

/** Ways in one plan, for many ends: see `discPasses` and `narrowestWay`. Source: widest path of a disc (derived). */
export function waysIn(plan: WayPlan): Ways {
  if (plan.room.length < 3) {
    const refused = refuse([tooFewCorners('room')]);
    return { passes: () => refused, narrowest: () => refused };
  }
  const pieces = new Map<number, readonly FreePiece[]>();
  const piecesFor = (diameter: number): readonly FreePiece[] => {
    const known = pieces.get(diameter);
    if (known) return known;
    const made = freePieces(plan.room, plan.obstacles, plan.columns ?? [], diameter / 2);
    pieces.set(diameter, made);
    return made;
  };
  const joins = ({ starts, goals }: WayEnds, diameter: number) =>
    piecesFor(diameter).some(
      (piece) => starts.some((p) => pieceHolds(piece, p)) && goals.some((p) => pieceHolds(piece, p)),
    );
  const passes = (ends: WayEnds, diameter: number) => {
    const problems = positive('room/disc', 'diameter', diameter, 'm');
    return problems.length > 0 ? refuse(problems) : ok(joins(ends, Math.max(diameter - touching, touching / 2)));
  };
  let shared: readonly WidthPlace[] | undefined;
  const narrowest = (ends: WayEnds): Outcome<WidthPlace> => {
    const open = piecesFor(touching / 2);
    const blocked = (['starts', 'goals'] as const).filter(
      (which) => !ends[which].some((p) => open.some((piece) => pieceHolds(piece, p))),
    );
    if (blocked.length > 0) return refuse(blocked.map((b) => notInFreeSpace(b === 'starts' ? 'start' : 'goal')));
    shared ??= featureLimits(plan);
    const stood = {
      starts: standingLimits(plan, 'start', ends.starts),
      goals: standingLimits(plan, 'goal', ends.goals),
    };
    // No way is wider than the widest place to stand at either end.
    const most = Math.min(widest(stood.starts), widest(stood.goals));
    const limits = distinct([...shared, ...stood.starts, ...stood.goals], most);
    let low = -1;
    let high = limits.length;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (joins(ends, limits[middle]!.width - touching)) low = middle;
      else high = middle;
    }
    const none: WidthPlace = { width: 0, a: 'no way', b: 'no way', from: ends.starts[0]!, to: ends.goals[0]! };
    return ok(low < 0 ? none : limits[low]!);
  };
  return { passes, narrowest };
}

const widest = (list: readonly WidthPlace[]): number => Math.max(0, ...list.map((l) => l.width));

/** Rising widths that may limit, one of each. */
function distinct(limits: readonly WidthPlace[], most: number): WidthPlace[] {
  const rising = limits.filter((l) => l.width > 2 * touching && l.width <= most).sort((a, b) => a.width - b.width);
  return rising.filter((l, i) => i === 0 || l.width - rising[i - 1]!.width > 1e-9);
}

interface Feature extends Edge {
  readonly id: string;
  /** Which wall ring or obstacle it belongs to, its place there, and how many there are in the round; 0 for a line. */
  readonly of: number;
  readonly index: number;
  readonly round: number;
}

const neighbours = (a: Feature, b: Feature): boolean =>
  a.of === b.of && (Math.abs(a.index - b.index) <= 1 || Math.abs(a.index - b.index) === a.round - 1);

/** Distances of all pairs of features that could limit a disc, rising. */
function featureLimits(plan: WayPlan): WidthPlace[] {
  const walls = edges(plan.room).map(
    (e, index): Feature => ({ ...e, id: `wall ${index}`, of: -1, index, round: plan.room.length }),
  );
  const sides = plan.obstacles.flatMap((o, of) => {
    const list = sidesOfObstacle(o);
    const closed = list.length === o.outline.length;
    return list.map((e, index): Feature => ({ ...e, id: o.id, of, index, round: closed ? list.length : 0 }));
  });
  const features = [...walls, ...sides];
  const columns = plan.columns ?? [];
  const found: WidthPlace[] = [];
  features.forEach((f, i) => {
    for (let j = i + 1; j < features.length; j++) {
      const g = features[j]!;
      if (neighbours(f, g)) continue;
      const d = boundaryDistance([f.from, f.to], [g.from, g.to]);
      if (d.distance > 0) found.push({ width: d.distance, a: f.id, b: g.id, from: d.a, to: d.b });
    }
    for (const c of columns) found.push(...columnLimit(f.id, closestOnSegment(c.centre, f.from, f.to), c));
  });
  columns.forEach((c, i) => {
    for (const other of columns.slice(i + 1)) found.push(...columnLimit(other.id, towards(other, c.centre), c));
  });
  return found.sort((a, b) => a.width - b.width);
}

const towards = (c: RoundObstacle, p: Vec2): Vec2 =>
  add2(c.centre, scale2(sub2(p, c.centre), c.radius / distance2(p, c.centre)));

function columnLimit(id: string, from: Vec2, c: RoundObstacle): WidthPlace[] {
  const away = distance2(from, c.centre);
  return away > c.radius ? [{ width: away - c.radius, a: id, b: c.id, from, to: towards(c, from) }] : [];
}

/** A disc at a place to stand is twice as wide as the way to the nearest thing. */
function standingLimits(plan: WayPlan, name: string, places: readonly Vec2[]): WidthPlace[] {
  const sides = [
    ...edges(plan.room).map((e, i) => ({ ...e, id: `wall ${i}` })),
    ...plan.obstacles.flatMap((o) => sidesOfObstacle(o).map((e) => ({ ...e, id: o.id }))),
  ];
  return places.flatMap((p) => {
    const near = [
      ...sides.map((s) => ({ b: s.id, away: distance2(p, closestOnSegment(p, s.from, s.to)) })),
      ...(plan.columns ?? []).map((c) => ({ b: c.id, away: distance2(p, c.centre) - c.radius })),
    ].sort((a, b) => a.away - b.away)[0]!;
    return near.away > 0 ? [{ width: 2 * near.away, a: name, b: near.b, from: p, to: p }] : [];
  });
}
