import type { CompleteBrief } from '../brief/complete.js';
import { type Decider, type DisciplineId, type Finding, notJudged } from '../floor/finding.js';
import { commonPractice } from '../floor/source.js';
import type { CheckContext } from './context.js';

/** What a brief may state that no check computes with yet. Each becomes an honest finding when it is used. */
interface Unassessed {
  readonly id: string;
  readonly discipline: DisciplineId;
  readonly requirement: string;
  readonly why: string;
  readonly decider: Decider;
  /** How often the brief uses it; 0 when it does not. */
  readonly used: (brief: CompleteBrief) => boolean;
}

/** Everything in the brief that stands on floor or tables. */
const things = (b: CompleteBrief) => [...b.equipment, ...b.tables.flatMap((t) => t.equipment ?? [])];

const entries: readonly Unassessed[] = [
  {
    id: 'phases',
    discipline: 'room',
    requirement: 'Building in phases',
    why: 'Phases are kept with the project, but lists and checks are not yet made phase by phase.',
    decider: 'group',
    used: (b) => b.needs.phases.length > 0,
  },
  {
    id: 'electrical-supply',
    discipline: 'air',
    requirement: 'Electrical load within the supply',
    why: 'Loads are not summed up against supply, circuits and protection.',
    decider: 'electrician',
    used: (b) =>
      b.needs.electricalSupply !== undefined ||
      things(b).some((e) => e.electricalLoad !== undefined) ||
      b.lasers.some((l) => l.electricalLoad !== undefined),
  },
  {
    id: 'budget',
    discipline: 'cutting',
    requirement: 'Cost within the budget',
    why: 'The parts list is priced from the catalogue, but delivery, work and tax are unknown, so no sum is held against the budget.',
    decider: 'purchasing',
    used: (b) => b.needs.budget !== undefined,
  },
  {
    id: 'seismic',
    discipline: 'frame',
    requirement: 'Standing in an earthquake',
    why: 'Earthquake loads are not computed; the local code and a licensed engineer decide.',
    decider: 'structural engineer',
    used: (b) => b.site.seismic === true,
  },
  {
    id: 'distributed-floor-load',
    discipline: 'frame',
    requirement: 'Floor carries what stands on an area',
    why: 'Only single feet are held against a point load; the load spread over the floor is not summed up.',
    decider: 'structural engineer',
    used: (b) => b.room.floor?.distributedLoad !== undefined,
  },
  {
    id: 'table-on-casters',
    discipline: 'frame',
    requirement: 'Tables that roll stay clear of frames and curtains',
    why: 'Tables on casters are drawn where they stand; the places that they can be moved to are not computed.',
    decider: 'group',
    used: (b) => b.tables.some((t) => t.onCasters === true),
  },
  {
    id: 'luminaires',
    discipline: 'room',
    requirement: 'Luminaires of the room stay clear and in reach',
    why: 'Clashes of luminaires with roofs and tracks, and the shadows of these, are not computed.',
    decider: 'electrician',
    used: (b) => b.room.luminaires.length > 0,
  },
  {
    id: 'table-tolerance',
    discipline: 'room',
    requirement: 'Clear distances hold with the tolerance of the tables',
    why: 'Distances are computed with tables at their stated size and place; their tolerance is not added.',
    decider: 'group',
    used: (b) => b.tables.some((t) => t.tolerance !== undefined),
  },
  {
    id: 'movable-obstructions',
    discipline: 'room',
    requirement: 'Movable things leave the ways free',
    why: 'Things marked as movable are taken where they were surveyed; other places are not computed.',
    decider: 'group',
    used: (b) => b.room.obstructions.some((o) => o.movable === true),
  },
  {
    id: 'persons-on-ways',
    discipline: 'room',
    requirement: 'Ways are wide enough for the number of persons',
    why: 'Widths are held against the site rules or the width asked for; national tables by number of persons are not applied.',
    decider: 'fire authority',
    used: (b) => b.needs.ways.some((w) => w.persons !== undefined),
  },
  {
    id: 'room-scatter',
    discipline: 'laser',
    requirement: 'Light scattered by the walls stays below the limit',
    why: 'The field that bright walls scatter back into the room is not computed.',
    decider: 'laser safety officer',
    used: (b) => b.room.wallReflectance !== undefined,
  },
  {
    id: 'split-beams',
    discipline: 'laser',
    requirement: 'Beams behind splitters',
    why: 'The share that goes on behind a splitter is not used: every leg is taken with the full power, which is the safe side.',
    decider: 'laser safety officer',
    used: (b) => b.lasers.some((l) => l.legs?.some((leg) => leg.share !== undefined) === true),
  },
  {
    id: 'elevation-with-legs',
    discipline: 'laser',
    requirement: 'Elevation of a beam that has legs',
    why: 'Where legs are given, their heights are used and the elevation is not.',
    decider: 'laser safety officer',
    used: (b) => b.lasers.some((l) => (l.elevation ?? 0) !== 0 && (l.legs ?? []).length > 0),
  },
  {
    id: 'settling-time',
    discipline: 'laser',
    requirement: 'An entry does not stop a laser that settles slowly',
    why: 'Settling times are kept, but which entry stops which laser is not computed yet.',
    decider: 'group',
    used: (b) => b.lasers.some((l) => (l.settlingTime ?? 0) > 0),
  },
  {
    id: 'timed-bypass',
    discipline: 'laser',
    requirement: 'Timed passage through an interlocked entry',
    why: 'Whether a contact may be bypassed for a passage depends on the exposure at the entry, which is not computed yet.',
    decider: 'laser safety officer',
    used: (b) => b.layout.interlocks.some((i) => i.defeatable === true),
  },
  {
    id: 'window-in-door',
    discipline: 'laser',
    requirement: 'A covered pane in a door stays covered when the door moves',
    why: 'A cover on a door moves with it; what the open door lets through is not computed.',
    decider: 'laser safety officer',
    used: (b) => b.room.windows.some((w) => w.inDoor === true),
  },
];

/** The check that says for one discipline what the brief states and nothing computes with yet. */
export const unassessedIn =
  (discipline: DisciplineId) =>
  ({ brief }: CheckContext): Finding[] =>
    entries.filter((e) => e.discipline === discipline && e.used(brief)).map(findingOf);

const findingOf = (e: Unassessed): Finding => ({
  id: `${e.discipline}/${e.id}`,
  discipline: e.discipline,
  subject: 'project',
  requirement: e.requirement,
  ...notJudged,
  message: e.why,
  unit: '1',
  calculation: null,
  source: commonPractice,
  decider: e.decider,
  required: true,
  cautions: [],
  asks: [],
});
