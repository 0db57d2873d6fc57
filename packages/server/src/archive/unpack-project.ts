import { type Outcome, ok, type Problem, problem, refuse } from '@cloche/engine';
import {
  type AttachmentFile,
  hashOf,
  type RevisionLine,
  replay,
  type Step,
  type StockHashes,
  textProblems,
  type WholeProject,
} from '@cloche/store';
import { Ajv } from 'ajv';
import { attachmentType } from '../magic-bytes.js';
import { projectJson } from './archive-form.js';
import type { UnpackedProject } from './archive-job.js';
import { unzipBounded } from './unzip-bounded.js';

type ProjectJson = Omit<WholeProject, 'text' | 'texts'> & {
  readonly attachments: readonly Omit<AttachmentFile, 'bytes'>[];
  readonly stock?: StockHashes;
  readonly texts?: Readonly<Record<string, string>>;
};

const isProject = new Ajv({ strict: true, allowUnionTypes: true }).compile<ProjectJson>(projectJson);

const no = (code: string, path: readonly (string | number)[], message: string): Problem =>
  problem(`archive/${code}`, path, message, 'Export the project again where it comes from, and take that archive.');

/**
 * The project of an archive, checked so that nothing in it can be false later: the history replays to the text, every revision has its
 * step, every attachment is what its hash and its first bytes say.
 *
 * @returns the project, or why not: what `unzipBounded` finds, then `archive/no-project`, `archive/shape`, `archive/history`,
 *          `archive/revision`, `archive/attachment`, `archive/texts`
 */
export function unpackProject(zip: Uint8Array): Outcome<UnpackedProject> {
  const unzipped = unzipBounded(zip);
  if (!unzipped.ok) return unzipped;
  const files = unzipped.value;
  const read = readJson(files['project.json']);
  if (!read.ok) return read;
  const project = read.value;
  const texts = textsOf(project, files['brief.yaml']);
  const attachments = project.attachments.map((line) => attachmentOf(line, files));
  const problems = [
    ...[texts, ...attachments].flatMap((o) => (o.ok ? [] : [...o.problems])),
    ...dataFileProblems(project),
  ];
  if (!texts.ok || problems.length > 0) return refuse(problems);
  const { name, created, changed, start, steps } = project;
  return ok({
    ...{ name, created, changed, start, steps },
    text: texts.value.text,
    stock: project.stock ?? null,
    texts: project.texts ?? {},
    revisions: project.revisions.map((line, i) => ({ ...line, text: texts.value.revisions[i]! })),
    attachments: attachments.flatMap((o) => (o.ok ? [o.value] : [])),
  });
}

function readJson(bytes: Uint8Array | undefined): Outcome<ProjectJson> {
  if (!bytes) return refuse([no('no-project', [], 'The archive holds no project.json.')]);
  let data: unknown;
  try {
    data = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    return refuse([no('shape', ['project.json'], 'project.json is no JSON.')]);
  }
  if (isProject(data)) return ok(data);
  const { instancePath, message } = isProject.errors![0]!;
  return refuse([
    no('shape', ['project.json', ...instancePath.split('/').slice(1)], `project.json${instancePath} ${message}.`),
  ]);
}

/** The text after the last step, and after the step of each revision; by one walk through the history. */
function textsOf(
  { start, steps, revisions }: ProjectJson,
  brief: Uint8Array | undefined,
): Outcome<{ readonly text: string; readonly revisions: readonly string[] }> {
  const wrong = [...stepNumbers(steps), ...revisionNumbers(revisions, steps.length), ...textProblems(start)];
  if (wrong.length > 0) return refuse(wrong);
  const wanted = new Map<number, string>([[0, start]]);
  const stops = [...new Set([...revisions.map((r) => r.seq), steps.length])].sort((a, b) => a - b);
  let text = start;
  let from = 0;
  for (const stop of stops) {
    const next = replay(text, steps.slice(from, stop));
    if (!next.ok) return refuse([no('history', ['project.json', 'steps'], 'The history does not replay.')]);
    text = next.value;
    from = stop;
    wanted.set(stop, text);
  }
  // A mark of byte order would belong to the text.
  const written = brief && new TextDecoder('utf-8', { ignoreBOM: true }).decode(brief);
  if (written !== text)
    return refuse([no('history', ['brief.yaml'], 'The text in brief.yaml is not what the history leads to.')]);
  return ok({ text, revisions: revisions.map((r) => wanted.get(r.seq)!) });
}

/** Texts of data files are what their hashes say, and all that were in force are there. */
function dataFileProblems({ texts = {}, stock }: ProjectJson): Problem[] {
  const wrong = Object.entries(texts).filter(([hash, text]) => textProblems(text).length > 0 || hashOf(text) !== hash);
  const inForce = [...Object.entries(stock?.catalogue ?? {}), ...Object.entries(stock?.rules ?? {})];
  const missing = inForce.filter(([, hash]) => !Object.hasOwn(texts, hash));
  return [
    ...wrong.map(([hash]) => no('texts', ['project.json', 'texts', hash], 'The text of a data file is changed.')),
    ...missing.map(([name]) => no('texts', ['project.json', 'stock', name], `The text of "${name}" is missing.`)),
  ];
}

const stepNumbers = (steps: readonly Step[]): Problem[] =>
  steps.every((each, i) => each.seq === i + 1)
    ? []
    : [no('history', ['project.json', 'steps'], 'The steps are not numbered from 1 without a hole.')];

const revisionNumbers = (revisions: readonly RevisionLine[], last: number): Problem[] =>
  revisions.every((each, i) => each.number === i + 1 && each.seq <= last)
    ? []
    : [no('revision', ['project.json', 'revisions'], 'A revision has a wrong number or a step that is not there.')];

function attachmentOf(
  line: Omit<AttachmentFile, 'bytes'>,
  files: Readonly<Record<string, Uint8Array>>,
): Outcome<AttachmentFile> {
  const path = Object.keys(files).find((name) => name.startsWith(`attachments/${line.hash}.`));
  const bytes = path === undefined ? undefined : files[path];
  if (!bytes || hashOf(bytes) !== line.hash || attachmentType(bytes) !== line.mediaType || bytes.length !== line.size)
    return refuse([
      no('attachment', ['attachments', line.hash], `The attachment "${line.name}" is missing or changed.`),
    ]);
  return ok({ ...line, bytes });
}
