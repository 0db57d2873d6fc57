import { bounds } from '@cloche/engine';
import type { Design } from '../engine/contract.js';
import { fittedBetween } from './view.js';
import { setWholeView, usePlanView } from './view-store.js';
import { wallThickness } from './wall-band.js';

/** Room for dimensions and names beside the plan, pixels. */
const side = 64;
/** Dimensions under the words that choose the view. */
const top = 88;
/** Dimensions over the buttons and what can be put in. */
const bottom = 126;

/** Brings the whole room on the sheet, between the words above it and what stands over its foot. */
export function showWholeRoom({ room }: Design): void {
  const { size, type, legend } = usePlanView.getState();
  const { min, max } = bounds(room.outline);
  const walls = {
    min: [min[0] - wallThickness, min[1] - wallThickness] as const,
    max: [max[0] + wallThickness, max[1] + wallThickness] as const,
  };
  setWholeView(fittedBetween(walls, size, { side: side * type, top: top * type, bottom: bottom * type + legend }));
}
