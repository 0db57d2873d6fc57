import type { Adapters } from '../adapter.js';

export const laserAdapters: Adapters = {};
