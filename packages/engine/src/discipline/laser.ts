import { checkLaser } from '../check/laser.js';
import { unassessedIn } from '../check/unassessed.js';
import { laserTopics } from '../laser/index.js';
import { laserBarriers, laserReach, laserScatter } from '../overlay/laser.js';
import type { Discipline } from './discipline.js';

export const laser: Discipline = {
  id: 'laser',
  title: 'Laser',
  light: [checkLaser, unassessedIn('laser')],
  heavy: [],
  overlays: [laserReach, laserScatter, laserBarriers],
  topics: laserTopics,
};
