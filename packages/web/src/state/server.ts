import type { TextFile } from '../engine/contract.js';
import { sheetTexts } from '../texts/sheets.js';

export interface Example extends TextFile {
  readonly title: string;
}

/** An answer in JSON, or what the server says is wrong. */
export async function fetchJson<T>(path: string, init?: RequestInit): Promise<T> {
  const response = await fetch(path, init);
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
/** The project of the brief named on the command line. */
export const fetchOpened = (): Promise<{ readonly project: string | null }> => fetchJson('api/opened');

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

const asPost = (brief: string, signal?: AbortSignal): RequestInit => ({
  method: 'POST',
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify({ brief }),
  ...(signal ? { signal } : {}),
});

/** One file of the pack as the server makes it. */
export async function fetchPackFile(brief: string, file: string, signal?: AbortSignal): Promise<Blob> {
  const response = await fetch(`api/pack?file=${encodeURIComponent(file)}`, asPost(brief, signal));
  if (!response.ok) throw new Error(await troubleOf(response));
  return response.blob();
}

export interface MadeFile {
  readonly name: string;
  readonly blob: Blob;
}

/**
 * All files of the pack, the zip of them last.
 * @param onDone told after each file: its name and the share of the pack that is done; closing the request stops the server's work
 */
export async function fetchPack(
  brief: string,
  signal: AbortSignal,
  onDone: (name: string, share: number) => void,
): Promise<readonly MadeFile[]> {
  const response = await fetch('api/pack/files', asPost(brief, signal));
  if (!response.ok || !response.body) throw new Error(await troubleOf(response));
  const files: MadeFile[] = [];
  for await (const line of linesOf(response.body)) {
    const said = readPackLine(line);
    if ('trouble' in said) throw new Error([said.trouble, said.detail].filter(Boolean).join(' '));
    if ('done' in said) onDone(said.done, said.share);
    else files.push({ name: said.name, blob: said.blob });
  }
  if (files.length === 0) throw new Error(sheetTexts.failed);
  return files;
}

type PackLine =
  | { readonly done: string; readonly share: number }
  | { readonly trouble: string; readonly detail: string }
  | MadeFile;

function readPackLine(line: string): PackLine {
  const said = JSON.parse(line) as Exclude<PackLine, MadeFile> | { name: string; mediaType: string; base64: string };
  if (!('base64' in said)) return said;
  const bytes = Uint8Array.from(atob(said.base64), (c) => c.charCodeAt(0));
  return { name: said.name, blob: new Blob([bytes], { type: said.mediaType }) };
}

/** The lines of a stream of text, each as soon as it is whole. */
async function* linesOf(stream: ReadableStream<Uint8Array>): AsyncGenerator<string> {
  const reader = stream.pipeThrough(new TextDecoderStream() as ReadableWritablePair<string, Uint8Array>).getReader();
  let rest = '';
  for (;;) {
    const { done, value } = await reader.read();
    const lines = (rest + (value ?? '')).split('\n');
    rest = done ? '' : (lines.pop() ?? '');
    for (const line of lines) if (line !== '') yield line;
    if (done) return;
  }
}
