import type { Design } from '../design/types.js';
import type { Finding } from '../floor/finding.js';
import { add2, between2, scale2, type Vec2 } from '../floor/geometry/vec.js';
import { millimetreText } from '../floor/number-text.js';
import { type Obstacle, roomSources, type Ways, waysIn } from '../room/index.js';
import type { RuleId } from '../rules/known.js';
import { ruleNumber } from '../rules/schema.js';
import { type CheckContext, ruleUsed } from './context.js';
import { lengthFinding, openFinding } from './room-finding.js';
import { closedStretches, enclosureRound, nameOf, planThings, sidesOf } from './room-plan.js';

/** Where people may stand before a door or side, in widths of the way: the disc of the way must have room there. */
const standing = [0.5, 0.6, 0.75, 1] as const;
/** So that a disc that stands before a side does not touch it [m]. */
const offTheSide = 2e-3;

interface Place {
  readonly name: string;
  readonly exit: boolean;
  readonly points: readonly Vec2[];
}

type PlaceInBrief = string | readonly [number, number];

/** The ways that the brief asks for, and a way from every table or enclosure to an exit. */
export function wayFindings(context: CheckContext): Finding[] {
  const ways = waysIn({ room: context.design.room.outline, obstacles: wayObstacles(context) });
  return [...askedWays(context, ways), ...exitWays(context, ways)];
}

/** What a person cannot pass: solids below headroom, and curtains except at their marked openings. */
export function wayObstacles(context: CheckContext): Obstacle[] {
  const { design, rules } = context;
  const headroom = ruleNumber(rules, 'way.headroom');
  const enclosed = new Set(design.enclosures.flatMap((e) => e.tables));
  const solids = planThings(design)
    .filter((t) => !t.line && t.bottom < headroom && !enclosed.has(t.id))
    .map((t) => ({ id: t.id, outline: t.points }));
  const framed = new Set(design.enclosures.map((e) => e.id));
  const curtains = design.runs.filter((r) => r.kind !== 'shelf' && !(r.on && framed.has(r.on)));
  return [...solids, ...curtains.flatMap(closedStretches)];
}

function askedWays(context: CheckContext, ways: Ways): Finding[] {
  return context.brief.needs.ways.map((way, i) => {
    const exit = [way.from, way.to].some((p) => context.design.room.doors.some((d) => d.id === p && d.exit));
    const rule: RuleId = exit ? 'way.exit-width' : 'way.clear-width';
    const need = way.width ?? ruleNumber(context.rules, rule);
    const from = placeOf(context, way.from, need);
    const to = placeOf(context, way.to, need);
    const id = `room/way/${i + 1}`;
    const names = `Way from ${from?.name ?? wordOf(way.from)} to ${to?.name ?? wordOf(way.to)}`;
    if (!from || !to)
      return openFinding({
        id,
        subject: wordOf(way.from),
        requirement: names,
        message: `A place of this way is inside a walk-in enclosure or is no door, table, enclosure or point; the way is not searched.`,
        decider: 'group',
        required: true,
      });
    return wayFinding(context, ways, {
      id,
      names,
      subject: wordOf(way.from),
      from,
      to,
      need,
      rule: way.width ? null : rule,
    });
  });
}

function exitWays(context: CheckContext, ways: Ways): Finding[] {
  const { design, rules } = context;
  const need = ruleNumber(rules, 'way.exit-width');
  const exits = design.room.doors.filter((d) => d.exit);
  if (exits.length === 0) return [];
  const to: Place = {
    name: 'an exit',
    exit: true,
    points: exits.flatMap((d) => placeOf(context, d.id, need)!.points),
  };
  const outer = [
    ...design.enclosures.map((e) => e.id),
    ...design.tables.filter((t) => !enclosureRound(design, t.id)).map((t) => t.id),
  ];
  return outer.map((id) => {
    const from = placeOf(context, id, need)!;
    return wayFinding(context, ways, {
      id: `room/exit-way/${id}`,
      names: `Way from ${from.name} to an exit`,
      subject: id,
      from,
      to,
      need,
      rule: 'way.exit-width',
    });
  });
}

const wordOf = (place: PlaceInBrief): string =>
  typeof place === 'string' ? place : `${millimetreText(place[0])}, ${millimetreText(place[1])}`;

function placeOf(context: CheckContext, place: PlaceInBrief, width: number): Place | null {
  const { design } = context;
  if (typeof place !== 'string') return { name: wordOf(place), exit: false, points: [place] };
  const before = (middle: Vec2, outward: Vec2) =>
    standing.map((s) => add2(middle, scale2(outward, s * width + offTheSide)));
  const door = design.room.doors.find((d) => d.id === place);
  if (door) return { name: door.name, exit: door.exit, points: before(between2(door.from, door.to, 0.5), door.inward) };
  const table = design.tables.find((t) => t.id === place);
  const round = table && enclosureRound(design, table.id);
  if (round?.kind === 'walk-in') return null;
  const thing = round ?? table ?? design.enclosures.find((e) => e.id === place);
  if (!thing) return null;
  const sides = Object.values(sidesOf(thing));
  return {
    name: table?.name ?? thing.name,
    exit: false,
    points: sides.flatMap((s) => before(between2(s.from, s.to, 0.5), s.outward)),
  };
}

interface WayAsked {
  readonly id: string;
  readonly names: string;
  readonly subject: string;
  readonly from: Place;
  readonly to: Place;
  readonly need: number;
  readonly rule: RuleId | null;
}

function wayFinding(context: CheckContext, ways: Ways, way: WayAsked): Finding {
  const common = {
    id: way.id,
    subject: way.subject,
    requirement: way.names,
    decider: way.to.exit || way.from.exit ? ('fire authority' as const) : ('group' as const),
    required: true,
    ...(way.rule ? { rule: ruleUsed(context.rules, way.rule) } : {}),
  };
  const found = ways.narrowest({ starts: way.from.points, goals: way.to.points });
  if (!found.ok)
    return openFinding({
      ...common,
      message: `${way.names}: ${found.problems.map((p) => p.message).join(' ')} There is no free floor to stand on at an end.`,
      at: way.from.points[0]!,
    });
  const { width, a, b, from, to } = found.value;
  const stood = a === 'start' || a === 'goal';
  const where = stood
    ? `where people stand at its ${a === 'start' ? 'beginning' : 'end'}`
    : between(context.design, a, b);
  const message =
    width === 0
      ? `${way.names}: no way is open, however narrow. Curtains count as walls except at their marked openings.`
      : `${way.names}: ${stood ? 'at least ' : ''}${millimetreText(width)} at its narrowest, ${where}; ${millimetreText(way.need)} are needed.`;
  return lengthFinding({
    ...common,
    message,
    need: way.need,
    free: width,
    measured: width === 0 ? 'no way' : `narrowest place, ${where}`,
    at: between2(from, to, 0.5),
    source: roomSources.widestPath,
    assumptions: [
      'The widest route counts; curtains hang closed and are passed only at their marked openings.',
      'Doors count as open; the width of the door itself is judged by itself.',
      'Travel distance, crowding and trolleys are not part of this.',
    ],
  });
}

const between = (design: Design, a: string, b: string): string =>
  a === b ? `at ${nameOf(design, a)}` : `between ${nameOf(design, a)} and ${nameOf(design, b)}`;
