import type { Store } from '@cloche/store';
import type { OpenedBrief } from './options.js';
import { nameIn } from './project-routes.js';

/** The project of a brief named on the command line: the one that it became when it was opened before, or a new one. */
export async function projectOf(brief: OpenedBrief, store: Store, at: string): Promise<string> {
  const { path, text } = brief;
  const known = path === undefined ? undefined : await store.openedFiles.find({ path, text });
  if (known !== undefined) return known;
  const project = await store.projects.create({ text, name: nameIn(text), at });
  if (path !== undefined) await store.openedFiles.remember({ path, text }, project);
  return project;
}
