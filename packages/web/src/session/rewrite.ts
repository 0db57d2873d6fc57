import {
  briefData,
  type Change,
  type Written,
  withEntry,
  withObject,
  withValue,
  withValues,
} from '../brief/document.js';
import type { Path } from '../brief/path.js';
import { isEqual } from './equal.js';
import { isKeyed } from './spot.js';

/** What has to be done to a text, in an order in which no path is moved by what was done before it. */
interface Work {
  readonly values: Change[];
  readonly objects: (readonly [Path, unknown])[];
  readonly added: (readonly [Path, unknown])[];
  readonly removed: Path[];
}

/** The text with its data turned into other data: only what differs is written, so that comments and layout stay. */
export function rewritten(text: string, from: unknown, to: unknown): string {
  const work: Work = { values: [], objects: [], added: [], removed: [] };
  gather(from, to, [], work);
  let now = work.values.length > 0 ? withValues(text, work.values) : text;
  for (const [path, value] of work.objects) now = withObject(now, path, value);
  for (const [path, entry] of work.added) now = withEntry(now, path, entry);
  // Last ones first, so that those before keep their place.
  for (const path of work.removed.reverse()) now = withValue(now, path, undefined);
  return isEqual(briefData(now), to) || !isFields(to) ? now : withParts(now, to);
}

/** Whole parts of the brief written anew: where an emptied list took what held it along. */
function withParts(text: string, to: Fields): string {
  const now = briefData(text) as Fields;
  return Object.keys(to)
    .filter((key) => !isEqual(now[key], to[key]))
    .reduce((written, key) => withObject(written, [key], to[key]), text);
}

function gather(from: unknown, to: unknown, path: Path, work: Work): void {
  if (isEqual(from, to)) return;
  if (isFields(from) && isFields(to)) gatherFields(from, to, path, work);
  else if (isKeyed(from) && isKeyed(to) && goesOn(from, to)) gatherThings(from, to, path, work);
  else if (Array.isArray(from) && Array.isArray(to) && from.length === to.length)
    for (const [i, each] of from.entries()) gather(each, to[i], [...path, i], work);
  else if (isWritten(from) && isWritten(to)) work.values.push([path, to]);
  else work.objects.push([path, to]);
}

type Fields = Readonly<Record<string, unknown>>;
type Things = readonly { readonly id: string }[];

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isWritten = (value: unknown): value is Written => ['string', 'number', 'boolean'].includes(typeof value);

function gatherFields(from: Fields, to: Fields, path: Path, work: Work): void {
  for (const key of Object.keys(from)) {
    if (Object.hasOwn(to, key)) gather(from[key], to[key], [...path, key], work);
    else work.removed.push([...path, key]);
  }
  for (const key of Object.keys(to)) if (!Object.hasOwn(from, key)) work.objects.push([[...path, key], to[key]]);
}

/** What is left stands in the same order, and what is new after it. */
function goesOn(from: Things, to: Things): boolean {
  const left = from.filter(({ id }) => to.some((each) => each.id === id)).map(({ id }) => id);
  return isEqual(
    to.slice(0, left.length).map(({ id }) => id),
    left,
  );
}

function gatherThings(from: Things, to: Things, path: Path, work: Work): void {
  for (const [i, thing] of from.entries()) {
    const after = to.find(({ id }) => id === thing.id);
    if (after) gather(thing, after, [...path, i], work);
    else work.removed.push([...path, i]);
  }
  for (const thing of to) if (!from.some(({ id }) => id === thing.id)) work.added.push([path, thing]);
}
