import { diff3Merge } from 'node-diff3';
import { type Document, isAlias, Lexer, parseDocument, visit } from 'yaml';
import { isEqual } from './equal.js';
import { type Conflict, mergeData } from './merge-data.js';
import { rewritten } from './rewrite.js';

export interface Merged {
  readonly text: string;
  /** What could not be brought together; in the text stands what the other window wrote. */
  readonly conflicts: readonly Conflict[];
}

/**
 * Brings together what two windows made of one brief. Things are told apart by their id and fields by their path; where both
 * changed one field, theirs stands and mine is told. Where the changed lines lie apart and say the same, comments and layout of
 * both are kept; else those of `theirs`, and a comment of mine that is lost by it is told. A text that is no brief is merged line
 * by line, and told as a whole when both changed the same lines.
 */
export function merge(base: string, mine: string, theirs: string): Merged {
  if (mine === base || mine === theirs) return { text: theirs, conflicts: [] };
  if (theirs === base) return { text: mine, conflicts: [] };
  const lines = mergeLines(base, mine, theirs);
  return (
    mergeBriefs(base, mine, theirs, lines) ?? (lines === null ? asWhole(mine, theirs) : { text: lines, conflicts: [] })
  );
}

const asWhole = (mine: string, theirs: string, text = theirs): Merged => ({
  text,
  conflicts: [{ spot: [], theirs: text, mine }],
});

/** Null where one of the texts is no document, or has parts that cannot be written one by one. */
function mergeBriefs(base: string, mine: string, theirs: string, lines: string | null): Merged | null {
  const [b, m, t] = [base, mine, theirs].map(dataOf);
  if (!b || !m || !t) return null;
  const { value, conflicts } = mergeData(b, m, t);
  if (lines !== null && conflicts.length === 0 && isEqual(dataOf(lines), value)) return { text: lines, conflicts };
  const text = rewritten(theirs, t, value);
  if (!isEqual(dataOf(text), value)) return null;
  const kept = new Set([...commentsOf(base), ...commentsOf(text)]);
  const lost = commentsOf(mine).some((comment) => !kept.has(comment));
  return { text, conflicts: lost ? [...conflicts, ...asWhole(mine, theirs, text).conflicts] : conflicts };
}

/** Sign of the library before a value, which may begin like a comment. */
const beforeValue = '\x1f';

function commentsOf(text: string): readonly string[] {
  const tokens = [...new Lexer().lex(text)];
  return tokens.filter((token, i) => token.startsWith('#') && tokens[i - 1] !== beforeValue);
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

/** Null where both changed the same lines. */
function mergeLines(base: string, mine: string, theirs: string): string | null {
  const [b, m, t] = [base, mine, theirs].map((text) => text.split('\n')) as [string[], string[], string[]];
  const regions = diff3Merge(m, b, t, { excludeFalseConflicts: true });
  if (regions.some((region) => region.conflict)) return null;
  return regions.flatMap((region) => region.ok ?? []).join('\n');
}
