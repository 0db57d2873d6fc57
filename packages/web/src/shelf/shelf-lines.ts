import { fetchJson, troubleOf } from '../state/server.js';

/** Which data file of the shelf: a catalogue file by its whole name, site rules by that of their profile. */
export interface ShelfPlace {
  readonly kind: ShelfKind;
  readonly name: string;
}
export type ShelfKind = 'catalogue' | 'rules';

/** One change of a file; without a hash it went back to what was shipped, or away. */
export interface ShelfVersion {
  readonly hash: string | null;
  readonly at: string;
  readonly because: string;
  readonly file: string | null;
}

/** A file with all that became of it, oldest first. */
export interface ShelfLine extends ShelfPlace {
  /** What is in force is what was shipped. */
  readonly shipped: boolean;
  readonly inForce: string | null;
  /** Hash of the text that was shipped; null for a file that was brought. */
  readonly original: string | null;
  readonly versions: readonly ShelfVersion[];
}

/** A state that a file was in, with the text that was in force then. */
export interface ShelfState {
  readonly key: string;
  /** Null for what was shipped. */
  readonly version: ShelfVersion | null;
  /** Null while there was no such file. */
  readonly hash: string | null;
  readonly before: string | null;
}

/** The states of a file, newest first; what was shipped, if anything was, is the last. */
export function statesOf({ original, versions }: ShelfLine): readonly ShelfState[] {
  const first: readonly ShelfState[] =
    original === null ? [] : [{ key: 'shipped', version: null, hash: original, before: null }];
  const after = versions.map((version, i): ShelfState => {
    const before = i === 0 ? original : (versions[i - 1]!.hash ?? original);
    return { key: `${version.at} ${i}`, version, hash: version.hash ?? original, before };
  });
  return [...first, ...after].reverse();
}

const at = ({ kind, name }: ShelfPlace): string => `api/shelf/${kind}/${encodeURIComponent(name)}`;

export const fetchShelfLines = (): Promise<readonly ShelfLine[]> => fetchJson('api/shelf');

/** The text of a version: it never changes, so it is fetched once. */
export async function fetchVersion(place: ShelfPlace, hash: string): Promise<string> {
  const key = `${at(place)}/${hash}`;
  const known = kept.get(key);
  if (known !== undefined) return known;
  const response = await fetch(key);
  if (!response.ok) throw new Error(await troubleOf(response));
  const text = await response.text();
  kept.set(key, text);
  return text;
}
const kept = new Map<string, string>();

export const putVersion = (
  place: ShelfPlace,
  made: { readonly text: string; readonly because: string; readonly file?: string },
): Promise<Response> =>
  fetch(at(place), {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(made),
  });

export const deleteFile = (place: ShelfPlace, because: string): Promise<Response> =>
  fetch(`${at(place)}?because=${encodeURIComponent(because)}`, { method: 'DELETE' });
