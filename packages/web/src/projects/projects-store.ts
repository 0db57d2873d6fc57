import { create } from 'zustand';
import { projectTexts } from '../texts/projects.js';
import { fetchProjects, type ProjectLine, type ShelfDifference } from './api.js';

export interface Projects {
  /** The list is on the screen, in place of a project. */
  readonly atList: boolean;
  /** The sheet for fitters is on the screen, in place of the workbench. */
  readonly fitting: boolean;
  readonly lines: readonly ProjectLine[] | null;
  readonly bin: readonly ProjectLine[];
  /** What went wrong, or what was done, in one line. */
  readonly told: string | null;
  /** The project that was taken out last, to be put back at once. */
  readonly takenOut: string | null;
  /** What is asked in a dialog. */
  readonly asking: 'revision' | 'export' | 'shelf' | null;
  /** Data files that the project taken in last was computed with, where they are not those of this shelf. */
  readonly cameWith: readonly ShelfDifference[];
}

export const useProjects = create<Projects>(() => ({
  atList: false,
  fitting: false,
  lines: null,
  bin: [],
  told: null,
  takenOut: null,
  asking: null,
  cameWith: [],
}));

export const ask = (asking: Projects['asking']): void => useProjects.setState({ asking });
export const tell = (told: string | null, takenOut: string | null = null): void =>
  useProjects.setState({ told, takenOut });

/** Runs what a person asked for; what goes wrong is told where they look. */
export async function attempt(run: () => Promise<void>): Promise<void> {
  try {
    await run();
  } catch (error) {
    tell(messageOf(error));
  }
}

/** A request that never came back throws a type error, in words of the browser. */
export const messageOf = (error: unknown): string =>
  error instanceof TypeError ? projectTexts.noServer : error instanceof Error ? error.message : String(error);

export async function refreshList(): Promise<void> {
  const [lines, bin] = await Promise.all([fetchProjects(), fetchProjects(true)]);
  useProjects.setState({ lines, bin });
}
