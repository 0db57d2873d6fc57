export * from './document.js';
export * from './nearest.js';
export * from './path.js';
