import type { CompleteBrief } from '../brief/complete.js';
import type { Decider, Discipline, Finding } from '../floor/finding.js';
import { commonPractice } from '../floor/source.js';

/** What a brief may state that no check computes with yet. Each becomes an honest finding when it is used. */
interface Unassessed {
  readonly id: string;
  readonly discipline: Discipline;
  readonly requirement: string;
  readonly why: string;
  readonly decider: Decider;
  /** How often the brief uses it; 0 when it does not. */
  readonly used: (brief: CompleteBrief) => boolean;
}

const entries: readonly Unassessed[] = [
  { id: 'phases', discipline: 'room', requirement: 'Building in phases', why: 'Phases are kept with the project, but lists and checks are not yet made phase by phase.', decider: 'group', used: (b) => b.needs.phases.length > 0 },
  { id: 'electrical-supply', discipline: 'air', requirement: 'Electrical load within the supply', why: 'Loads are listed, but the sum against the supply, circuits and protection are not assessed.', decider: 'electrician', used: (b) => b.needs.electricalSupply !== undefined },
  { id: 'budget', discipline: 'cutting', requirement: 'Cost within the budget', why: 'The parts list is priced from the catalogue, but delivery, work and tax are unknown, so no sum is held against the budget.', decider: 'purchasing', used: (b) => b.needs.budget !== undefined },
  { id: 'seismic', discipline: 'frame', requirement: 'Standing in an earthquake', why: 'Earthquake loads are not computed; the local code and a licensed engineer decide.', decider: 'structural engineer', used: (b) => b.site.seismic === true },
];

/** Findings for what the brief states outside any one discipline's checks. */
export const unassessedFindings = (brief: CompleteBrief): Finding[] =>
  entries
    .filter((e) => e.used(brief))
    .map((e) => ({
      id: `${e.discipline}/${e.id}`,
      discipline: e.discipline,
      subject: 'project',
      requirement: e.requirement,
      verdict: 'not assessed',
      message: e.why,
      demand: null,
      capacity: null,
      unit: '1',
      utilisation: null,
      calculation: null,
      source: commonPractice,
      decider: e.decider,
      required: true,
      cautions: [],
      asks: [],
    }));
