import { briefData, withEntry, withObject, withValue } from '../brief/document.js';
import { valueAt } from '../brief/path.js';
import type { Conflict } from './merge-data.js';
import { pathOfSpot } from './spot.js';

/** The text with the value that was written here in the place of the one that stands. */
export function withMine(text: string, { spot, mine }: Conflict): string {
  if (spot.length === 0) return String(mine);
  const data = briefData(text);
  const path = pathOfSpot(data, spot);
  if (mine === undefined) return withValue(text, path, undefined);
  if (typeof spot.at(-1) === 'object' && valueAt(data, path) === undefined)
    return withEntry(text, path.slice(0, -1), mine);
  return typeof mine === 'string' || typeof mine === 'number' || typeof mine === 'boolean'
    ? withValue(text, path, mine)
    : withObject(text, path, mine);
}
