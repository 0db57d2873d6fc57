import { freshBrief } from '../state/fresh-brief.js';
import { projectTexts } from '../texts/projects.js';
import { firstOf } from './address.js';
import { createProject, discardProjects, importProject, removeProject, restoreProject } from './api.js';
import { go } from './navigation.js';
import { refreshList, tell, useProjects } from './projects-store.js';

const open = (id: string): Promise<void> => go(firstOf(id));

export async function createFrom(text: string): Promise<void> {
  const { id } = await createProject(text);
  await open(id);
}

export const createFresh = (): Promise<void> => createFrom(freshBrief);

const [largestBrief, largestZip] = [2 * 1024 * 1024, 64 * 1024 * 1024];

/** Makes a project of a brief file or of a project that was exported, told apart by the first bytes. */
export async function takeIn(file: File): Promise<void> {
  const isZip = (await file.slice(0, 4).text()).startsWith('PK');
  if (file.size > (isZip ? largestZip : largestBrief)) throw new Error(projectTexts.tooLarge);
  if (isZip) {
    const { id, shelf } = await importProject(file);
    await open(id);
    if (shelf?.length) useProjects.setState({ cameWith: shelf, asking: 'shelf' });
    return;
  }
  if (!/\.(ya?ml|json)$/i.test(file.name)) throw new Error(projectTexts.notAFile);
  return createFrom(await file.text());
}

export async function takeOut(id: string, name: string): Promise<void> {
  await removeProject(id);
  await refreshList();
  tell(projectTexts.removed(name), id);
}

/** Throws away what a person has seen in the bin; what came there meanwhile stays. */
export async function emptyBin(ids: readonly string[]): Promise<void> {
  const { emptied } = await discardProjects(ids);
  await refreshList();
  tell(projectTexts.emptying.done(emptied));
}

export async function putBack(id: string): Promise<void> {
  await restoreProject(id);
  await refreshList();
  tell(null);
}
