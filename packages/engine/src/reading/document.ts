import { type Document, isAlias, isMap, isScalar, isSeq, LineCounter, type Node, parseDocument } from 'yaml';
import { type Outcome, ok, type Problem, problem, refuse, type TextPlace } from '../floor/problem.js';
import { remembered } from '../floor/remembered.js';
import type { Path } from './path.js';
import { sectionsOf } from './sections.js';

/** A text larger than this is refused before it is read: a brief of a whole institute stays far below. */
export const largestText = 2_000_000;

/** An alias in YAML repeats a part of the document; a handful is handwork, thousands are an attack. */
const mostAliases = 100;

/** Plain data nested deeper than this is no brief, catalogue or rule file. */
const deepest = 200;

/** Which kind of file is read: the first half of the codes of its problems. */
export type Area = 'brief' | 'catalogue' | 'rules';

/** Plain data with the way back to the text. */
export interface ReadDocument {
  readonly data: Readonly<Record<string, unknown>>;
  readonly file?: string;
  /** Where the value at a path stands; the nearest thing around it when the path does not exist. */
  readonly place: (path: Path, on?: 'key' | 'value') => TextPlace;
}

/**
 * Reads one YAML or JSON text (JSON is a part of YAML 1.2) into plain data.
 *
 * @param text what was written [-]
 * @param area which kind of file it is [-]
 * @param file its name, for the problems [-]
 * @returns    the data, or every problem of syntax at once: `empty`, `too-large`, `syntax`, `several-documents`,
 *             `unknown-tag`, `too-deep`, `alias`,
 *             `too-many-aliases`, `not-a-record`, each after the area's name
 * Source: YAML 1.2.2, core schema, by a general-purpose library.
 */
export function readDocument(text: string, area: Area, file?: string): Outcome<ReadDocument> {
  const no = (code: string, message: string, hint: string, place?: TextPlace): Problem => ({
    ...problem(`${area}/${code}`, [], message, hint),
    ...(place === undefined ? {} : { place }),
    ...(file === undefined ? {} : { file }),
  });
  if (text.length > largestText)
    return refuse([
      no(
        'too-large',
        `The text has ${text.length} characters; at most ${largestText} are read.`,
        'Split it, or leave out what no one needs.',
      ),
    ]);
  if (text.trim() === '') return refuse([no('empty', 'The text is empty.', 'Start it with the line "cloche: 1".')]);
  if (mayBeDeep(text))
    return refuse([
      no('too-deep', 'Lists and records are nested too deep to be read.', 'Check the brackets and the indentation.'),
    ]);

  const bySections = dataBySections(text);
  if (bySections) return ok(withPlaces(bySections, text, area, file));
  return readWhole(text, no, file);
}

type Data = Readonly<Record<string, unknown>>;

/** Data of one section; null when it is not sound by itself. Sections are shared by all texts that hold them. */
const sectionData = remembered((key: string, text: string): { readonly value: unknown } | null => {
  const document = parseDocument(text, { prettyErrors: false, strict: true, version: '1.2' });
  if (document.errors.length > 0 || document.warnings.length > 0) return null;
  const data: unknown = document.toJS();
  if (typeof data !== 'object' || data === null || Object.keys(data).length !== 1 || !(key in data)) return null;
  return { value: (data as Data)[key] };
});

/** The data of a text that is a plain row of sound sections: only sections that were not met before are read. */
function dataBySections(text: string): Data | null {
  const data: Record<string, unknown> = {};
  for (const { key, text: part } of sectionsOf(text) ?? []) {
    const read = sectionData(key, part);
    if (!read) return null;
    data[key] = read.value;
  }
  return Object.keys(data).length > 0 ? data : null;
}

/** Places are asked for only when there is a problem to tell: the whole text is read then. */
function withPlaces(data: Data, text: string, area: Area, file: string | undefined): ReadDocument {
  let whole: ReadDocument['place'] | undefined;
  const place: ReadDocument['place'] = (path, on) => {
    if (!whole) {
      const read = readWhole(text, (code, message, hint) => problem(`${area}/${code}`, [], message, hint), file);
      if (!read.ok) throw new Error('a text whose sections are sound is not sound as a whole');
      whole = read.value.place;
    }
    return whole(path, on);
  };
  return { data, place, ...(file === undefined ? {} : { file }) };
}

function readWhole(text: string, no: Say, file: string | undefined): Outcome<ReadDocument> {
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false, strict: true, version: '1.2' });
  const at = (offset: number): TextPlace => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col) };
  };
  const faults = [...document.errors, ...document.warnings].map((fault) => {
    const place = at(fault.pos[0]);
    if (fault.code === 'MULTIPLE_DOCS')
      return no('several-documents', 'The text holds several documents.', 'Keep one document a file.', place);
    if (fault.code === 'TAG_RESOLVE_FAILED')
      return no('unknown-tag', sentence(fault.message), 'Write plain values without tags ("!...").', place);
    return no('syntax', sentence(fault.message), syntaxHint(fault.code), place);
  });
  if (faults.length > 0) return refuse(faults);
  return finish(document, at, no, file);
}

