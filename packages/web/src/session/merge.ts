import { diff3Merge } from 'node-diff3';
import { type Document, isAlias, parseDocument, visit } from 'yaml';
import { isEqual } from './equal.js';
import { type Conflict, mergeData } from './merge-data.js';
import { rewritten } from './rewrite.js';

export interface Merged {
  readonly text: string;
  /** What could not be brought together; in the text stands what the other window wrote. */
  readonly conflicts: readonly Conflict[];
}

/**
 * Brings together what two windows made of one brief. Things are told apart by their id and fields by their path; comments and
 * layout are those of `theirs`. Where both changed one field, theirs stands and mine is told. A text that is no brief is
 * merged line by line, and told as a whole when both changed the same lines.
 */
export function merge(base: string, mine: string, theirs: string): Merged {
  if (mine === base || mine === theirs) return { text: theirs, conflicts: [] };
  if (theirs === base) return { text: mine, conflicts: [] };
  return mergeBriefs(base, mine, theirs) ?? mergeLines(base, mine, theirs);
}

/** Null where one of the texts is no document, or has parts that cannot be written one by one. */
function mergeBriefs(base: string, mine: string, theirs: string): Merged | null {
  const [b, m, t] = [base, mine, theirs].map(dataOf);
  if (!b || !m || !t) return null;
  const { value, conflicts } = mergeData(b, m, t);
  const text = rewritten(theirs, t, value);
  return isEqual(dataOf(text), value) ? { text, conflicts } : null;
}

function dataOf(text: string): object | null {
  const document = parseDocument(text);
  if (document.errors.length > 0 || hasAliases(document)) return null;
  const data: unknown = document.toJS();
  return typeof data === 'object' && !Array.isArray(data) ? data : null;
}

/** One value that stands in several places cannot be set in one of them. */
function hasAliases(document: Document): boolean {
  let found = false;
  visit(document, (_, node) => {
    found ||= isAlias(node);
    return found ? visit.BREAK : undefined;
  });
  return found;
}

function mergeLines(base: string, mine: string, theirs: string): Merged {
  const [b, m, t] = [base, mine, theirs].map((text) => text.split('\n')) as [string[], string[], string[]];
  const regions = diff3Merge(m, b, t, { excludeFalseConflicts: true });
  if (regions.some((region) => region.conflict)) return { text: theirs, conflicts: [{ spot: [], theirs, mine }] };
  return { text: regions.flatMap((region) => region.ok ?? []).join('\n'), conflicts: [] };
}
