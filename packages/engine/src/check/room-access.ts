import type { SideName } from '../brief/schema.js';
import type { Finding } from '../floor/finding.js';
import { dot2, scale2, type Vec2 } from '../floor/geometry/vec.js';
import { millimetreText } from '../floor/number-text.js';
import { clearStrip, type Obstacle, type StripSide, type WidthPlace } from '../room/index.js';
import { ruleNumber } from '../rules/schema.js';
import { type CheckContext, ruleUsed } from './context.js';
import { lengthFinding, openFinding } from './room-finding.js';
import {
  compassWord,
  enclosureRound,
  longSides,
  nameOf,
  obstaclesOf,
  type PlanThing,
  planThings,
  sidesOf,
} from './room-plan.js';

interface Access {
  readonly side: StripSide;
  readonly name: SideName;
  readonly width: number | null;
  readonly asked: boolean;
  /** Things that are part of what has the side. */
  readonly own: ReadonlySet<string>;
  /** The walls of a walk-in enclosure, for a table inside. */
  readonly walls: readonly Obstacle[];
}

export interface AccessResult {
  readonly findings: readonly Finding[];
  /** Widths already judged, so that they are not judged again as gaps. */
  readonly places: readonly WidthPlace[];
}

/** Free width along every side that people must reach; without a need, along the long sides of each table. */
export function accessFindings(context: CheckContext): AccessResult {
  const things = planThings(context.design);
  const low = things.filter((t) => t.bottom < ruleNumber(context.rules, 'way.headroom'));
  const unknown = context.brief.needs.access.filter((a) => !boxed(context, a.to));
  const judged = distinct(allAccess(context)).map((a) => judge(context, a, low));
  return {
    places: judged.map((j) => j.place),
    findings: [
      ...judged.map((j) => j.finding),
      ...unknown.map((a) =>
        openFinding({
          id: `room/access/${a.to}`,
          subject: a.to,
          requirement: `Sides of ${a.to} that people must reach`,
          message: `Access is asked for ${a.to}, which is neither a table nor an enclosure of the design.`,
          decider: 'group',
          required: true,
        }),
      ),
    ],
  };
}

const boxed = (context: CheckContext, id: string) =>
  context.design.enclosures.find((e) => e.id === id) ?? context.design.tables.find((t) => t.id === id);

function allAccess(context: CheckContext): Access[] {
  const { brief, design } = context;
  const asked = brief.needs.access.flatMap((a) =>
    a.sides.flatMap((name) => access(context, a.to, name, a.width ?? null, true)),
  );
  const spoken = new Set(
    brief.needs.access.flatMap((a) => [a.to, ...(design.enclosures.find((e) => e.id === a.to)?.tables ?? [])]),
  );
  const assumed = design.tables
    .filter((t) => !spoken.has(t.id))
    .flatMap((t) => longSides(t).flatMap((name) => access(context, t.id, name, null, false)));
  return [...asked, ...assumed];
}

/** Same side of the same thing once; what is asked stands before what is assumed, the wider need before the narrower. */
function distinct(list: readonly Access[]): Access[] {
  const found = new Map<string, Access>();
  for (const a of list) {
    const key = `${a.side.id}/${a.name}`;
    const other = found.get(key);
    if (!other || (a.asked && !other.asked) || (a.asked === other.asked && (a.width ?? 0) > (other.width ?? 0)))
      found.set(key, a);
  }
  return [...found.values()];
}

function access(context: CheckContext, id: string, name: SideName, width: number | null, asked: boolean): Access[] {
  const { design } = context;
  const enclosure = design.enclosures.find((e) => e.id === id);
  const table = design.tables.find((t) => t.id === id);
  const thing = enclosure ?? table;
  if (!thing) return [];
  const side = sidesOf(thing)[name];
  const round = table ? enclosureRound(design, table.id) : undefined;
  if (enclosure || !round) return [{ side, name, width, asked, own: ownOf(context, thing.id), walls: [] }];
  if (round.kind === 'walk-in') {
    const own = new Set([table!.id, round.id]);
    return [{ side, name, width, asked, own, walls: [{ id: round.id, outline: round.inside }] }];
  }
  const outer = facing(sidesOf(round), side.outward);
  return [{ side: outer.side, name: outer.name, width, asked, own: ownOf(context, round.id), walls: [] }];
}

/** The side of the enclosure that looks the same way. */
function facing(sides: Readonly<Record<SideName, StripSide>>, outward: Vec2): { name: SideName; side: StripSide } {
  const list = (Object.keys(sides) as SideName[]).map((name) => ({ name, side: sides[name] }));
  return list.sort((a, b) => dot2(b.side.outward, outward) - dot2(a.side.outward, outward))[0]!;
}

const ownOf = (context: CheckContext, id: string): ReadonlySet<string> =>
  new Set([
    id,
    ...(context.design.enclosures.find((e) => e.id === id)?.tables ?? []),
    ...context.design.runs.filter((r) => r.on === id).map((r) => r.id),
  ]);

function judge(
  context: CheckContext,
  a: Access,
  things: readonly PlanThing[],
): { readonly finding: Finding; readonly place: WidthPlace } {
  const obstacles = [...things.filter((t) => !a.own.has(t.id)).flatMap(obstaclesOf), ...a.walls];
  const place = clearStrip(a.side, obstacles, context.design.room.outline);
  const need = a.width ?? ruleNumber(context.rules, 'way.clear-width');
  const thing = nameOf(context.design, a.side.id);
  const common = {
    id: `room/access/${a.side.id}/${a.name}`,
    subject: a.side.id,
    requirement: `Free width along the ${a.name} side of ${thing}`,
    decider: 'group' as const,
    required: a.asked,
    at: place.from,
  };
  if (!Number.isFinite(place.width))
    return {
      place,
      finding: openFinding({
        ...common,
        message: `Nothing faces the ${a.name} side of ${thing}; is it inside the room?`,
      }),
    };
  const short = need - place.width;
  const away = compassWord(scale2(a.side.outward, -1));
  const cure =
    short > 0
      ? ` Moving ${thing} ${millimetreText(short)} ${away ?? 'away from it'} cures it, if what lies behind leaves room.`
      : '';
  const found = `Along the ${a.name} side of ${thing} ${millimetreText(place.width)} are free up to ${nameOf(context.design, place.b)}`;
  const against =
    short > 0
      ? `, ${millimetreText(short)} less than the ${millimetreText(need)} needed.`
      : `; ${millimetreText(need)} are needed.`;
  return {
    place,
    finding: lengthFinding({
      ...common,
      message: found + against + cure,
      need,
      free: place.width,
      measured: `free from ${thing} to ${nameOf(context.design, place.b)}`,
      ...(a.width === null ? { rule: ruleUsed(context.rules, 'way.clear-width') } : {}),
      assumptions: [
        'Curtains count as walls where they hang closed.',
        ...(a.asked ? [] : ['Nobody asked which sides must be reached; the long sides of a table are assumed.']),
      ],
    }),
  };
}
