export type { CureEdit } from './edit.js';
export { type Cure, type CureInput, type CureProgress, type CureSearch, searchCures } from './search.js';
