import type { TextFile } from '../engine/contract.js';

export interface Example extends TextFile {
  readonly title: string;
}

async function fetchJson<T>(path: string): Promise<T> {
  const response = await fetch(path);
  if (!response.ok) throw new Error(await troubleOf(response));
  return (await response.json()) as T;
}

/** What a problem document says, in one line. */
export async function troubleOf(response: Response): Promise<string> {
  try {
    const { title, detail } = (await response.json()) as { title?: string; detail?: string };
    return [title, detail].filter(Boolean).join(' ');
  } catch {
    return `${response.status} ${response.statusText}`;
  }
}

export const fetchExamples = (): Promise<readonly Example[]> => fetchJson('api/examples');
export const fetchOpened = (): Promise<TextFile> => fetchJson('api/opened');

export async function fetchTexts(): Promise<{
  readonly catalogue: readonly TextFile[];
  readonly rules: Readonly<Record<string, string>>;
}> {
  const [catalogue, rules] = await Promise.all([
    fetchJson<readonly TextFile[]>('api/catalogue'),
    fetchJson<Record<string, string>>('api/rules'),
  ]);
  return { catalogue, rules };
}

/** The pack as the server makes it: a zip, or one file of it. */
export async function fetchPack(brief: string, file?: string): Promise<Blob> {
  const response = await fetch(file === undefined ? 'api/pack' : `api/pack?file=${encodeURIComponent(file)}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ brief }),
  });
  if (!response.ok) throw new Error(await troubleOf(response));
  return response.blob();
}
