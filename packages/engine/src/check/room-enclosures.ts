import type { DesignEnclosure, EnclosureSide } from '../design/types.js';
import type { Finding } from '../floor/finding.js';
import { ringDistance } from '../floor/geometry/polygon.js';
import { between2, cross2, dot2, plan, sub2, unit2, type Vec2 } from '../floor/geometry/vec.js';
import { millimetreText } from '../floor/number-text.js';
import { roomCautions } from '../room/index.js';
import { ruleNumber } from '../rules/schema.js';
import { type CheckContext, ruleUsed } from './context.js';
import { lengthFinding, openFinding } from './room-finding.js';

/** Enclosures under the ceiling, and people into them. */
export const enclosureFindings = (context: CheckContext): Finding[] =>
  context.design.enclosures.flatMap((e) => [ceilingFinding(context, e), ...wayInFindings(context, e)]);

/** Top of everything on the enclosure against the lowest thing over it. */
function ceilingFinding(context: CheckContext, enclosure: DesignEnclosure): Finding {
  const { room } = context.design;
  const over = room.beams.filter((b) => ringDistance(b.outline, enclosure.outline).distance === 0);
  const lowest = [{ name: 'the ceiling', bottom: room.height }, ...over].reduce((a, b) =>
    b.bottom < a.bottom ? b : a,
  );
  const units = enclosure.unitCount > 0;
  return lengthFinding({
    id: `room/under-ceiling/${enclosure.id}`,
    subject: enclosure.id,
    requirement: `${enclosure.name} fits under what is over it`,
    message: `The top of ${enclosure.name} is ${millimetreText(enclosure.top)} above the floor, ${lowest.name} ${millimetreText(lowest.bottom)}.${units ? ' The room that the units need over them for intake and filter change stands in their data sheet and is not assessed.' : ''}`,
    need: enclosure.top,
    free: lowest.bottom,
    measured: `${lowest.name} above the finished floor`,
    decider: 'facilities',
    required: true,
    at: enclosure.centre,
    assumptions: [
      'The floor is level under the enclosure; luminaires and pipes that were not surveyed are not counted.',
    ],
  });
}

/** Sides that people pass: what draws, what hangs in strips, what is open. */
const passable = (side: EnclosureSide): boolean => side.closure !== 'rigid panel';

/** Offset of a beam's middle line from the inside of its side that still counts as that side [m]: half of any profile. */
const ofThisSide = 0.12;

/** Largest clear width between two posts of a side: the longest of its roof beams, which stand between the posts. */
function widestBay(context: CheckContext, enclosure: DesignEnclosure, side: EnclosureSide): number {
  const along = unit2(sub2(side.to, side.from));
  const lengths = context.design.parts.flatMap((p) => {
    if (p.of !== enclosure.id || p.role !== 'beam' || p.shape.shape !== 'bar') return [];
    const [from, to]: Vec2[] = [plan(p.shape.from), plan(p.shape.to)];
    const onLine = [from, to].every((q) => Math.abs(cross2(along, sub2(q!, side.from))) < ofThisSide);
    return onLine ? [Math.abs(dot2(along, sub2(to!, from!)))] : [];
  });
  return Math.max(0, ...lengths);
}

/** Whether a person can get into a walk-in enclosure and out of it, and reach into a close one. */
function wayInFindings(context: CheckContext, enclosure: DesignEnclosure): Finding[] {
  const sides = enclosure.sides.filter(passable);
  const walkIn = enclosure.kind === 'walk-in';
  const common = {
    id: `room/entry/${enclosure.id}`,
    subject: enclosure.id,
    requirement: walkIn ? `A way into ${enclosure.name} and out of it` : `A side of ${enclosure.name} that opens`,
    at: enclosure.centre,
    required: true,
  };
  if (!walkIn && sides.length > 0) return [];
  if (!walkIn)
    return [
      openFinding({
        ...common,
        message: `All sides of ${enclosure.name} are rigid panels, and no door is drawn: how the table inside is reached is not assessed. Give one side a curtain or strips, or plan a door.`,
        decider: 'group',
      }),
    ];
  const widest = sides
    .map((side) => ({ side, width: widestBay(context, enclosure, side) }))
    .reduce<{ side: EnclosureSide; width: number } | null>((a, b) => (a && a.width >= b.width ? a : b), null);
  const need = ruleNumber(context.rules, 'way.exit-width');
  const strips = widest?.side.closure === 'strip';
  return [
    lengthFinding({
      ...common,
      message: widest
        ? `People get into ${enclosure.name} on its ${widest.side.name} side (${widest.side.closure}), ${millimetreText(widest.width)} wide between posts; ${millimetreText(need)} are needed.${strips ? ' Whether strips may hang in a way out is for the fire authority.' : ''}`
        : `There is no way into ${enclosure.name}: all its sides are rigid panels. Give one side a curtain or strips.`,
      need,
      free: widest?.width ?? 0,
      measured: widest ? `between the posts of the ${widest.side.name} side` : 'no side opens',
      decider: 'fire authority',
      rule: ruleUsed(context.rules, 'way.exit-width'),
      ...(widest ? { at: between2(widest.side.from, widest.side.to, 0.5) } : {}),
      cautions: [roomCautions.plan, roomCautions.fire],
      assumptions: ['A curtain is counted as drawn aside wholly; what it takes pushed together is not deducted.'],
    }),
  ];
}
