import type { Assumption } from '../design/types.js';
import { millimetreText } from '../floor/number-text.js';
import { commonPractice, type Source } from '../floor/source.js';
import type { RuleId } from '../rules/known.js';
import { ruleNumber, type SiteRules } from '../rules/schema.js';
import type { Brief, BriefEnclosure, BriefLaser, BriefRun, BriefTable, SideName } from './schema.js';

/** The same record with every optional list present. */
export type WithLists<T> = {
  [K in keyof T as NonNullable<T[K]> extends readonly unknown[] ? K : never]-?: NonNullable<T[K]>;
} & { [K in keyof T as NonNullable<T[K]> extends readonly unknown[] ? never : K]: T[K] };

type With<T, K extends keyof T> = T & { readonly [P in K]-?: NonNullable<T[P]> };

export type Closure = NonNullable<NonNullable<BriefEnclosure['sides']>[SideName]>;
export type CompleteEnclosure = Omit<With<BriefEnclosure, 'clearHeight' | 'hemGap' | 'feet'>, 'sides' | 'gaps'> & {
  readonly sides: Readonly<Record<SideName, Closure>>;
  readonly gaps: Readonly<Record<SideName, number>>;
};
export type CompleteRun = With<BriefRun, 'hemGap' | 'corner'>;
export type CompleteTable = With<BriefTable, 'travel' | 'turn'>;
export type CompleteLaser = With<BriefLaser, 'foreseeableTilt'>;

/** A brief whose lists are all there and whose defaults are filled in, each with its reason. */
export interface CompleteBrief {
  readonly project: Brief['project'];
  readonly site: WithLists<NonNullable<Brief['site']>>;
  readonly room: WithLists<Brief['room']> & { readonly meanAbsorption: number };
  readonly tables: readonly CompleteTable[];
  readonly equipment: NonNullable<Brief['equipment']>;
  readonly lasers: readonly CompleteLaser[];
  readonly needs: WithLists<NonNullable<Brief['needs']>>;
  readonly layout: Omit<WithLists<NonNullable<Brief['layout']>>, 'enclosures' | 'runs'> & {
    readonly enclosures: readonly CompleteEnclosure[];
    readonly runs: readonly CompleteRun[];
  };
  readonly assumptions: readonly Assumption[];
}

export const sideNames: readonly SideName[] = ['south', 'east', 'north', 'west'];

/** Defaults that are no site rule; every one is a rule of the trade. */
const defaults = {
  /** From the table edge to the frame of a close enclosure: hands reach round, hems do not touch. */
  closeGap: 0.1,
  closeClearHeight: 2.1,
  walkInClearHeight: 2.3,
  /** A floated top moves a few millimetres. */
  travel: 0.005,
  meanAbsorption: 0.15,
} as const;

type Note = (path: readonly (string | number)[], what: string, value: string, reason: string, source?: Source) => void;

/**
 * Fills in every default once and keeps its reason, so that sheets can say "assumed".
 * @param brief as read
 * @param rules site rules in force: the source of most defaults
 */
export function completeBrief(brief: Brief, rules: SiteRules): CompleteBrief {
  const assumptions: Assumption[] = [];
  const note: Note = (path, what, value, reason, source = commonPractice) =>
    assumptions.push({ path, what, value, reason, source });
  const byRule = (id: RuleId, path: readonly (string | number)[], what: string): number => {
    const rule = rules.byId[id];
    note(path, what, rule.written, `site rule ${id}`, rule.source);
    return ruleNumber(rules, id);
  };
  const { room, needs = {}, layout = {}, site = {} } = brief;
  if (room.meanAbsorption === undefined)
    note(
      ['room', 'meanAbsorption'],
      'mean sound absorption of the room',
      '0.15',
      'not given; a room with hard surfaces',
    );
  if (site.rules === undefined)
    note(['site', 'rules'], 'rule profile', rules.profile, 'no profile is named in the brief');
  return {
    project: brief.project,
    site: {
      ...site,
      overrides: site.overrides ?? [],
      prices: site.prices ?? [],
      changes: site.changes ?? [],
    },
    room: {
      ...room,
      diagonals: room.diagonals ?? [],
      doors: room.doors ?? [],
      windows: room.windows ?? [],
      columns: room.columns ?? [],
      beams: room.beams ?? [],
      obstructions: room.obstructions ?? [],
      sprinklers: room.sprinklers ?? [],
      detectors: room.detectors ?? [],
      exitSigns: room.exitSigns ?? [],
      boards: room.boards ?? [],
      airTerminals: room.airTerminals ?? [],
      luminaires: room.luminaires ?? [],
      meanAbsorption: room.meanAbsorption ?? defaults.meanAbsorption,
    },
    tables: (brief.tables ?? []).map((table, i) => completeTable(table, i, note)),
    equipment: brief.equipment ?? [],
    lasers: (brief.lasers ?? []).map((laser, i) => ({
      ...laser,
      foreseeableTilt:
        laser.foreseeableTilt ??
        byRule(
          'laser.foreseeable-tilt',
          ['lasers', i, 'foreseeableTilt'],
          `foreseeable tilt of the beam of ${laser.id}`,
        ),
    })),
    needs: {
      ...needs,
      cleanliness: needs.cleanliness ?? [],
      darkness: needs.darkness ?? [],
      access: needs.access ?? [],
      ways: needs.ways ?? [],
      light: needs.light ?? [],
      temperature: needs.temperature ?? [],
      movable: needs.movable ?? [],
      phases: needs.phases ?? [],
      hazards: needs.hazards ?? [],
    },
    layout: {
      ...layout,
      covers: layout.covers ?? [],
      signs: layout.signs ?? [],
      stops: layout.stops ?? [],
      interlocks: layout.interlocks ?? [],
      sensors: layout.sensors ?? [],
      enclosures: (layout.enclosures ?? []).map((e, i) => completeEnclosure(e, i, needs.movable ?? [], note, byRule)),
      runs: (layout.runs ?? []).map((run, i) => completeRun(run, i, note, byRule)),
    },
    assumptions,
  };
}

