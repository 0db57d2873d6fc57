import { sectionsOf } from '@cloche/engine';
import { type Document, isScalar, LineCounter, type Node, parseDocument, visit } from 'yaml';
import { type Path, pathKey } from './path.js';

export type Written = string | number | boolean;

const parsed = (text: string): Document => parseDocument(text);

interface ReadSection {
  readonly key: string;
  /** Where it starts in the whole text. */
  readonly at: number;
  readonly document: Document;
  readonly value: unknown;
}

/** Sections of the last text by their letters: an edit leaves most of them as they were. */
let read = new Map<string, Omit<ReadSection, 'at'>>();

/** The text by sections, each read once as long as it stays; null when it must be read as a whole. */
function readSections(text: string): readonly ReadSection[] | null {
  const now: typeof read = new Map();
  const list: ReadSection[] = [];
  for (const { key, text: part, at } of sectionsOf(text) ?? []) {
    const known = read.get(part) ?? readSection(key, part);
    if (!known) return null;
    now.set(part, known);
    list.push({ ...known, at });
  }
  read = now;
  return list.length > 0 ? list : null;
}

function readSection(key: string, text: string): Omit<ReadSection, 'at'> | null {
  const document = parsed(text);
  if (document.errors.length > 0) return null;
  const data: unknown = document.toJS();
  if (typeof data !== 'object' || data === null || Object.keys(data).join() !== key) return null;
  return { key, document, value: (data as Record<string, unknown>)[key] };
}

/** The brief as plain data, quantities still as text; null while the text is no document at all. */
export function briefData(text: string): unknown {
  const sections = readSections(text);
  if (sections) return Object.fromEntries(sections.map(({ key, value }) => [key, value]));
  const document = parsed(text);
  return document.errors.length > 0 ? null : document.toJS();
}

/** A word that stands without quotes both in a list in brackets and on a line by itself, and reads back as text. */
const plain = /^(?:-(?=\d)|[A-Za-z0-9.\u00b5\u00b0+])[\w .+\u00b5\u00b0/-]*$/;
const readsAsOther = /^(?:[-+.\d][\d_.,eE+x-]*|true|false|null|yes|no|on|off|~)$/i;

const written = (value: Written): string => {
  if (typeof value !== 'string') return String(value);
  const trimmed = value.trim();
  return trimmed === value && plain.test(value) && !readsAsOther.test(value) ? value : JSON.stringify(value);
};

/**
 * The text with the value at a path replaced. Where a plain value stands, only its own letters change, so that comments and
 * layout stay as the writer left them.
 */
export function withValue(text: string, path: Path, value: Written | undefined): string {
  const document = parsed(text);
  if (document.errors.length > 0) return text;
  const node = document.getIn(path, true);
  if (value !== undefined && isScalar(node) && node.range && !isBlock(node.type))
    return text.slice(0, node.range[0]) + written(value) + text.slice(node.range[1]);
  if (value === undefined) {
    if (!document.hasIn(path)) return text;
    document.deleteIn(path);
    prune(document, path);
  } else document.setIn(path, value);
  return document.toString({ lineWidth: 0 });
}

/** Takes out objects that are left with nothing in them, up to the thing that they belong to. */
function prune(document: Document, path: Path): void {
  for (let depth = path.length - 1; depth > 0; depth--) {
    const above = path.slice(0, depth);
    const left = document.getIn(above) as { readonly items?: readonly unknown[] } | undefined;
    if (typeof above.at(-1) === 'number' || !left?.items || left.items.length > 0) return;
    document.deleteIn(above);
  }
}

export type Change = readonly [Path, Written];

/** Several plain values replaced at once, read only once: what a drag does many times a second. */
export function withValues(text: string, changes: readonly Change[]): string {
  const at = finder(text);
  const spans = changes.flatMap(([path, value]) => {
    const span = at(path);
    return span ? [{ ...span, value }] : [];
  });
  if (spans.length < changes.length) return changes.reduce((now, [path, value]) => withValue(now, path, value), text);
  // From the end, so that the places before stay where they were.
  return spans
    .sort((a, b) => b.from - a.from)
    .reduce((now, { from, to, value }) => now.slice(0, from) + written(value) + now.slice(to), text);
}

interface Span {
  readonly from: number;
  readonly to: number;
}

/** Finds the letters of plain values by their path. */
function finder(text: string): (path: Path) => Span | null {
  const sections = readSections(text);
  const whole = sections ? null : parsed(text);
  if (whole && whole.errors.length > 0) return () => null;
  return (path) => {
    const section = sections?.find(({ key }) => key === path[0]);
    const [document, at] = whole ? [whole, 0] : [section?.document, section?.at ?? 0];
    const node = document?.getIn(path, true);
    if (!isScalar(node) || !node.range || isBlock(node.type)) return null;
    return { from: at + node.range[0], to: at + node.range[1] };
  };
}

const isBlock = (type: string | undefined): boolean => type === 'BLOCK_LITERAL' || type === 'BLOCK_FOLDED';

/** A value put at a path, or taken out where it is undefined. */
export type Edit = readonly [Path, unknown];

const isWritten = (value: unknown): value is Written =>
  typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean';

/** Many edits of any kind, one after the other, with the text read only once: what a pasted block does. */
export function withEdits(text: string, edits: readonly Edit[]): string {
  const document = parsed(text);
  if (document.errors.length > 0) return text;
  const plainOnly = edits.every(([path, value]) => isWritten(value) && isScalar(document.getIn(path, true)));
  const places = new Set(edits.map(([path]) => pathKey(path)));
  if (plainOnly && places.size === edits.length)
    return withValues(
      text,
      edits.map(([path, value]) => [path, value as Written] as const),
    );
  for (const [path, value] of edits) {
    if (value !== undefined) document.setIn(path, isWritten(value) ? value : nodeOf(document, value));
    else if (document.hasIn(path)) {
      document.deleteIn(path);
      prune(document, path);
    }
  }
  return document.toString({ lineWidth: 0 });
}

/** The text with an entry added at the end of the list at a path; the list is made where there is none. */
export function withEntry(text: string, path: Path, entry: unknown): string {
  const document = parsed(text);
  if (document.errors.length > 0) return text;
  if (document.hasIn(path)) document.addIn(path, nodeOf(document, entry));
  else document.setIn(path, nodeOf(document, [entry]));
  return document.toString({ lineWidth: 0 });
}

/** The text with anything at all put at a path: a list of names, an object with its fields. */
export function withObject(text: string, path: Path, value: unknown): string {
  const document = parsed(text);
  if (document.errors.length > 0) return text;
  document.setIn(path, nodeOf(document, value));
  return document.toString({ lineWidth: 0 });
}

/** Points and short lists of words stand in brackets on one line, as people write them. */
function nodeOf(document: Document, value: unknown): Node {
  const node = document.createNode(value);
  visit(node, {
    Seq: (_, seq) => {
      if (seq.items.every((each) => isScalar(each))) seq.flow = true;
    },
  });
  return node;
}

/** Where a line and column (counted from 1) stand in the text, counted from 0. */
export function offsetOf(text: string, line: number, column: number): number {
  const counter = new LineCounter();
  parseDocument(text, { lineCounter: counter });
  return (counter.lineStarts[line - 1] ?? text.length) + column - 1;
}
