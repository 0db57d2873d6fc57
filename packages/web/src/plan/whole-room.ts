import { bounds, leafTips } from '@cloche/engine';
import type { Design } from '../engine/contract.js';
import { type Box, fittedBetween } from './view.js';
import { setWholeView, usePlanView } from './view-store.js';
import { wallThickness } from './wall-band.js';

/** Room for dimensions beside the plan, under the words above it and over the buttons at its foot, pixels. */
const free = { side: 64, top: 88, bottom: 126 };
/** What dimensions take of it, where a leaf that swings out may lie over them. */
const dimensions = 44;

/** Brings the whole room on the sheet, between the words above it and what stands over its foot. */
export function showWholeRoom({ room }: Design): void {
  const { size, type, legend } = usePlanView.getState();
  const walls = grown(bounds(room.outline), wallThickness);
  const edges = { side: free.side * type, top: free.top * type, bottom: free.bottom * type + legend };
  const { scale } = fittedBetween(walls, size, edges);
  const reach = beyond(bounds([walls.min, walls.max, ...leafTips(room)]), walls);
  const more = (metres: number) => Math.max(0, metres * scale - (dimensions - 8) * type);
  setWholeView(
    fittedBetween(walls, size, {
      side: edges.side + more(reach.side),
      top: edges.top + more(reach.top),
      bottom: edges.bottom + more(reach.bottom),
    }),
  );
}

const grown = ({ min, max }: Box, by: number): Box => ({
  min: [min[0] - by, min[1] - by],
  max: [max[0] + by, max[1] + by],
});

const beyond = (all: Box, walls: Box) => ({
  side: Math.max(walls.min[0] - all.min[0], all.max[0] - walls.max[0]),
  top: all.max[1] - walls.max[1],
  bottom: walls.min[1] - all.min[1],
});
