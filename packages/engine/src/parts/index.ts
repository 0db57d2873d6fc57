export * from './cut-plans.js';
export * from './money.js';
export * from './parts-list.js';
export * from './tables.js';
