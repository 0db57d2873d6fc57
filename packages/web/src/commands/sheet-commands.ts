import { saveBrief } from '../state/file.js';
import { goToStep, redo, show, stepNames, undo, useWorkbench, type View } from '../state/store.js';
import { commandTexts as say } from '../texts/commands.js';
import { texts } from '../texts.js';
import type { Command } from './command.js';

const now = useWorkbench.getState;
const views: readonly View[] = ['plan', 'space', 'schedules', 'text', 'sheet'];

/** What can be done with the sheet as a whole. */
export const sheetCommands: readonly Command[] = [
  {
    id: 'undo',
    title: texts.file.undo,
    group: say.groups.brief,
    keys: 'Ctrl+Z',
    can: () => now().canUndo,
    run: undo,
  },
  {
    id: 'redo',
    title: texts.file.redo,
    group: say.groups.brief,
    keys: 'Ctrl+Shift+Z',
    can: () => now().canRedo,
    run: redo,
  },
  {
    id: 'save',
    title: say.save,
    group: say.groups.brief,
    keys: 'Ctrl+S',
    can: () => now().project !== null,
    run: saveBrief,
  },
  ...stepNames.map(
    (name, i): Command => ({
      id: `step-${name}`,
      title: say.goTo(texts.steps[name].title),
      group: say.groups.steps,
      keys: String(i + 1),
      run: () => goToStep(name),
    }),
  ),
  ...views.map(
    (name): Command => ({
      id: `view-${name}`,
      title: say.show(texts.views[name]),
      group: say.groups.views,
      can: () => now().view !== name,
      run: () => show(name),
    }),
  ),
];
