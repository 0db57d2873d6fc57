import { type FilterData, filterData } from '../air/index.js';
import { type UnitsWorking, unitsAgainstGaps } from '../air/steps.js';
import { roomAir } from '../air/tables.js';
import type { CompleteBrief } from '../brief/complete.js';
import type { FanFilterUnit } from '../catalogue/schema.js';
import type { DesignEnclosure } from '../design/types.js';
import { type CalculationValue, val } from '../floor/calculation.js';
import { type Outcome, problem, refuse, valueOf } from '../floor/problem.js';

import { type CheckContext, ruleValue } from './context.js';

export type CleanlinessNeed = CompleteBrief['needs']['cleanliness'][number];

/** An enclosure with what its fan filter units do in it. */
export interface EnclosureAir {
  readonly enclosure: DesignEnclosure;
  readonly unit: FanFilterUnit;
  readonly filter: FilterData;
  readonly working: UnitsWorking;
  readonly count: CalculationValue;
  readonly needs: readonly CleanlinessNeed[];
}

/** Whether a need for `where` is one for this enclosure: it names it or a table in it. */
export const servedBy = (enclosure: DesignEnclosure, where: string): boolean =>
  enclosure.id === where || enclosure.tables.includes(where);

export const cleanlinessOf = (context: CheckContext, enclosure: DesignEnclosure): readonly CleanlinessNeed[] =>
  context.brief.needs.cleanliness.filter((need) => servedBy(enclosure, need.where));

export function unitOf(context: CheckContext, enclosure: DesignEnclosure): FanFilterUnit | null {
  const item = enclosure.unit === null ? undefined : context.catalogue.byId.get(enclosure.unit);
  return item?.kind === 'fan filter unit' && enclosure.unitCount > 0 ? item : null;
}

export const roomAirDensity = val(roomAir.density, 'kg/m3', 'density of room air', 'table');

const without = (message: string, hint: string): Outcome<never> => refuse([problem('check/no-air', [], message, hint)]);

/** What the units of an enclosure do against its gaps; the reason as a problem where it cannot be told. */
export function enclosureAir(context: CheckContext, enclosure: DesignEnclosure): Outcome<EnclosureAir> {
  const unit = unitOf(context, enclosure);
  if (!unit) return without('No fan filter unit stands on it.', 'Add units, or drop what needs clean air.');
  const area = enclosure.openings.reduce((sum, opening) => sum + opening.area, 0);
  if (!(area > 0)) return without('It has no open gap, so its air has nowhere to leave.', 'Give the hem gap.');
  const count = val(enclosure.unitCount, '1', 'fan filter units', 'design');
  const working = unitsAgainstGaps({
    curve: unit.curve,
    count,
    gapArea: val(area, 'm2', `gaps: ${enclosure.openings.map((o) => o.what).join(', ')}`, 'design'),
    dischargeCoefficient: ruleValue(context, 'air.discharge-coefficient', '1'),
    density: roomAirDensity,
    origin: `catalogue ${unit.id}`,
  });
  if (!working.ok) return working;
  return {
    ok: true,
    value: {
      enclosure,
      unit,
      filter: valueOf(filterData(unit.filterClass)),
      working: working.value,
      count,
      needs: cleanlinessOf(context, enclosure),
    },
  };
}
