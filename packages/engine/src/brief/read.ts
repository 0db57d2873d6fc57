import { type Outcome, ok, type Problem, refuse } from '../floor/problem.js';
import { readDocument } from '../reading/document.js';
import { problemsOf } from '../reading/problems-of.js';
import { idProblems, referenceProblems } from './check-ids.js';
import { placeProblems } from './check-places.js';
import { columnProblems, diagonalProblems, orderProblems, outlineProblems, wallProblems } from './check-room.js';
import { runProblems } from './check-runs.js';
import { type Brief, briefSchema } from './schema.js';

/**
 * Reads a brief: text, then the shape of each field, then what only shows when fields are seen together.
 *
 * Each stage reports all that it finds, with line and column; a later stage runs only on what passed the one before.
 * @param text the brief, YAML or JSON [-]
 * @param file its name, for the problems [-]
 * @returns    the brief in SI, or every problem of the first stage that found any
 * Source: our own format.
 */
export function readBrief(text: string, file?: string): Outcome<Brief> {
  const read = readDocument(text, 'brief', file);
  if (!read.ok) return read;
  const document = read.value;
  const shaped = shapedBySections(document.data);
  if (!shaped.success)
    return refuse(problemsOf(shaped.error, { area: 'brief', schema: briefSchema, document, base: [] }));
  const found = crossProblems(shaped.data);
  if (found.length === 0) return ok(shaped.data);
  return refuse(
    found.map((each) => ({ ...each, place: document.place(each.path), ...(file === undefined ? {} : { file }) })),
  );
}

/** Shaped sections by the data that they were shaped from: the reader gives the same data again for a section that stayed. */
const shapedSections = new WeakMap<object, unknown>();

/** The shape of the whole, section by section; all of it at once where anything does not fit, so that every fault is told. */
function shapedBySections(data: unknown): ReturnType<typeof briefSchema.safeParse> {
  const atOnce = () => briefSchema.safeParse(data);
  if (typeof data !== 'object' || data === null || Array.isArray(data)) return atOnce();
  const sections: Readonly<Record<string, unknown>> = { ...data };
  if (!Object.keys(sections).every((key) => key in briefSchema.shape)) return atOnce();
  const brief: Record<string, unknown> = {};
  for (const [key, schema] of Object.entries(briefSchema.shape)) {
    const section = sections[key];
    const keeps = typeof section === 'object' && section !== null;
    const known = keeps ? shapedSections.get(section) : undefined;
    const shaped = known === undefined ? schema.safeParse(section) : { success: true, data: known };
    if (!shaped.success) return atOnce();
    if (shaped.data !== undefined) brief[key] = shaped.data;
    if (keeps) shapedSections.set(section, shaped.data);
  }
  return { success: true, data: brief as Brief };
}

/** What the schema cannot see. Without a sound outline nothing can be said to be inside it. */
function crossProblems(brief: Brief): Problem[] {
  const outline = outlineProblems(brief);
  const inRoom = outline.length > 0 ? [] : [...wallProblems(brief), ...columnProblems(brief), ...placeProblems(brief)];
  return [
    ...outline,
    ...inRoom,
    ...diagonalProblems(brief),
    ...orderProblems(brief),
    ...idProblems(brief),
    ...referenceProblems(brief),
    ...runProblems(brief),
  ];
}
