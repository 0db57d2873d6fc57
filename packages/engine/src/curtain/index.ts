export { cheapestSupports, type PricedSupports } from './cheapest-supports.js';
export { bendTangent, type CornerGeometry, type CornerQuestion, cornerGeometry } from './corner.js';
export { curtainDrop, type DropQuestion } from './drop.js';
export { evenSupports } from './even-supports.js';
export { fewestSupports, supportsKeep } from './fewest-supports.js';
export { overlapRay } from './overlap.js';
export { coveredLength, type FullnessBand, panelWidthBand } from './panel-width.js';
export { type RunMassQuestion, runMassPerLength } from './run-mass.js';
export { type RunnerQuestion, type Runners, runnerCount, runnersOf } from './runners.js';
export {
  type PanelAim,
  type PanelChoice,
  type PanelQuestion,
  type PanelSelection,
  selectPanels,
} from './select-panels.js';
export { supportLoadBound } from './support-bound.js';
export { type BeamQuestion, type BeamReactions, hangingSupportLoads, supportLoads } from './support-loads.js';
export { supportWindows, type WindowDemand } from './support-windows.js';
export { curtainTopics } from './topics.js';
export { type TrackAim, type TrackPieces, type TrackQuestion, trackPieces } from './track-pieces.js';
export type {
  ForbiddenStretch,
  PointLoad,
  PricedLength,
  StretchLoad,
  SupportCandidate,
  SupportDemand,
  SupportWindow,
} from './types.js';
export { type WorstLoad, worstSupportLoad } from './worst-support-load.js';
