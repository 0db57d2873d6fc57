import type { SideName } from '../brief/schema.js';
import type { DesignEnclosure } from '../design/types.js';
import { type CalculationStep, fromStep, val } from '../floor/calculation.js';
import type { Finding } from '../floor/finding.js';
import { between2 } from '../floor/geometry/vec.js';
import { millimetreText, numberText } from '../floor/number-text.js';
import { geometrySource } from '../floor/source.js';
import { ruleNumber } from '../rules/schema.js';
import { type CheckContext, ruleValue } from './context.js';
import { type Judged, judged, type Subject } from './frame-finding.js';

const sideNames: readonly SideName[] = ['south', 'east', 'north', 'west'];

const narrowest = (enclosure: DesignEnclosure): SideName =>
  sideNames.reduce((best, side) => (enclosure.gaps[side] < enclosure.gaps[best] ? side : best));

function placeOf(enclosure: DesignEnclosure, side: SideName) {
  const found = enclosure.sides.find((s) => s.name === side);
  return found ? between2(found.from, found.to, 0.5) : enclosure.centre;
}

/** Judges a gap against a least one; without a gap there is no ratio, and it fails. */
function gapJudged(
  enclosure: DesignEnclosure,
  side: SideName,
  least: { readonly value: number; readonly step?: CalculationStep; readonly rule: NonNullable<Judged['rule']> },
  context: CheckContext,
  text: (gap: string, least: string) => string,
): Judged {
  const gap = enclosure.gaps[side];
  const use: CalculationStep = {
    symbol: 'u',
    name: 'utilisation',
    expression: 'least/gap',
    values: {
      least: least.step ? fromStep(least.step) : ruleValue(context, least.rule, 'mm', 1000),
      gap: val(gap * 1000, 'mm', `clear distance on the ${side} side`, 'design'),
    },
    result: least.value / gap,
    unit: '1',
    source: geometrySource,
  };
  return {
    message: text(millimetreText(gap), millimetreText(least.value)),
    utilisation: gap > 0 ? use.result : null,
    demand: least.value * 1000,
    capacity: gap * 1000,
    unit: 'mm',
    steps: [...(least.step ? [least.step] : []), ...(gap > 0 ? [use] : [])],
    assumptions: ['Nominal distances; the room is measured and the frame set up to its own tolerances.'],
    rule: least.rule,
  };
}

function checkTravel(enclosure: DesignEnclosure, side: SideName, context: CheckContext): Finding[] {
  const tables = context.design.tables.filter((t) => enclosure.tables.includes(t.id) && t.travel > 0);
  if (tables.length === 0) return [];
  const table = tables.reduce((a, b) => (b.travel > a.travel ? b : a));
  const rule = 'air.gap-share-of-table-travel';
  const multiple = ruleNumber(context.rules, rule);
  const step: CalculationStep = {
    symbol: 'least',
    name: 'least clear distance',
    expression: 'k*t',
    values: {
      k: ruleValue(context, rule, '1'),
      t: val(table.travel * 1000, 'mm', `travel of ${table.name}`, `table ${table.id}`),
    },
    result: multiple * table.travel * 1000,
    unit: 'mm',
    source: context.rules.byId[rule].source,
  };
  const subject: Subject = {
    enclosure,
    check: 'table-travel',
    requirement: 'Moving table stays clear of the frame',
    decider: 'group',
    at: placeOf(enclosure, side),
    cautions: [],
  };
  return [
    judged(
      context,
      subject,
      gapJudged(
        enclosure,
        side,
        { value: multiple * table.travel, step, rule },
        context,
        (gap, least) =>
          `The frame keeps ${gap} from the table on the ${side} side; ${least} are asked: ${numberText(multiple)} times the travel of ${table.name}.`,
      ),
    ),
  ];
}

/** Clear distance of the frame to the tables inside: the rule's least distance, and what a moving table needs. */
export function checkClearance(enclosure: DesignEnclosure, context: CheckContext): Finding[] {
  if (enclosure.tables.length === 0) return [];
  const side = narrowest(enclosure);
  const rule = 'frame.gap-to-table';
  const least = ruleNumber(context.rules, rule);
  const subject: Subject = {
    enclosure,
    check: 'gap-to-table',
    requirement: 'Frame stays clear of the table',
    decider: 'group',
    at: placeOf(enclosure, side),
    cautions: [],
  };
  const short = Math.round((least - enclosure.gaps[side]) * 1000);
  return [
    judged(
      context,
      subject,
      gapJudged(enclosure, side, { value: least, rule }, context, (gap, need) =>
        short > 0
          ? `The frame is ${short} mm too close to the table on the ${side} side: ${gap} instead of ${need}.`
          : `The frame keeps ${gap} from the table on the ${side} side; ${need} are asked.`,
      ),
    ),
    ...checkTravel(enclosure, side, context),
  ];
}
