import { listAt, type Path, valueAt } from '../brief/path.js';

/** A place that stays right when things before it come or go: entries with an id are named by it. */
export type Spot = readonly (string | number | { readonly id: string })[];

/** Where a spot is now; the place after the end of its list, for an entry that is not there. */
export function pathOfSpot(data: unknown, spot: Spot): Path {
  let path: Path = [];
  for (const part of spot) {
    if (typeof part !== 'object') path = [...path, part];
    else {
      const list = listAt(data, path);
      const index = list.findIndex((entry) => idOf(entry) === part.id);
      path = [...path, index < 0 ? list.length : index];
    }
  }
  return path;
}

export function idOf(entry: unknown): string | undefined {
  const id = valueAt(entry, ['id']);
  return typeof id === 'string' ? id : undefined;
}

/** True for lists whose entries all have an id, each its own. */
export function isKeyed(value: unknown): value is readonly { readonly id: string }[] {
  if (!Array.isArray(value)) return false;
  const ids = value.map(idOf);
  return !ids.includes(undefined) && new Set(ids).size === ids.length;
}
