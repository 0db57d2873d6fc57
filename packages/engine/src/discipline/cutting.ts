import { checkCutting } from '../check/cutting.js';
import { unassessedIn } from '../check/unassessed.js';
import { cuttingTopics } from '../cutting/index.js';
import type { Discipline } from './discipline.js';

export const cutting: Discipline = {
  id: 'cutting',
  title: 'Cutting',
  light: [checkCutting, unassessedIn('cutting')],
  heavy: [],
  overlays: [],
  topics: cuttingTopics,
};
