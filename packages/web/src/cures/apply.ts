import { briefData, type Written, withValues } from '../brief/document.js';
import { lengthLike } from '../brief/lengths.js';
import { valueAt } from '../brief/path.js';
import type { CureEdit } from './contract.js';

/** The brief with a cure in it; lengths are written in the unit that stood there. */
export function withCure(text: string, edits: readonly CureEdit[]): string {
  const data = briefData(text);
  return withValues(
    text,
    edits.map(({ path, value, as }) => {
      const written: Written =
        as === 'length' && typeof value === 'number' ? lengthLike(valueAt(data, path), value) : value;
      return [path, written] as const;
    }),
  );
}