/**
 * Whether the text may be nested deeper than any brief is. The parser walks nested data by recursion and, far beyond this,
 * runs out of stack and memory before it can say so; hence this bound from the letters alone: brackets left open, and
 * the run of blanks and list dashes that a line starts with.
 */
function mayBeDeep(text: string): boolean {
  let open = 0;
  for (const letter of text) {
    if (letter === '[' || letter === '{') open++;
    else if (letter === ']' || letter === '}') open = Math.max(0, open - 1);
    if (open > deepest) return true;
  }
  return new RegExp(`^[ \\t?:-]{${2 * deepest},}`, 'm').test(text);
}

type Say = (code: string, message: string, hint: string, place?: TextPlace) => Problem;

function plainData(document: Document.Parsed, no: Say): Outcome<unknown> {
  try {
    const data: unknown = document.toJS({ maxAliasCount: mostAliases });
    if (!circular(data, [])) return ok(data);
    return refuse([no('alias', 'An alias ("*name") stands inside the part that it repeats.', 'Write that part out.')]);
  } catch (fault) {
    // The library throws for these two causes alone, and only here.
    if (!(fault instanceof ReferenceError)) throw fault;
    if (fault.message.startsWith('Unresolved'))
      return refuse([no('alias', sentence(fault.message), 'Name the part with "&name" before it is repeated.')]);
    return refuse([
      no(
        'too-many-aliases',
        'Aliases ("*name") repeat parts of the text too often.',
        'Write the repeated parts out, or use fewer aliases.',
      ),
    ]);
  }
}

function circular(value: unknown, above: readonly unknown[]): boolean {
  if (typeof value !== 'object' || value === null) return false;
  if (above.includes(value)) return true;
  return Object.values(value).some((inner) => circular(inner, [...above, value]));
}

function finish(
  document: Document.Parsed,
  at: (offset: number) => TextPlace,
  no: Say,
  file: string | undefined,
): Outcome<ReadDocument> {
  const read = plainData(document, no);
  if (!read.ok) return read;
  const data = read.value;
  if (typeof data !== 'object' || data === null || Array.isArray(data))
    return refuse([
      no(
        'not-a-record',
        `The text is ${Array.isArray(data) ? 'a list' : 'a single value'}, not a record of named fields.`,
        'Start it with the line "cloche: 1", then "project:" and what follows.',
        { line: 1, column: 1 },
      ),
    ]);
  const place = (path: Path, on: 'key' | 'value' = 'value') => at(offsetOf(document, path, on));
  return ok({
    data: data as Readonly<Record<string, unknown>>,
    place,
    ...(file === undefined ? {} : { file }),
  });
}

/** Offset in the text of the value (or the key) at a path, or of the last thing on the way that exists. */
function offsetOf(document: Document.Parsed, path: Path, on: 'key' | 'value'): number {
  let node: unknown = document.contents;
  let offset = (node as Node | null)?.range?.[0] ?? 0;
  for (const [index, step] of path.entries()) {
    if (isAlias(node)) node = node.resolve(document);
    if (isMap(node)) {
      const pair = node.items.find(({ key }) => String(isScalar(key) ? key.value : key) === String(step));
      if (!pair) return offset;
      const keyOffset = (pair.key as Node | null)?.range?.[0] ?? offset;
      node = pair.value;
      const valueOffset = (node as Node | null)?.range?.[0];
      offset = on === 'key' && index === path.length - 1 ? keyOffset : (valueOffset ?? keyOffset);
    } else if (isSeq(node) && typeof step === 'number' && node.items[step] !== undefined) {
      node = node.items[step];
      offset = (node as Node).range?.[0] ?? offset;
    } else return offset;
  }
  return offset;
}

const sentence = (message: string): string => {
  const one = message.split('\n')[0]!.trim();
  return /[.?!]$/.test(one) ? one : `${one}.`;
};

function syntaxHint(code: string): string {
  if (code === 'DUPLICATE_KEY') return 'Keep one of the two, or rename one.';
  if (code === 'BAD_INDENT' || code === 'TAB_AS_INDENT')
    return 'Indent with spaces, equally deep for what belongs together.';
  if (code === 'MISSING_CHAR' || code === 'BAD_DQ_ESCAPE') return 'Check quotes, brackets and colons on this line.';
  return 'Check this line: a field is "name: value"; put texts with : # or quotes in quotes.';
}
