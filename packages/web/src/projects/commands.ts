import type { Command } from '../commands/command.js';
import { useWorkbench } from '../state/store.js';
import { projectTexts as say } from '../texts/projects.js';
import { go } from './navigation.js';
import { ask, attempt, useProjects } from './projects-store.js';
import { createFresh } from './take-in.js';

const inProject = (): boolean => !useProjects.getState().atList;

/** What can be done with projects as a whole. */
export const projectCommands: readonly Command[] = [
  {
    id: 'projects',
    title: say.commands.list,
    group: say.commands.group,
    can: inProject,
    run: () => void go({ at: 'list' }),
  },
  { id: 'new-project', title: say.commands.create, group: say.commands.group, run: () => void attempt(createFresh) },
  {
    id: 'name-revision',
    title: say.nameIt,
    group: say.commands.group,
    can: () => inProject() && useWorkbench.getState().reading === null,
    run: () => ask('revision'),
  },
  { id: 'export', title: say.commands.export, group: say.commands.group, can: inProject, run: () => ask('export') },
];