function completeTable(table: BriefTable, index: number, note: Note): CompleteTable {
  if (table.travel === undefined && table.kind !== 'bench')
    note(
      ['tables', index, 'travel'],
      `travel of ${table.id}`,
      millimetreText(defaults.travel),
      'not given; a floated top moves a few millimetres',
    );
  return { ...table, turn: table.turn ?? 0, travel: table.travel ?? (table.kind === 'bench' ? 0 : defaults.travel) };
}

function completeEnclosure(
  enclosure: BriefEnclosure,
  index: number,
  movable: readonly string[],
  note: Note,
  byRule: (id: RuleId, path: readonly (string | number)[], what: string) => number,
): CompleteEnclosure {
  const path = ['layout', 'enclosures', index];
  const close = enclosure.kind === 'close';
  const gapOf = (): number => {
    if (!close) return byRule('way.clear-width', [...path, 'gap'], `way round the tables in ${enclosure.id}`);
    note(
      [...path, 'gap'],
      `clear distance from the tables to the frame of ${enclosure.id}`,
      millimetreText(defaults.closeGap),
      'not given',
    );
    return defaults.closeGap;
  };
  const needsGap = enclosure.gap === undefined && sideNames.some((side) => enclosure.gaps?.[side] === undefined);
  const gap = enclosure.gap ?? (needsGap ? gapOf() : 0);
  const clearHeight = enclosure.clearHeight ?? (close ? defaults.closeClearHeight : defaults.walkInClearHeight);
  if (enclosure.clearHeight === undefined)
    note([...path, 'clearHeight'], `clear height of ${enclosure.id}`, millimetreText(clearHeight), 'not given');
  const feet = enclosure.feet ?? (movable.includes(enclosure.id) ? 'caster' : 'levelling');
  if (enclosure.feet === undefined)
    note(
      [...path, 'feet'],
      `feet of ${enclosure.id}`,
      feet,
      feet === 'caster' ? 'it shall be movable' : 'not given; it stays in place',
    );
  const closureOf = (side: SideName): Closure => {
    const given = enclosure.sides?.[side];
    if (!given)
      note(
        [...path, 'sides', side],
        `${side} side of ${enclosure.id}`,
        'curtain',
        'not given; a curtain opens anywhere',
      );
    return given ?? { closure: 'curtain' };
  };
  const record = <T>(of: (side: SideName) => T): Record<SideName, T> => ({
    south: of('south'),
    east: of('east'),
    north: of('north'),
    west: of('west'),
  });
  const { sides: _sides, gaps: _gaps, ...rest } = enclosure;
  return {
    ...rest,
    clearHeight,
    feet,
    hemGap: enclosure.hemGap ?? byRule('curtain.hem-gap', [...path, 'hemGap'], `hem gap of ${enclosure.id}`),
    sides: record(closureOf),
    gaps: record((side) => enclosure.gaps?.[side] ?? gap),
  };
}

function completeRun(
  run: BriefRun,
  index: number,
  note: Note,
  byRule: (id: RuleId, path: readonly (string | number)[], what: string) => number,
): CompleteRun {
  const path = ['layout', 'runs', index];
  const bends = run.path.length > 2;
  if (run.corner === undefined && bends)
    note(
      [...path, 'corner'],
      `corners of ${run.id}`,
      'curve',
      'not given; one curtain round a bend beats two that meet',
    );
  return {
    ...run,
    corner: run.corner ?? 'curve',
    hemGap: run.hemGap ?? byRule('curtain.hem-gap', [...path, 'hemGap'], `hem gap of ${run.id}`),
  };
}
