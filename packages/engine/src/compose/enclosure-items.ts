import type { CompleteBrief, CompleteEnclosure } from '../brief/complete.js';
import type { SideName } from '../brief/schema.js';
import type { Catalogue, Cloth, Light, Sheet, Track } from '../catalogue/schema.js';
import type { DesignTable } from '../design/types.js';
import { type Outcome, ok, type Problem, problem, refuse } from '../floor/problem.js';
import type { SiteRules } from '../rules/schema.js';
import type { Axes } from './axes.js';
import type { Try } from './choose-units.js';
import { cheapest, chosenItem, findItem, itemsOf } from './items.js';
import { lightsThatFit } from './roof-parts.js';

/** What enclosures are composed from. */
export interface EnclosureContext {
  readonly brief: Pick<CompleteBrief, 'needs' | 'lasers'>;
  readonly tables: readonly DesignTable[];
  readonly catalogue: Catalogue;
  readonly rules: SiteRules;
}

/** Lights when the brief names no number (common practice). */
const defaultLights = { close: 2, 'walk-in': 4 } as const;

/** What closes the sides, the roof and the floor: items chosen once, before anything is placed. */
export interface EnclosureItems {
  readonly roofSheet: Sheet;
  readonly light: Light | null;
  readonly lightCount: number;
  readonly closures: Readonly<Record<SideName, Cloth | Sheet | null>>;
  readonly track: Track | undefined;
  readonly tries: readonly Try[];
}

const needsBarrier = (brief: Pick<CompleteBrief, 'lasers'>, tables: readonly string[]): boolean =>
  brief.lasers.some((l) => l.table !== undefined && tables.includes(l.table));

interface LightChoice {
  readonly light: Light | null;
  readonly count: number;
  readonly tries: readonly Try[];
}

/** Lights as asked, else the usual number or as many as fit, of the cheapest strip that fits. */
function chooseLights(
  enclosure: CompleteEnclosure,
  path: readonly (string | number)[],
  axes: Axes,
  catalogue: Catalogue,
): Outcome<LightChoice> {
  const asked = enclosure.lightCount;
  if (asked === 0) return ok({ light: null, count: 0, tries: [] });
  const strips = itemsOf<Light>(catalogue, 'light strip');
  const wanted = asked ?? defaultLights[enclosure.kind];
  const found = enclosure.light
    ? findItem<Light>(catalogue, enclosure.light, ['light strip'], [...path, 'light'])
    : chosenItem(
        cheapest(strips.filter((l) => lightsThatFit(axes, l) >= wanted)) ??
          [...strips].sort((a, b) => lightsThatFit(axes, b) - lightsThatFit(axes, a))[0],
        'light strip',
        [...path, 'light'],
      );
  if (!found.ok) return found;
  const most = lightsThatFit(axes, found.value);
  if (wanted <= most) return ok({ light: found.value, count: wanted, tries: [] });
  if (asked === undefined) {
    const outcome = most === 0 ? 'none fits under this roof; none is placed' : `only ${most} fit under this roof`;
    const tries = [{ choice: 'lights', tried: `${wanted} x ${found.value.id}`, outcome }];
    return ok({ light: most === 0 ? null : found.value, count: most, tries });
  }
  return refuse([
    problem(
      'compose/lights-do-not-fit',
      [...path, 'lightCount'],
      `${asked} x ${found.value.name} are asked for; ${most === 0 ? 'none fits' : `only ${most} fit`} under the roof of ${enclosure.id}.`,
      'Ask for fewer lights, or name a shorter light strip.',
    ),
  ]);
}

/** Items of an enclosure: as named, else chosen by rule. */
export function chooseItems(
  enclosure: CompleteEnclosure,
  index: number,
  axes: Axes,
  { brief, catalogue }: EnclosureContext,
): Outcome<EnclosureItems> {
  const path = ['layout', 'enclosures', index];
  const sheets = itemsOf<Sheet>(catalogue, 'sheet');
  const roofSheet = chosenItem(
    cheapest(sheets.filter((s) => !s.transparent && s.ratings.length === 0)),
    'opaque sheet for the roof',
    path,
  );
  const lights = chooseLights(enclosure, path, axes, catalogue);
  const barrier = needsBarrier(brief, enclosure.around);
  const cloths = itemsOf<Cloth>(catalogue, 'cloth');
  const chooseClosure = (side: SideName): Outcome<Cloth | Sheet | null> => {
    const { closure, item } = enclosure.sides[side];
    const at = [...path, 'sides', side, 'item'];
    if (closure === 'open') return ok(null);
    if (closure === 'rigid panel')
      return item
        ? findItem<Sheet>(catalogue, item, ['sheet'], at)
        : chosenItem(
            cheapest(sheets.filter((s) => (barrier ? s.ratings.length > 0 : s.transparent))),
            barrier ? 'sheet with a laser rating' : 'clear sheet',
            at,
          );
    if (item) return findItem<Cloth>(catalogue, item, ['cloth'], at);
    const purpose = closure === 'strip' ? 'clear strip' : barrier ? 'laser barrier' : 'clean-room curtain';
    return chosenItem(cheapest(cloths.filter((c) => c.purpose === purpose)), `cloth for ${purpose}`, at);
  };
  const sides = {
    south: chooseClosure('south'),
    east: chooseClosure('east'),
    north: chooseClosure('north'),
    west: chooseClosure('west'),
  };
  const problems: Problem[] = [roofSheet, lights, ...Object.values(sides)].flatMap((o) =>
    o.ok ? [] : [...o.problems],
  );
  if (problems.length > 0 || !roofSheet.ok || !lights.ok) return refuse(problems);
  const value = (side: SideName): Cloth | Sheet | null => {
    const chosen = sides[side];
    return chosen.ok ? chosen.value : null;
  };
  return ok({
    roofSheet: roofSheet.value,
    light: lights.value.light,
    lightCount: lights.value.count,
    tries: lights.value.tries,
    closures: { south: value('south'), east: value('east'), north: value('north'), west: value('west') },
    track: itemsOf<Track>(catalogue, 'track')[0],
  });
}
