import type { CompleteBrief } from '../brief/complete.js';
import type { Catalogue } from '../catalogue/schema.js';
import type { Assumption, Barrier, Design, DesignEnclosure, DesignRun, Part } from '../design/types.js';
import type { Question } from '../floor/finding.js';
import type { Vec2 } from '../floor/geometry/vec.js';
import { type Outcome, ok, type Problem, refuse } from '../floor/problem.js';
import { remembered } from '../floor/remembered.js';
import type { SiteRules } from '../rules/schema.js';
import { engineVersion } from '../version.js';
import { type ComposedCover, composeCover } from './cover.js';
import { composeRun } from './curtain-run.js';
import { composeDevices } from './devices.js';
import { finishParts } from './draft.js';
import { composeEnclosure } from './enclosure.js';
import { composeLaser } from './laser.js';
import { composeQuestions } from './questions.js';
import { composeRoom } from './room.js';
import { composeEquipment, composeTable } from './table.js';

/** Enclosures and runs are kept with all their parts. */
const mostParts = 60;

/** An edit elsewhere does not compose an enclosure again: what it stands round and what is needed of it decide. */
const enclosureOf = remembered(
  composeEnclosure,
  (enclosure, index, { brief, tables, catalogue, rules }) => [
    enclosure,
    index,
    tables.filter((t) => enclosure.around.includes(t.id)),
    brief.needs.cleanliness,
    brief.needs.background,
    brief.lasers.map((l) => l.table),
    catalogue.hash,
    rules.hash,
  ],
  mostParts,
);

/** An edit elsewhere does not compose a run again: the heights round it and what can carry it decide. */
const runOf = remembered(
  composeRun,
  (run, index, { tables, enclosures, catalogue, rules, ...heights }) => [
    run,
    index,
    heights,
    tables.map(({ id, height }) => [id, height]),
    enclosures.map(({ id, clearHeight }) => [id, clearHeight]),
    catalogue.hash,
    rules.hash,
  ],
  mostParts,
);

/**
 * From the complete brief to the design.
 *
 *     1 room   2 tables and equipment   3 lasers   4 enclosures   5 curtain runs   6 covers   7 signs, stops, contacts, sensors
 *     8 questions
 * Every stage gives new values; problems of all stages are returned at once.
 * @param briefHash content hash of the brief as read
 */
export function composeDesign(
  brief: CompleteBrief,
  catalogue: Catalogue,
  rules: SiteRules,
  briefHash: string,
): Outcome<Design> {
  const problems: Problem[] = [];
  const kept = <T>(outcome: Outcome<T>): T[] => {
    if (outcome.ok) return [outcome.value];
    problems.push(...outcome.problems);
    return [];
  };
  const room = composeRoom(brief);
  const tables = brief.tables.map(composeTable);
  const equipment = brief.equipment.map((e) => composeEquipment(e, [0, 0], 0, 0));
  const lasers = brief.lasers.map((l, i) => composeLaser(l, i, tables, room.outline));
  const enclosed = brief.layout.enclosures.flatMap((e, i) =>
    kept(enclosureOf(e, i, { brief, tables, catalogue, rules })),
  );
  const enclosures = enclosed.map((e) => e.enclosure);
  const structureHeight = brief.room.ceiling?.structureHeight ?? room.height;
  const runContext = {
    catalogue,
    rules,
    roomHeight: room.height,
    structureHeight,
    floorFall: brief.room.floor?.fall ?? 0,
    tables,
    enclosures,
  };
  const hung = brief.layout.runs.flatMap((r, i) => kept(runOf(r, i, runContext)));
  const runs = hung.map((h) => h.run);
  const covers = brief.layout.covers.flatMap((c, i): ComposedCover[] =>
    kept(composeCover(c, i, room, catalogue, brief.lasers.length > 0)),
  );
  const placeOf = (id: string): Vec2 | undefined => placeById(id, room.doors, enclosures, runs);
  const devices = kept(composeDevices(brief, room, catalogue, placeOf)).flat();
  if (problems.length > 0) return refuse(problems);
  const parts: Part[] = [
    ...enclosed.flatMap((e) => e.parts),
    ...hung.flatMap((h) => h.parts),
    ...covers.flatMap((c) => finishParts(c.cover.id, [c.draft])),
    ...devices.flatMap((d) => finishParts(d.device.id, [d.draft])),
  ];
  const barriers: Barrier[] = [
    ...enclosed.flatMap((e) => e.barriers),
    ...hung.flatMap((h) => h.barriers),
    ...covers.map((c) => c.barrier),
  ];
  const assumptions: Assumption[] = [
    ...brief.assumptions,
    ...lasers.flatMap((l) => l.assumptions),
    ...hung.flatMap((h) => h.assumptions),
  ];
  const questions: Question[] = [...composeQuestions(brief, rules), ...hung.flatMap((h) => h.questions)].sort(
    (a, b) => b.weight - a.weight,
  );
  const { project } = brief;
  return ok({
    schema: 1,
    engine: engineVersion,
    inputs: { brief: briefHash, catalogue: catalogue.hash, rules: rules.hash },
    project: {
      name: project.name,
      number: project.number ?? '',
      owner: project.owner ?? '',
      author: project.author ?? '',
      contact: project.contact ?? '',
      laserSafetyOfficer: project.laserSafetyOfficer ?? '',
      invented: project.invented ?? false,
      units: project.units ?? 'metric',
    },
    rules: { profile: rules.profile, title: rules.title, jurisdiction: rules.jurisdiction, caution: rules.caution },
    room,
    tables,
    equipment,
    lasers: lasers.map((l) => l.laser),
    enclosures,
    runs,
    covers: covers.map((c) => c.cover),
    devices: devices.map((d) => d.device),
    barriers,
    parts,
    assumptions,
    questions,
  });
}

/** Where an interlock part sits in plan when it watches a door, an enclosure or a run. */
function placeById(
  id: string,
  doors: Design['room']['doors'],
  enclosures: readonly DesignEnclosure[],
  runs: readonly DesignRun[],
): Vec2 | undefined {
  const door = doors.find((d) => d.id === id);
  if (door) return door.from;
  const enclosure = enclosures.find((e) => e.id === id);
  if (enclosure) return enclosure.outline[0];
  return runs.find((r) => r.id === id)?.line[0];
}
