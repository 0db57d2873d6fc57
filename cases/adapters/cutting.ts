import type { Adapters } from '../adapter.js';

export const cuttingAdapters: Adapters = {};
