import type { Adapters } from '../adapter.js';

export const curtainAdapters: Adapters = {};
