import { temperatureRise } from '../air/index.js';
import { ratioStep } from '../air/steps.js';
import { personHeat, roomAir, sources } from '../air/tables.js';
import { fromStep, step, val } from '../floor/calculation.js';
import { type Finding, verdictOf } from '../floor/finding.js';
import { numberText } from '../floor/number-text.js';
import { valueOf } from '../floor/problem.js';
import { commonPractice } from '../floor/source.js';
import { type EnclosureAir, servedBy } from './air-enclosure.js';
import { airJudged, atMostAttention } from './air-finding.js';
import { lightsOf } from './air-light.js';
import { type CheckContext, ruleValue } from './context.js';

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

/** Names of what stands inside and whose heat the brief leaves out: unknown is not zero. */
function withoutHeat(context: CheckContext, air: EnclosureAir): readonly string[] {
  const inside = (table: string | undefined) => table !== undefined && air.enclosure.tables.includes(table);
  const { tables, lasers } = context.brief;
  return [
    ...tables
      .filter((t) => inside(t.id))
      .flatMap((t) => (t.equipment ?? []).filter((e) => e.heat === undefined).map((e) => e.name ?? e.id)),
    ...lasers.filter((l) => inside(l.table) && l.heat === undefined).map((l) => l.name ?? l.id),
  ];
}

/** Rise of the air across an enclosure by all that gives off heat in it. */
export function heatFinding(context: CheckContext, air: EnclosureAir): Finding {
  const { enclosure, unit, working } = air;
  const { design, brief } = context;
  const inside = (table: string | null) => table !== null && enclosure.tables.includes(table);
  const lights = lightsOf(context, enclosure);
  const people = enclosure.kind === 'walk-in' ? Math.max(0, ...air.needs.map((need) => need.people ?? 0)) : 0;
  const heat = {
    equipment: val(
      sum(design.tables.filter((t) => inside(t.id)).flatMap((t) => t.equipment.map((e) => e.heat))),
      'W',
      'equipment on the tables',
      'brief',
    ),
    lasers: val(
      sum(design.lasers.filter((l) => inside(l.table)).map((l) => l.heat)),
      'W',
      'lasers on the tables',
      'brief',
    ),
    units: val(enclosure.unitCount * unit.power, 'W', 'fan filter units', `catalogue ${unit.id}`),
    lights: val(sum(lights.map((l) => l.count * l.item.power)), 'W', 'lights', 'catalogue'),
    people: val(people * personHeat, 'W', `${people} people`, 'from memory'),
  };
  const total = step(
    'P',
    'heat given off inside',
    'equipment+lasers+units+lights+people',
    heat,
    sum(Object.values(heat).map((h) => h.value)),
    'W',
    sources.heatBalance,
  );
  const rise = step(
    'dT',
    'rise of the air through the enclosure',
    'P/(rho*cp*Q)',
    {
      P: fromStep(total),
      rho: val(roomAir.density, 'kg/m3', 'density of room air', 'table'),
      cp: val(roomAir.specificHeat, 'J/(kg K)', 'specific heat of air', 'table'),
      Q: fromStep(working.steps.find((s) => s.symbol === 'Q')!),
    },
    valueOf(temperatureRise({ heat: total.result, flow: working.flow })),
    'K',
    sources.heatBalance,
  );
  const need = brief.needs.temperature.find((t) => t.rise !== undefined && servedBy(enclosure, t.where));
  const limit =
    need?.rise === undefined
      ? ruleValue(context, 'air.temperature-rise', 'K')
      : val(need.rise, 'K', 'rise allowed', 'brief');
  const used = ratioStep('u', 'utilisation', ['dT', fromStep(rise)], ['dTmax', limit], '1', sources.heatBalance);
  const unknown = withoutHeat(context, air);
  return airJudged(
    context,
    {
      id: `air/heat/${enclosure.id}`,
      subject: enclosure.id,
      requirement: 'Temperature rise of the air through the enclosure',
      ...(need ? { source: commonPractice } : { rule: 'air.temperature-rise' as const }),
      decider: 'group',
      required: true,
      at: enclosure.centre,
    },
    {
      message: `${numberText(total.result)} W warm the air by ${numberText(rise.result)} K; ${numberText(limit.value)} K is allowed.${unknown.length > 0 ? ` Not counted, because the brief gives no heat: ${unknown.join(', ')}.` : ''}`,
      demand: rise.result,
      capacity: limit.value,
      unit: 'K',
      utilisation: used.result,
      verdict: atMostAttention(verdictOf(used.result), unknown.length > 0),
      steps: [...working.steps, total, rise, used],
      assumptions: [
        'All electrical power of the units ends as heat in their air; the walls pass none.',
        'Mean of the air that leaves; air over a warm device is warmer.',
        ...(unknown.length > 0 ? [`Without heat in the brief and not counted: ${unknown.join(', ')}.`] : []),
      ],
    },
  );
}
