import { create } from 'zustand';
import type { ProjectLine } from './api.js';
import { fetchProjects } from './api.js';

export interface Projects {
  /** The list is on the screen, in place of a project. */
  readonly atList: boolean;
  /** The sheet for fitters is on the screen, in place of the workbench. */
  readonly fitting: boolean;
  readonly lines: readonly ProjectLine[] | null;
  readonly bin: readonly ProjectLine[];
  /** What went wrong, or what was done, in one line. */
  readonly told: string | null;
  /** What is asked in a dialog. */
  readonly asking: 'revision' | 'export' | null;
}

export const useProjects = create<Projects>(() => ({
  atList: false,
  fitting: false,
  lines: null,
  bin: [],
  told: null,
  asking: null,
}));

export const ask = (asking: Projects['asking']): void => useProjects.setState({ asking });
export const tell = (told: string | null): void => useProjects.setState({ told });

/** Runs what a person asked for; what goes wrong is told where they look. */
export async function attempt(run: () => Promise<void>): Promise<void> {
  try {
    await run();
  } catch (error) {
    tell(error instanceof Error ? error.message : String(error));
  }
}

export async function refreshList(): Promise<void> {
  const [lines, bin] = await Promise.all([fetchProjects(), fetchProjects(true)]);
  useProjects.setState({ lines, bin });
}
