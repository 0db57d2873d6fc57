import type { DesignDoor } from '../design/types.js';
import { calculation, val } from '../floor/calculation.js';
import type { Finding } from '../floor/finding.js';
import { millimetreText, numberText } from '../floor/number-text.js';
import { valueOf } from '../floor/problem.js';
import { freeSwing, roomCautions, roomSources, swingArea } from '../room/index.js';
import { ruleNumber } from '../rules/schema.js';
import { type CheckContext, ruleUsed } from './context.js';
import { lengthFinding, openFinding } from './room-finding.js';
import { obstaclesOf, type PlanThing, planThings } from './room-plan.js';

/** Swing of every door and clear width of exit doors. */
export function doorFindings(context: CheckContext): Finding[] {
  const things = planThings(context.design);
  return context.design.room.doors.flatMap((door) => [
    ...swingFindings(door, things),
    ...(door.exit ? [widthFinding(context, door)] : []),
  ]);
}

function swingFindings(door: DesignDoor, things: readonly PlanThing[]): Finding[] {
  if (door.swing === 'sliding' || door.swing === 'none') return [];
  if (door.swing === 'out' || door.leaves.length === 0)
    return [
      openFinding({
        id: `room/door-swing/${door.id}`,
        subject: door.id,
        requirement: `${door.name} swings free`,
        message: `${door.name} swings out of the room; what stands outside was not surveyed.`,
        decider: 'facilities',
        at: door.from,
      }),
    ];
  return door.leaves.map((leaf, i) => swingFinding(door, leaf, i, things));
}

function swingFinding(
  door: DesignDoor,
  leaf: DesignDoor['leaves'][number],
  index: number,
  things: readonly PlanThing[],
): Finding {
  const sector = { hinge: leaf.hinge, leaf: leaf.leaf, from: leaf.closed, to: leaf.open };
  const low = things.filter((t) => t.bottom < door.top);
  const faces = low.flatMap((thing) => obstaclesOf(thing).map((o) => ({ thing, outline: o.outline })));
  const { free, at, which } = freeSwing(
    sector,
    faces.map((f) => f.outline),
  );
  const common = {
    id: door.leaves.length > 1 ? `room/door-swing/${door.id}/${index + 1}` : `room/door-swing/${door.id}`,
    subject: door.id,
    requirement: `${door.name} swings free`,
    decider: 'facilities' as const,
    required: true,
    source: roomSources.geometry,
  };
  if (at && free < Number.POSITIVE_INFINITY) {
    const thing = faces[which]!.thing;
    const ends =
      free < leaf.leaf
        ? `The leaf of ${door.name}, ${millimetreText(leaf.leaf)} wide, meets ${thing.name} ${millimetreText(free)} from its hinge.`
        : `The leaf of ${door.name} swings past ${thing.name}, which stands ${millimetreText(free)} from the hinge.`;
    return lengthFinding({
      ...common,
      message: ends,
      need: leaf.leaf,
      free,
      measured: `from the hinge to ${thing.name}, within the swing`,
      at,
    });
  }
  const area = valueOf(swingArea(sector));
  const degrees = (Math.abs(leaf.open - leaf.closed) * 180) / Math.PI;
  const step = {
    symbol: 'A',
    name: 'floor that the leaf sweeps',
    expression: 'r^2*a*pi/180/2',
    values: { r: val(leaf.leaf, 'm', 'leaf width', 'brief'), a: val(degrees, 'deg', 'opening angle') },
    result: area,
    unit: 'm2',
    source: roomSources.doorSwing,
  };
  return {
    ...common,
    discipline: 'room',
    verdict: 'meets',
    message: `Nothing stands in the ${numberText(area)} m2 that ${door.name} sweeps.`,
    demand: 0,
    capacity: area,
    unit: 'm2',
    utilisation: 0,
    calculation: calculation(common.requirement, [step], { cautions: [roomCautions.plan] }),
    cautions: [roomCautions.plan],
    asks: [],
    at: leaf.hinge,
  };
}

function widthFinding(context: CheckContext, door: DesignDoor): Finding {
  const need = ruleNumber(context.rules, 'way.door-clear-width');
  return lengthFinding({
    id: `room/door-width/${door.id}`,
    subject: door.id,
    requirement: `Clear width of exit ${door.name}`,
    message: `${door.name} is ${millimetreText(door.width)} wide; ${millimetreText(need)} are needed for an exit.`,
    need,
    free: door.width,
    measured: 'width of the door as surveyed',
    decider: 'fire authority',
    required: true,
    rule: ruleUsed(context.rules, 'way.door-clear-width'),
    at: door.from,
    assumptions: ['The width in the survey is the clear width between the frame and the open leaf.'],
  });
}
