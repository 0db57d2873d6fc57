import { bounds } from '@cloche/engine';
import { fitted } from '../plan/view.js';
import { setPlanView, usePlanView } from '../plan/view-store.js';
import { wallThickness } from '../plan/wall-band.js';
import { useWorkbench } from '../state/store.js';
import { boxRoundAll } from './boxes.js';

/** Room round what is looked at, pixels. */
const margin = 110;
const roomMargin = 64;

/** Brings everything in hand close. */
export function zoomToHand(): void {
  const { computed, selection } = useWorkbench.getState();
  const box = computed ? boxRoundAll(computed.design, selection) : undefined;
  if (box) setPlanView(fitted(box, usePlanView.getState().size, margin));
}

export function zoomToRoom(): void {
  const { computed } = useWorkbench.getState();
  if (!computed) return;
  const { min, max } = bounds(computed.design.room.outline);
  const wide = {
    min: [min[0] - wallThickness, min[1] - wallThickness] as const,
    max: [max[0] + wallThickness, max[1] + wallThickness] as const,
  };
  setPlanView(fitted(wide, usePlanView.getState().size, roomMargin));
}
