import type { CompleteBrief } from '../brief/complete.js';
import type { Question } from '../floor/finding.js';
import type { SiteRules } from '../rules/schema.js';

interface Ask {
  readonly question: Question;
  readonly open: (brief: CompleteBrief) => boolean;
}

/** Facts whose absence could change findings, with what is assumed meanwhile. */
const asks = (rules: SiteRules): readonly Ask[] => [
  {
    open: (b) => b.needs.cleanliness.length > 0 && b.needs.background?.measured !== true,
    question: {
      id: 'needs.background',
      path: ['needs', 'background'],
      question: 'How many particles are in the air of the room today, measured?',
      assumed: `${rules.byId['air.background'].written} at 0.5 µm and larger, unless the brief gives another number`,
      reason: 'Nobody measured it; leakage into an enclosure brings this air in.',
      effect: 'Steady concentration and clean-up time change in proportion where leakage decides.',
      weight: 0.9,
    },
  },
  {
    open: (b) => b.room.ceiling === undefined || b.room.ceiling.kind === 'unknown',
    question: {
      id: 'room.ceiling',
      path: ['room', 'ceiling', 'kind'],
      question: 'What is the ceiling made of, and who may confirm that it carries loads?',
      assumed: 'nothing may hang from it',
      reason: 'The brief does not say.',
      effect: 'Every fixing overhead stays not assessed.',
      weight: 0.8,
    },
  },
  {
    open: (b) =>
      b.tables.some((t) => t.kind !== 'bench') &&
      b.assumptions.some((a) => a.path[0] === 'tables' && a.path[2] === 'travel'),
    question: {
      id: 'tables.travel',
      path: ['tables', 0, 'travel'],
      question: 'How far can the table tops move on their supports?',
      assumed: '5 mm',
      reason: 'The brief does not say for every table.',
      effect: 'The clear distance that nothing may bridge grows with it.',
      weight: 0.4,
    },
  },
  {
    open: (b) => b.room.floor?.pointLoad === undefined && b.layout.enclosures.length > 0,
    question: {
      id: 'room.floor.pointLoad',
      path: ['room', 'floor', 'pointLoad'],
      question: 'What point load may stand on the floor?',
      assumed: 'nothing: foot loads are listed, not judged',
      reason: 'The brief does not say.',
      effect: 'Foot loads on the floor stay not assessed.',
      weight: 0.5,
    },
  },
  {
    open: (b) => b.lasers.some((l) => l.class === undefined),
    question: {
      id: 'lasers.class',
      path: ['lasers'],
      question: 'Which class does the maker declare for each laser?',
      assumed: 'nothing: limits are computed from wavelength and power',
      reason: 'The brief does not say for every laser.',
      effect: 'Signs, entries and interlocks depend on it.',
      weight: 0.6,
    },
  },
  {
    open: (b) => b.room.people === undefined,
    question: {
      id: 'room.people',
      path: ['room', 'people'],
      question: 'How many people work in the room at once?',
      assumed: 'not known',
      reason: 'The brief does not say.',
      effect: 'Widths and number of ways out depend on it in many national rules.',
      weight: 0.5,
    },
  },
];

/** Open questions, the weightiest first. */
export const composeQuestions = (brief: CompleteBrief, rules: SiteRules): Question[] =>
  asks(rules)
    .filter((a) => a.open(brief))
    .map((a) => a.question)
    .sort((a, b) => b.weight - a.weight || (a.id < b.id ? -1 : 1));
