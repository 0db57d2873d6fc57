export { longestUsable } from './bar-model.js';
export { barPlanCalculation, barUnit, sheetPlanCalculation } from './calculations.js';
export { planBars } from './plan-bars.js';
export { planSheets } from './plan-sheets.js';
export { cuttingTopics } from './topics.js';
export * from './types.js';
