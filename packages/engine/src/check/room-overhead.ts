import type { DesignEnclosure, DesignRun } from '../design/types.js';
import type { Finding } from '../floor/finding.js';
import { contains, type Ring } from '../floor/geometry/polygon.js';
import { millimetreText } from '../floor/number-text.js';
import { fromSprinkler, roomCautions, roomSources, sprinklerReach, suspendedObstructionDepth } from '../room/index.js';
import { ruleNumber } from '../rules/schema.js';
import { type CheckContext, ruleUsed } from './context.js';
import { lengthFinding, openFinding } from './room-finding.js';
import { runLine } from './room-plan.js';

/** Headroom, sprinklers, detectors. */
export const overheadFindings = (context: CheckContext): Finding[] => [
  ...headroomFindings(context),
  ...sprinklerFindings(context),
  ...detectorFindings(context),
];

function headroomFindings(context: CheckContext): Finding[] {
  const { room, enclosures, runs } = context.design;
  const need = ruleNumber(context.rules, 'way.headroom');
  const over = [
    { id: room.name, key: 'room', name: 'the room', free: room.height, what: 'ceiling' },
    ...room.beams.map((b) => ({
      id: b.id,
      key: b.id,
      name: b.name,
      free: b.bottom,
      what: 'underside',
    })),
    ...enclosures
      .filter((e) => e.kind === 'walk-in')
      .map((e) => ({ id: e.id, key: e.id, name: e.name, free: e.clearHeight, what: 'underside of the roof beams' })),
    ...runs
      .filter((r) => r.kind !== 'shelf')
      .map((r) => ({ id: r.id, key: r.id, name: r.name, free: r.trackHeight, what: 'underside of the track' })),
  ];
  return over.map((o) =>
    lengthFinding({
      id: `room/headroom/${o.key}`,
      subject: o.id,
      requirement: `Headroom under ${o.name}`,
      message: `The ${o.what} of ${o.name} is ${millimetreText(o.free)} above the floor; ${millimetreText(need)} are needed.`,
      need,
      free: o.free,
      measured: `${o.what} above the finished floor`,
      decider: 'fire authority',
      required: true,
      rule: ruleUsed(context.rules, 'way.headroom'),
    }),
  );
}

type Head = CheckContext['design']['room']['sprinklers'][number];

interface Obstruction {
  readonly id: string;
  readonly name: string;
  readonly outline: Ring;
  readonly top: number;
  readonly roof: DesignEnclosure | null;
}

const obstructions = (context: CheckContext): Obstruction[] => [
  ...context.design.enclosures.map((e) => ({ id: e.id, name: e.name, outline: e.outline, top: e.top, roof: e })),
  ...context.design.runs
    .filter((r) => r.kind !== 'shelf')
    .map((r) => ({
      id: r.id,
      name: r.name,
      outline: runLine(r),
      top: Math.max(r.curtainTop, r.trackHeight),
      roof: null,
    })),
];

/** Each head against everything within its reach, and everything against its nearest head. */
function sprinklerFindings(context: CheckContext): Finding[] {
  const heads = context.design.room.sprinklers;
  return obstructions(context).flatMap((o) => {
    const seen = heads
      .map((head) => ({ head, ...fromSprinkler(head, { ...o, open: o.roof === null }, o.top) }))
      .sort((a, b) => a.horizontal - b.horizontal);
    const near = seen.filter((s, i) => i === 0 || s.horizontal <= sprinklerReach);
    return [
      ...near.map((s) => headFinding(context, o, s.head, s.horizontal, s.below)),
      ...(o.roof && seen[0] && seen[0].horizontal <= sprinklerReach ? [roofFinding(context, o, o.roof)] : []),
    ];
  });
}

function headFinding(context: CheckContext, o: Obstruction, head: Head, horizontal: number, below: number): Finding {
  const need = ruleNumber(context.rules, 'fire.sprinkler-plane');
  const least = o.roof || horizontal === 0 ? null : suspendedObstructionDepth(horizontal);
  const tolerated = below < need && least !== null && below >= least;
  const short = need - below;
  const where = `The top of ${o.name} lies ${millimetreText(below)} below the deflector of ${head.id}, ${millimetreText(horizontal)} away in plan`;
  const say = tolerated
    ? `: inside the free ${millimetreText(need)}, but beyond the ${millimetreText(least)} that a table for light hazard asks of curtains this near (from memory). The fire authority decides.`
    : short > 0
      ? `: ${millimetreText(short)} too little. Lower it by that much, or ask the fire authority.`
      : `; ${millimetreText(need)} must stay free.`;
  return lengthFinding({
    id: `room/sprinkler/${head.id}/${o.id}`,
    subject: o.id,
    requirement: `Free plane under sprinkler ${head.id}`,
    message: where + say,
    need,
    free: Math.max(below, 0),
    measured: 'from the deflector down to the top of what stands there',
    decider: 'fire authority',
    required: true,
    rule: ruleUsed(context.rules, 'fire.sprinkler-plane'),
    at: head.at,
    cautions: [roomCautions.fire],
    ...(tolerated ? { verdict: 'attention' as const } : {}),
  });
}

function roofFinding(context: CheckContext, o: Obstruction, roof: DesignEnclosure): Finding {
  const limit = ruleNumber(context.rules, 'fire.sprinkler-obstruction-width');
  const width = Math.min(roof.length, roof.width);
  const wide = width > limit;
  return lengthFinding({
    id: `room/sprinkler-roof/${o.id}`,
    subject: o.id,
    requirement: `Roof of ${o.name} under sprinklers`,
    message: wide
      ? `The roof of ${o.name} is ${millimetreText(width)} wide; from ${millimetreText(limit)} a fixed roof needs sprinklers under it. The fire authority decides.`
      : `The roof of ${o.name} is ${millimetreText(width)} wide, under the ${millimetreText(limit)} from which it needs sprinklers below.`,
    need: width,
    free: limit,
    measured: 'widest roof that needs no sprinklers under it',
    ...(wide ? { verdict: 'attention' as const } : {}),
    decider: 'fire authority',
    required: true,
    rule: ruleUsed(context.rules, 'fire.sprinkler-obstruction-width'),
    at: roof.centre,
    cautions: [roomCautions.fire],
    source: roomSources.sprinklerPlane,
  });
}

function detectorFindings(context: CheckContext): Finding[] {
  const { room, runs, enclosures } = context.design;
  const inBay = (r: DesignRun, p: readonly [number, number]) => r.closed && contains(runLine(r), p);
  return room.detectors.map((d) => {
    const over = runs.find((r) => inBay(r, d.at)) ?? enclosures.find((e) => contains(e.outline, d.at));
    return openFinding({
      id: `room/detector/${d.id}`,
      subject: d.id,
      requirement: `Cover of ${d.kind} detector ${d.id}`,
      message: over
        ? `Detector ${d.id} hangs over ${over.name}, which parts it from the rest of the room. Its cover is not computed.`
        : `What detector ${d.id} still covers behind curtains and roofs is not computed.`,
      decider: 'fire authority',
      required: over !== undefined,
      at: d.at,
      cautions: [roomCautions.fire],
    });
  });
}
