import { briefData, withValue } from '../brief/document.js';
import { distanceEndsOn } from '../brief/kept-distances.js';
import { type Path, pathKey, valueAt } from '../brief/path.js';
import { namesOf } from '../brief/references.js';
import { arrangeTexts as say } from '../texts/arrange.js';
import { tell } from './arranged.js';
import { memberOf } from './members.js';

export interface TakenOut {
  readonly text: string;
  readonly told: readonly string[];
}

/** What is taken out with a thing, because it cannot be without it. */
interface Fall {
  readonly paths: ReadonlyMap<string, Path>;
  /** Ids of further things. */
  readonly ids: readonly string[];
  /** Needs that named it. */
  readonly needs: number;
}

/** The brief without what is in hand, and without what can only be with it: a laser on a table, the sign of a door. */
export function takenOut(text: string, ids: readonly string[]): TakenOut {
  const data = briefData(text);
  const { paths, ids: further, needs } = fallOf(data, ids);
  // From the end, so that the places of the rest stay where they are.
  const order = [...paths.values()].sort(fromTheEnd);
  return {
    text: order.reduce((now, path) => withValue(now, path, undefined), text),
    told: [...tell(further, say.wentAlong), ...(needs > 0 ? [say.needsWentAlong(needs)] : [])],
  };
}

function fallOf(data: unknown, ids: readonly string[]): Fall {
  const paths = new Map<string, Path>();
  const further: string[] = [];
  let needs = 0;
  const queue = [...ids];
  const seen = new Set<string>();
  while (queue.length > 0) {
    const id = queue.shift()!;
    const member = memberOf(data, id);
    if (!member || seen.has(id)) continue;
    seen.add(id);
    paths.set(pathKey(member.path), member.path);
    // A distance to a thing that is gone measures nothing.
    for (const end of distanceEndsOn(data, id)) paths.set(pathKey(end.slice(0, 2)), end.slice(0, 2));
    for (const name of namesOf(data, id)) {
      const owner = ownerOf(data, name, paths);
      if (!owner) {
        paths.set(pathKey(name), name);
        continue;
      }
      if (paths.has(pathKey(owner))) continue;
      const ownId = valueAt(data, [...owner, 'id']);
      if (typeof ownId === 'string') {
        if (!ids.includes(ownId)) further.push(ownId);
        queue.push(ownId);
      } else {
        needs++;
        paths.set(pathKey(owner), owner);
      }
    }
  }
  return { paths: withoutInner(paths), ids: [...new Set(further)], needs };
}

/** The entry that falls with a name in it; null when only the name falls: one of several in a list. */
function ownerOf(data: unknown, name: Path, gone: ReadonlyMap<string, Path>): Path | null {
  const inList = typeof name.at(-1) === 'number' && typeof name.at(-2) === 'string';
  const list = name.slice(0, -1);
  if (inList) {
    const names = valueAt(data, list);
    const others = Array.isArray(names)
      ? names.filter((_, i) => i !== name.at(-1) && !gone.has(pathKey([...list, i])))
      : [];
    if (others.length > 0 || pathKey(list) === 'needs/movable') return null;
  }
  const entry = inList ? list.slice(0, -1) : list;
  // Fields of an entry may lie deeper than its own keys.
  const index = entry.map((step) => typeof step === 'number').lastIndexOf(true);
  return index < 0 ? null : entry.slice(0, index + 1);
}

/** Where a whole entry goes, nothing inside it has to go by itself. */
const withoutInner = (paths: ReadonlyMap<string, Path>): ReadonlyMap<string, Path> =>
  new Map(
    [...paths].filter(([key]) => ![...paths.keys()].some((other) => other !== key && key.startsWith(`${other}/`))),
  );

function fromTheEnd(a: Path, b: Path): number {
  for (let i = 0; i < Math.max(a.length, b.length); i++) {
    const [p, q] = [a[i], b[i]];
    if (p === q) continue;
    if (typeof p === 'number' && typeof q === 'number') return q - p;
    return String(q ?? '').localeCompare(String(p ?? ''));
  }
  return 0;
}
