import { fitted } from '../plan/view.js';
import { setPlanView, usePlanView } from '../plan/view-store.js';
import { showWholeRoom } from '../plan/whole-room.js';
import { useWorkbench } from '../state/store.js';
import { boxRoundAll } from './boxes.js';

/** Room round what is looked at, pixels. */
const margin = 110;

/** Brings everything in hand close. */
export function zoomToHand(): void {
  const { computed, selection } = useWorkbench.getState();
  const box = computed ? boxRoundAll(computed.design, selection) : undefined;
  if (box) setPlanView(fitted(box, usePlanView.getState().size, margin));
}

export function zoomToRoom(): void {
  const { computed } = useWorkbench.getState();
  if (!computed) return;
  showWholeRoom(computed.design);
}
