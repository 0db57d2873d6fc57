import type { Cost } from '@cloche/engine';
import type { NewRevision as KeptRevision, ProjectLine, RevisionLine, Summary } from '@cloche/store';
import { fetchJson, troubleOf } from '../state/server.js';

export type { ProjectLine, VerdictCount } from '@cloche/store';

export interface NewRevision extends KeptRevision {
  /** What everything to buy cost when it was named; null where that was not kept. */
  readonly cost: Cost | null;
}
export type Revision = NewRevision & Pick<RevisionLine, 'number' | 'at'>;

const withJson = (method: string, body: unknown): RequestInit => ({
  method,
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
});

const at = (id: string): string => `api/projects/${id}`;
interface Made {
  readonly id: string;
}

/** A data file that a project came with and that is another one on this shelf, or is only on one side. */
export interface ShelfDifference {
  readonly kind: 'catalogue' | 'rules';
  readonly name: string;
  readonly what: 'other' | 'missing here' | 'only here';
  readonly text: string | null;
}

export const fetchProjects = (removed = false): Promise<readonly ProjectLine[]> =>
  fetchJson(removed ? 'api/projects?removed=1' : 'api/projects');
export const createProject = (text: string): Promise<Made> => fetchJson('api/projects', withJson('POST', { text }));
export const removeProject = (id: string): Promise<Made> => fetchJson(at(id), { method: 'DELETE' });
export const restoreProject = (id: string): Promise<Made> => fetchJson(`${at(id)}/restore`, { method: 'POST' });
/** Throws projects of the bin away for good. */
export const discardProjects = (ids: readonly string[]): Promise<{ readonly emptied: number }> =>
  fetchJson('api/bin/empty', withJson('POST', { ids }));
/** Where data files differ is null for a project file that does not tell. */
export const importProject = (zip: Blob): Promise<Made & { readonly shelf: readonly ShelfDifference[] | null }> =>
  fetchJson('api/projects/import', {
    method: 'POST',
    headers: { 'content-type': 'application/zip' },
    body: zip,
  });

/** The whole project as a zip file: brief, history, revisions, attachments. */
export async function exportProject(id: string): Promise<{ readonly name: string; readonly blob: Blob }> {
  const response = await fetch(`${at(id)}/export`);
  if (!response.ok) throw new Error(await troubleOf(response));
  const name = /filename="([^"]+)"/.exec(response.headers.get('content-disposition') ?? '')?.[1];
  return { name: name ?? 'project.zip', blob: await response.blob() };
}

/** Where the picture of a project is; a changed project has another address, so that no old picture answers. */
export const pictureOf = ({ id, changed }: ProjectLine): string =>
  `${at(id)}/picture?changed=${encodeURIComponent(changed)}`;

export const putSummary = (id: string, summary: Summary): Promise<unknown> =>
  fetchJson(`${at(id)}/summary`, withJson('PUT', summary));

export const fetchRevisions = (id: string): Promise<readonly Revision[]> => fetchJson(`${at(id)}/revisions`);
export const fetchRevision = (id: string, number: number): Promise<Revision & { readonly text: string }> =>
  fetchJson(`${at(id)}/revisions/${number}`);
export const nameRevision = (id: string, revision: NewRevision): Promise<{ readonly number: number }> =>
  fetchJson(`${at(id)}/revisions`, withJson('POST', revision));
