import type { Adapters } from '../adapter.js';

export const roomAdapters: Adapters = {};
