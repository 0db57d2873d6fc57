import { troubleOf } from '../../state/server.js';

const at = (project: string): string => `api/projects/${project}/attachments`;

/** A name that every file system takes, as the server asks for. */
const plainName = (name: string): string =>
  name
    .replace(/[^\p{L}\p{N} ._()+-]/gu, '_')
    .replace(/^\.+/, '_')
    .slice(0, 120);

/** Keeps a file with the project on the server, so that every window and every archive of it has the background. */
export async function keepFile(project: string, file: File, name: string): Promise<string> {
  const response = await fetch(`${at(project)}?name=${encodeURIComponent(plainName(name))}`, {
    method: 'POST',
    body: file,
  });
  if (!response.ok) throw new Error(await troubleOf(response));
  return ((await response.json()) as { readonly hash: string }).hash;
}

/** A file of the project; null when the project has none of this name. */
export async function keptFile(project: string, hash: string): Promise<Blob | null> {
  const response = await fetch(`${at(project)}/${encodeURIComponent(hash)}`);
  return response.ok ? response.blob() : null;
}
