import { type Finding, overLimit } from '../floor/finding.js';
import { between2 } from '../floor/geometry/vec.js';
import { millimetreText } from '../floor/number-text.js';
import { type AxisGap, axisGaps, overlapArea, type WidthPlace } from '../room/index.js';
import { ruleNumber } from '../rules/schema.js';
import { type CheckContext, ruleUsed } from './context.js';
import { lengthFinding } from './room-finding.js';
import { nameOf, type PlanThing, planThings } from './room-plan.js';

/** Narrower gaps are joints of things that stand together, not ways [m]. */
const joint = 0.05;

/**
 * Gaps along the axes that people might take for a way: narrower than a way, and not judged already as a side to be reached.
 * A gap under the service width beside a wall is no way: nobody asked for that side.
 */
export function gapFindings(context: CheckContext, judged: readonly WidthPlace[]): Finding[] {
  const { design, rules } = context;
  const clear = ruleNumber(rules, 'way.clear-width');
  const service = ruleNumber(rules, 'way.service-width');
  const enclosed = new Set(design.enclosures.flatMap((e) => e.tables));
  const things = planThings(design).filter(
    (t) => !t.line && t.bottom < ruleNumber(rules, 'way.headroom') && !enclosed.has(t.id),
  );
  const free = things.filter((t) => things.every((o) => o === t || overlapArea(shape(o), shape(t)) === 0));
  const gaps = axisGaps(
    design.room.outline,
    free.map((t) => ({ id: t.id, outline: t.points })),
  );
  const isWall = (id: string) => id.startsWith('wall ');
  const known = (g: AxisGap) =>
    judged.some((j) => Math.abs(j.width - g.width) < 1e-3 && [j.a, j.b].includes(g.a) && [j.a, j.b].includes(g.b));
  return gaps
    .filter((g) => !(isWall(g.a) && isWall(g.b)) && g.width >= joint && overLimit(clear / g.width) && !known(g))
    .filter((g) => g.width >= service || !(isWall(g.a) || isWall(g.b)))
    .map((g) => gapFinding(context, g, clear, service));
}

const shape = (t: PlanThing) => ({ points: t.points, line: t.line });

function gapFinding(context: CheckContext, gap: AxisGap, clear: number, service: number): Finding {
  const names = `${nameOf(context.design, gap.a)} and ${nameOf(context.design, gap.b)}`;
  const use =
    gap.width >= service
      ? 'enough for service, too narrow for a way that people use'
      : 'too narrow even for service; close it off or widen it';
  return lengthFinding({
    id: `room/gap/${gap.axis}/${gap.a.replace(' ', '-')}/${gap.b.replace(' ', '-')}`,
    subject: gap.a.startsWith('wall ') ? gap.b : gap.a,
    requirement: `Free width between ${names}`,
    message: `Between ${names} ${millimetreText(gap.width)} are free: ${use}.`,
    need: clear,
    free: gap.width,
    measured: `free between ${names}, along ${gap.axis}`,
    verdict: 'attention',
    decider: 'group',
    rule: ruleUsed(context.rules, 'way.clear-width'),
    at: between2(gap.from, gap.to, 0.5),
    assumptions: ['Nobody asked for a way here; where people pass, the rule holds in full.'],
  });
}
