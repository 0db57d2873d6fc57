import type { Adapters } from '../adapter.js';

export const airAdapters: Adapters = {};
