import type { Finding } from '../floor/finding.js';
import { boundaryDistance, contains, distanceToSegment, edges, type Ring } from '../floor/geometry/polygon.js';
import { millimetreText } from '../floor/number-text.js';
import { overlapArea } from '../room/index.js';
import type { CheckContext } from './context.js';
import { noneFinding } from './room-finding.js';
import { type PlanThing, planThings } from './room-plan.js';

/** Survey and plan are snapped to this; what sticks out by less touches the wall [m]. */
const snap = 1e-3;

/** Everything inside the room, nothing in anything else. */
export function standingFindings(context: CheckContext): Finding[] {
  const things = planThings(context.design);
  const placed = things.filter((t) => t.kind !== 'column' && t.kind !== 'obstruction');
  return placed.flatMap((t) => [insideFinding(context, t), overlapFinding(context, t, things)]);
}

function insideFinding(context: CheckContext, thing: PlanThing): Finding {
  const { outline } = context.design.room;
  const outside = Math.max(0, ...thing.points.map((p) => (contains(outline, p) ? 0 : awayFrom(outline, p))));
  const crosses = outside <= snap && !thing.line && crossesWall(outline, thing.points);
  const amount = outside > snap ? outside : crosses ? snap : 0;
  return noneFinding({
    id: `room/inside/${thing.id}`,
    subject: thing.id,
    requirement: `${thing.name} stands inside the room`,
    message:
      outside > snap
        ? `${thing.name} reaches ${millimetreText(outside)} through a wall.`
        : crosses
          ? `${thing.name} crosses a corner of the walls.`
          : `${thing.name} stands inside the walls.`,
    amount,
    unit: 'm',
    amountName: 'reach through a wall',
    decider: 'group',
    required: true,
    at: thing.points[0]!,
  });
}

const awayFrom = (ring: Ring, p: readonly [number, number]): number =>
  Math.min(...edges(ring).map((e) => distanceToSegment(p, e.from, e.to)));

/** A corner of the wall inside the thing. */
const crossesWall = (outline: Ring, ring: Ring): boolean =>
  outline.some((corner) => contains(ring, corner, 0) && awayFrom(ring, corner) > snap);

function overlapFinding(context: CheckContext, thing: PlanThing, things: readonly PlanThing[]): Finding {
  const shape = (t: PlanThing) => ({ points: t.points, line: t.line });
  const others = things.filter((o) => o.id !== thing.id && !belong(context, thing.id, o.id) && meetInHeight(thing, o));
  const met = others.map((o) => ({ o, area: overlapArea(shape(thing), shape(o)) })).filter((m) => m.area > 1e-9);
  const nearest = others
    .map((o) => ({ o, away: boundaryDistance(thing.points, o.points).distance }))
    .sort((a, b) => a.away - b.away)[0];
  const apart = nearest
    ? `${thing.name} overlaps nothing; ${nearest.o.name} is nearest, ${millimetreText(nearest.away)} away.`
    : `${thing.name} overlaps nothing.`;
  return noneFinding({
    id: `room/overlap/${thing.id}`,
    subject: thing.id,
    requirement: `${thing.name} overlaps nothing else`,
    message: met.length > 0 ? `${thing.name} stands in ${met.map((m) => m.o.name).join(', ')}.` : apart,
    amount: met.reduce((sum, m) => sum + m.area, 0),
    unit: 'm2',
    amountName: 'area shared in plan',
    decider: 'group',
    required: true,
    at: thing.points[0]!,
  });
}

/** A table and the enclosure round it, a run and the frame that carries it. */
function belong(context: CheckContext, a: string, b: string): boolean {
  const { enclosures, runs } = context.design;
  const pair = (x: string, y: string) =>
    enclosures.some((e) => e.id === x && e.tables.includes(y)) || runs.some((r) => r.id === x && r.on === y);
  return pair(a, b) || pair(b, a);
}

const meetInHeight = (a: PlanThing, b: PlanThing): boolean => a.bottom < b.top && b.bottom < a.top;
