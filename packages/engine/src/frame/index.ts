export * from './bolt-preload.js';
export { frameCautions } from './cautions.js';
export * from './combined-stress.js';
export * from './foot-load-steps.js';
export * from './foot-loads.js';
export * from './groove-panel.js';
export * from './hollow-section-steps.js';
export * from './member-buckling.js';
export { frameMessages } from './messages.js';
export { outlineTorsionConstant } from './outline-torsion.js';
export * from './rectangle-torsion.js';
export * from './rectangular-hollow-section.js';
export * from './round-sections.js';
export { repairedOutline } from './section-outline.js';
export { sectionProperties } from './section-properties.js';
export {
  type BeamState,
  type Extreme,
  type SingleSpanResult,
  singleSpan,
  singleSpanAt,
} from './single-span.js';
export * from './single-span-steps.js';
export {
  aluminium,
  type BucklingClass,
  bucklingClasses,
  frameSources,
  gravitySource,
  type HollowFinish,
  nutFactors,
  partialFactors,
  slendernessToCheck,
  standardGravity,
} from './tables.js';
export * from './thermal-growth.js';
export * from './thin-wall-torsion.js';
export * from './tip-over.js';
export * from './tipping-edges.js';
export * from './tolerance-stack.js';
export { frameTopics } from './topics.js';
export * from './transmissibility.js';
export type {
  BeamEnds,
  BeamPointLoad,
  SectionOutline,
  SectionProperties,
  SingleSpan,
  SymmetricSection,
} from './types.js';
