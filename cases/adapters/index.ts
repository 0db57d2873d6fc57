import type { Adapters } from '../adapter.js';
import { airAdapters } from './air.js';
import { curtainAdapters } from './curtain.js';
import { cuttingAdapters } from './cutting.js';
import { frameAdapters } from './frame.js';
import { laserAdapters } from './laser.js';
import { roomAdapters } from './room.js';

export const adapters: Adapters = {
  ...laserAdapters,
  ...airAdapters,
  ...frameAdapters,
  ...curtainAdapters,
  ...cuttingAdapters,
  ...roomAdapters,
};
