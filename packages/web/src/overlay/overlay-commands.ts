import type { Command } from '../commands/command.js';
import { show, useWorkbench } from '../state/store.js';
import { overlayTexts as say } from '../texts/overlay.js';
import { layOver, useOverlay } from './overlay-store.js';

function onPlan(id: string): void {
  if (useWorkbench.getState().view !== 'plan') show('plan');
  layOver(id);
}

/** One command for each overlay that the engine offers, with the key that it brings. */
export const overlayCommands = (): readonly Command[] => [
  ...useWorkbench.getState().shelf.overlays.map(
    ({ id, title, key }): Command => ({
      id: `overlay-${id}`,
      title: say.lay(title),
      group: say.group,
      ...(key ? { keys: key } : {}),
      run: () => onPlan(id),
    }),
  ),
  {
    id: 'overlay-none',
    title: say.none,
    group: say.group,
    can: () => useOverlay.getState().shown !== null,
    run: () => layOver(null),
  },
];
