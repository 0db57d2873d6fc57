import { air } from './air.js';
import { curtain } from './curtain.js';
import { cutting } from './cutting.js';
import type { Discipline } from './discipline.js';
import { frame } from './frame.js';
import { laser } from './laser.js';
import { room } from './room.js';

/** Every discipline, in the order in which tables, overlays and chapters name them. */
export const disciplines: readonly Discipline[] = [laser, air, frame, curtain, cutting, room];
