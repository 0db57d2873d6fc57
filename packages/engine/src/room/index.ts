export { type AxisGap, axisGaps } from './axis-gaps.js';
export { clearStrip, type StripSide } from './clear-strip.js';
export { freeSwing, type SwingSector, swingArea, swingHolds, swingRing } from './door-swing.js';
export { type FreePiece, freePieces, offsetArea } from './free-space.js';
export {
  discPasses,
  narrowestWay,
  type WayEnds,
  type WayPlan,
  type WayRequest,
  type Ways,
  waysIn,
} from './narrowest-way.js';
export { overlapArea, type PlanShape } from './overlap.js';
export { type PlanGap, type StripSource, seenInterval, seenThroughGap, stripSourceWidths } from './sight-gap.js';
export { fromSprinkler, suspendedObstructionDepth } from './sprinkler.js';
export { diagonalError } from './survey-closing.js';
export { roomCautions, roomSources, sprinklerReach, type WorkingSpaceCondition } from './tables.js';
export { roomTopics } from './topics.js';
export type { Obstacle, RoundObstacle, WidthPlace } from './types.js';
export { type WorkingSpace, workingSpace } from './working-space.js';
