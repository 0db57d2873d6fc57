import { diff3Merge } from 'node-diff3';
import { isEqual } from './equal.js';
import { idOf, isKeyed, type Spot } from './spot.js';

/** Both changed one thing; `undefined` stands for taken out. */
export interface Conflict {
  /** Empty for the text as a whole. */
  readonly spot: Spot;
  readonly theirs: unknown;
  readonly mine: unknown;
}

export interface MergedData {
  readonly value: unknown;
  readonly conflicts: readonly Conflict[];
}

/**
 * Three-way merge of plain data. Objects are merged field by field, lists of things with ids thing by thing, other lists as rows
 * where the changes lie apart. What one alone changed is taken; what both changed differently stays as theirs and is told. A pair
 * of coordinates is one value: half of one place and half of another would be a place that nobody chose.
 */
export function mergeData(base: unknown, mine: unknown, theirs: unknown, spot: Spot = []): MergedData {
  if (isEqual(base, mine) || isEqual(mine, theirs)) return agreed(theirs);
  if (isObject(mine) && isObject(theirs) && (isObject(base) || base === undefined))
    return mergeObjects(base ?? {}, mine, theirs, spot);
  if (isKeyed(mine) && isKeyed(theirs) && (isKeyed(base) || base === undefined) && inOrder(base ?? [], mine))
    return mergeThings(base ?? [], mine, theirs, spot);
  if (isEqual(base, theirs)) return agreed(mine);
  if (areRows(base) && areRows(mine) && areRows(theirs)) return mergeRows(base, mine, theirs, spot);
  return against(theirs, mine, spot);
}

type Fields = Readonly<Record<string, unknown>>;

const agreed = (value: unknown): MergedData => ({ value, conflicts: [] });
const against = (theirs: unknown, mine: unknown, spot: Spot): MergedData => ({
  value: theirs,
  conflicts: [{ spot, theirs, mine }],
});

const isObject = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function mergeObjects(base: Fields, mine: Fields, theirs: Fields, spot: Spot): MergedData {
  const keys = new Set([...Object.keys(theirs), ...Object.keys(mine)]);
  const merged = [...keys].map(
    (key) => [key, mergeData(own(base, key), own(mine, key), own(theirs, key), [...spot, key])] as const,
  );
  return {
    value: Object.fromEntries(merged.filter(([, m]) => m.value !== undefined).map(([key, m]) => [key, m.value])),
    conflicts: merged.flatMap(([, m]) => m.conflicts),
  };
}

const own = (fields: Fields, key: string): unknown => (Object.hasOwn(fields, key) ? fields[key] : undefined);

type Things = readonly { readonly id: string }[];

/** Things that stand in both lists stand in the same order: nobody has sorted them. */
function inOrder(base: Things, mine: Things): boolean {
  const shared = (list: Things, other: Things) =>
    list.map(({ id }) => id).filter((id) => other.some((each) => each.id === id));
  return isEqual(shared(base, mine), shared(mine, base));
}

/** The order is theirs; what is new here comes last. */
function mergeThings(base: Things, mine: Things, theirs: Things, spot: Spot): MergedData {
  const byId = (list: Things, id: string) => list.find((each) => each.id === id);
  const ids = new Set([...theirs, ...mine].map(({ id }) => id));
  const merged = [...ids].map((id) => mergeData(byId(base, id), byId(mine, id), byId(theirs, id), [...spot, { id }]));
  return {
    value: merged.map((m) => m.value).filter((value) => value !== undefined),
    conflicts: merged.flatMap((m) => m.conflicts),
  };
}

/** Lists of points or of rows without an id. */
const areRows = (value: unknown): value is readonly unknown[] =>
  Array.isArray(value) && value.every((each) => typeof each === 'object' && each !== null && idOf(each) === undefined);

function mergeRows(
  base: readonly unknown[],
  mine: readonly unknown[],
  theirs: readonly unknown[],
  spot: Spot,
): MergedData {
  const [b, m, t] = [base, mine, theirs].map((rows) => rows.map((row) => JSON.stringify(row))) as [
    string[],
    string[],
    string[],
  ];
  const regions = diff3Merge(m, b, t, { excludeFalseConflicts: true });
  if (regions.some((region) => region.conflict)) return against(theirs, mine, spot);
  return agreed(regions.flatMap((region) => region.ok ?? []).map((row) => JSON.parse(row)));
}
