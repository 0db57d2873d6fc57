import { withEntry, withObject } from '../brief/document.js';
import type { Path } from '../brief/path.js';

/** What a tool makes of the brief: an entry of a list, or values put in the place of others; one step of undo. */
export type Edit =
  | { readonly kind: 'entry'; readonly list: Path; readonly entry: unknown }
  | { readonly kind: 'values'; readonly put: readonly (readonly [Path, unknown])[] };

export const edited = (text: string, edit: Edit): string =>
  edit.kind === 'entry'
    ? withEntry(text, edit.list, edit.entry)
    : edit.put.reduce((now, [path, value]) => withObject(now, path, value), text);
