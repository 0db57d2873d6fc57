import { airTopics } from '../air/index.js';
import { checkAir } from '../check/air.js';
import { unassessedIn } from '../check/unassessed.js';
import { airSupply } from '../overlay/air.js';
import type { Discipline } from './discipline.js';

export const air: Discipline = {
  id: 'air',
  title: 'Air',
  light: [checkAir, unassessedIn('air')],
  heavy: [],
  overlays: [airSupply],
  topics: airTopics,
};
