import { checkFrame } from '../check/frame.js';
import { unassessedIn } from '../check/unassessed.js';
import { frameTopics } from '../frame/index.js';
import { frameLoads } from '../overlay/frame.js';
import type { Discipline } from './discipline.js';

export const frame: Discipline = {
  id: 'frame',
  title: 'Frame',
  light: [checkFrame, unassessedIn('frame')],
  heavy: [],
  overlays: [frameLoads],
  topics: frameTopics,
};
