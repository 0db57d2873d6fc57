import type { Command } from '../commands/command.js';
import { show, useWorkbench } from '../state/store.js';
import { overlayTexts as say } from '../texts/overlay.js';
import { keyOfOverlay, overlayIds } from './overlay-keys.js';
import { layOver, useOverlay } from './overlay-store.js';

const titleOf = (id: string): string => useWorkbench.getState().shelf.overlays.find((o) => o.id === id)?.title ?? id;

function onPlan(id: string): void {
  if (useWorkbench.getState().view !== 'plan') show('plan');
  layOver(id);
}

export const overlayCommands: readonly Command[] = [
  ...overlayIds.map((id): Command => {
    const keys = keyOfOverlay(id);
    return {
      id: `overlay-${id}`,
      get title() {
        return say.lay(titleOf(id));
      },
      group: say.group,
      ...(keys ? { keys } : {}),
      can: () => useWorkbench.getState().shelf.overlays.some((o) => o.id === id),
      run: () => onPlan(id),
    };
  }),
  {
    id: 'overlay-none',
    title: say.none,
    group: say.group,
    can: () => useOverlay.getState().shown !== null,
    run: () => layOver(null),
  },
];
