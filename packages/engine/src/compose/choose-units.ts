import { classLimit, cleanAirFlow, filterData, humanEmission, scaledToSize } from '../air/index.js';
import type { CompleteBrief, CompleteEnclosure } from '../brief/complete.js';
import type { Catalogue, FanFilterUnit } from '../catalogue/schema.js';
import { numberText } from '../floor/number-text.js';
import { type Outcome, ok } from '../floor/problem.js';
import { ruleNumber, type SiteRules } from '../rules/schema.js';
import type { Axes } from './axes.js';
import { chosenItem, findItem, itemsOf, priceOf } from './items.js';
import { unitGrid } from './roof.js';

export interface UnitChoice {
  readonly unit: FanFilterUnit | null;
  readonly count: number;
  /** Size along the own axes u and v. */
  readonly size: readonly [number, number];
  readonly tries: readonly Try[];
}

export interface Try {
  readonly choice: string;
  readonly tried: string;
  readonly outcome: string;
}

interface Target {
  /** Supply flow [m3/s]. */
  readonly flow: number;
  /** Share of the clean area that must lie under filters. */
  readonly coverage: number;
  readonly words: string;
}

const flowText = (flow: number): string => `${numberText(flow * 3600)} m3/h`;

/** What the cleanliness need asks of the supply; undefined when nothing is asked or no flow can reach it. */
function targetOf(
  brief: Pick<CompleteBrief, 'needs'>,
  enclosure: CompleteEnclosure,
  axes: Axes,
  rules: SiteRules,
): { target?: Target; note?: Try } {
  const need = brief.needs.cleanliness.find((c) => c.where === enclosure.id);
  if (!need) return {};
  const choice = 'fan filter units';
  if (need.isoClass <= ruleNumber(rules, 'air.unidirectional-from-class')) {
    const velocity = ruleNumber(rules, 'air.unidirectional-velocity');
    const flow = velocity * axes.tableLength * axes.tableWidth;
    return {
      target: {
        flow,
        coverage: ruleNumber(rules, 'air.coverage'),
        words: `${numberText(velocity)} m/s over the clean area: ${flowText(flow)}`,
      },
    };
  }
  const limit = classLimit(need.isoClass, need.size);
  if (!limit.ok) return { note: { choice, tried: `ISO class ${need.isoClass}`, outcome: limit.problems[0]!.message } };
  // As the check does: work in the enclosure means at least one person in it.
  const people = need.people ?? (need.state === 'operational' ? 1 : 0);
  const emission = people === 0 ? ok(0) : humanEmission(need.clothing ?? 'indoor', need.size);
  const perPerson = emission.ok ? emission.value : 0;
  const given = brief.needs.background;
  const background = given
    ? scaledToSize(given.concentration, given.size, need.size)
    : scaledToSize(ruleNumber(rules, 'air.background'), 0.5e-6, need.size);
  const leak = ruleNumber(rules, 'air.induced-leak') * background;
  const filter = filterData('H14');
  const supply = leak + (filter.ok ? filter.value.integralPenetration : 0) * background;
  const flow = cleanAirFlow(people * perPerson, limit.value, ruleNumber(rules, 'air.limit-share'), supply);
  if (!flow.ok)
    return { note: { choice, tried: `ISO class ${need.isoClass} by dilution`, outcome: flow.problems[0]!.message } };
  return {
    target: { flow: flow.value, coverage: 0, words: `dilution to ISO class ${need.isoClass}: ${flowText(flow.value)}` },
  };
}

/** Count of one unit that reaches the target on this roof, in the orientation that holds most; `fits` false when it does not. */
function countFor(unit: FanFilterUnit, target: Target, axes: Axes, beamWidth: number) {
  const area = axes.tableLength * axes.tableWidth;
  const byFlow = Math.ceil(target.flow / unit.nominalFlow - 1e-9);
  const byCoverage = Math.ceil((target.coverage * area) / (unit.face[0] * unit.face[1]) - 1e-9);
  const wanted = Math.max(1, byFlow, byCoverage);
  const grids = (
    [
      [unit.size[1], unit.size[0]],
      [unit.size[0], unit.size[1]],
    ] as const
  ).map((size) => {
    const { columns, rows } = unitGrid({ length: axes.length, width: axes.width, beamWidth, unit: size });
    return { size, most: columns * rows };
  });
  const best = grids.reduce((a, b) => (b.most > a.most ? b : a));
  return { wanted, most: best.most, size: best.size, count: Math.min(wanted, best.most), fits: wanted <= best.most };
}

/**
 * Chooses fan filter units for an enclosure: as asked, else the cheapest set that gives the flow and coverage that the class
 * needs and fits on the roof; when none does, the set that gives most air, so that the check says what is missing.
 */
export function chooseUnits(
  brief: Pick<CompleteBrief, 'needs'>,
  enclosure: CompleteEnclosure,
  index: number,
  axes: Axes,
  beamWidth: number,
  catalogue: Catalogue,
  rules: SiteRules,
): Outcome<UnitChoice> {
  const path = ['layout', 'enclosures', index, 'unit'];
  const { target, note } = targetOf(brief, enclosure, axes, rules);
  const notes = note ? [note] : [];
  if ((!target && enclosure.unitCount === undefined && !enclosure.unit) || enclosure.unitCount === 0)
    return ok({ unit: null, count: 0, size: [1, 1], tries: notes });
  const named = enclosure.unit
    ? findItem<FanFilterUnit>(catalogue, enclosure.unit, ['fan filter unit'], path)
    : undefined;
  if (named && !named.ok) return named;
  const candidates = named?.ok ? [named.value] : itemsOf<FanFilterUnit>(catalogue, 'fan filter unit');
  const wish: Target = target ?? { flow: 0, coverage: 0, words: 'as asked' };
  const options = candidates.map((unit) => {
    const found = countFor(unit, wish, axes, beamWidth);
    const count = enclosure.unitCount === undefined ? found.count : Math.min(enclosure.unitCount, found.most);
    const fits = enclosure.unitCount === undefined ? found.fits : enclosure.unitCount <= found.most;
    return { unit, ...found, count, fits, wanted: enclosure.unitCount ?? found.wanted, flow: count * unit.nominalFlow };
  });
  const usable = options.filter((o) => o.count > 0);
  const fitting = usable.filter((o) => o.fits);
  const chosen =
    fitting.length > 0
      ? fitting.reduce((a, b) => (b.count * priceOf(b.unit) < a.count * priceOf(a.unit) ? b : a))
      : usable.reduce<(typeof options)[number] | undefined>(
          (a, b) => (a === undefined || b.flow > a.flow ? b : a),
          undefined,
        );
  const some = chosenItem(chosen?.unit, 'fan filter unit that fits on the roof of this enclosure', path);
  if (!some.ok || !chosen) return some.ok ? ok({ unit: null, count: 0, size: [1, 1], tries: notes }) : some;
  const tries = options.map(
    (o): Try => ({
      choice: 'fan filter units',
      tried: `${o.wanted} x ${o.unit.id} for ${wish.words}`,
      outcome:
        o === chosen
          ? o.fits
            ? `taken: ${flowText(o.flow)} at nominal flow`
            : `taken as the most that fits: ${o.count}, ${flowText(o.flow)}`
          : o.fits
            ? 'fits, but costs more'
            : `only ${o.most} fit on the roof`,
    }),
  );
  return ok({ unit: chosen.unit, count: chosen.count, size: chosen.size, tries: [...notes, ...tries] });
}
