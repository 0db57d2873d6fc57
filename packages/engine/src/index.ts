export * from './air/index.js';
export { type CompleteBrief, completeBrief } from './brief/complete.js';
export { readBrief } from './brief/read.js';
export { type Brief, briefSchema, briefVersion } from './brief/schema.js';
export {
  type AmendedFigure,
  type AmendedPrice,
  type AmendmentInput,
  type Amendments,
  amendCatalogue,
  type FigureChange,
  type ProjectPrice,
} from './catalogue/amend.js';
export { type CatalogueFile, readCatalogue } from './catalogue/read.js';
export type * from './catalogue/schema.js';
export { catalogueFileSchema, itemSchema } from './catalogue/schema.js';
export { type SoldBy, soldBy, unitOfWord } from './catalogue/sold-by.js';
export * from './compare/index.js';
export { composeDesign } from './compose/index.js';
export {
  type Cure,
  type CureEdit,
  type CureInput,
  type CureProgress,
  type CureSearch,
  searchCures,
} from './cure/index.js';
export * from './curtain/index.js';
export * from './cutting/index.js';
export { type BarJob, barJobs, type SheetJob, sheetJobs } from './design/cut-jobs.js';
export { leafTips } from './design/leaf-tips.js';
export type * from './design/types.js';
export {
  type Composed,
  catalogueFrom,
  composedFrom,
  type DesignInput,
  type DesignResult,
  designFrom,
  heavyFindings,
  lightFindings,
  revisionOf,
} from './design-from.js';
export { calculate, topics } from './discipline/calculate.js';
export { checkDesign, isDone } from './discipline/check.js';
export type { Discipline } from './discipline/discipline.js';
export { disciplines } from './discipline/list.js';
export { overlayMarks, overlays } from './discipline/overlays.js';
export { bytesHash, canonicalText, contentHash, utf8Bytes } from './floor/hash.js';
export * from './floor/index.js';
export { forgetRemembered } from './floor/remembered.js';
export * from './frame/index.js';
export * from './laser/index.js';
export * from './parts/index.js';
export { type Section, sectionsOf } from './reading/sections.js';
export * from './room/index.js';
export { knownRules, type RuleId, ruleIds } from './rules/known.js';
export { readRules } from './rules/read.js';
export { type Rule, ruleNumber, ruleProfileSchema, type SiteRules } from './rules/schema.js';
export { engineVersion } from './version.js';
