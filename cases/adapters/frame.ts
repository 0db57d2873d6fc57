import type { Adapters } from '../adapter.js';

export const frameAdapters: Adapters = {};
