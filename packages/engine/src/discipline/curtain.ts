import { checkCover } from '../check/cover.js';
import { checkCurtain } from '../check/curtain.js';
import { unassessedIn } from '../check/unassessed.js';
import { curtainTopics } from '../curtain/index.js';
import { curtainSupports } from '../overlay/curtain.js';
import type { Discipline } from './discipline.js';

export const curtain: Discipline = {
  id: 'curtain',
  title: 'Curtains',
  light: [checkCurtain, checkCover, unassessedIn('curtain')],
  heavy: [],
  overlays: [curtainSupports],
  topics: curtainTopics,
};
