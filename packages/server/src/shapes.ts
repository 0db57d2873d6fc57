import { longestText } from '@cloche/store';

/** JSON Schemas of what comes in, shared by routes and archives. Ids and hashes are checked here before anything looks them up. */

/** NUL and halves of characters: the database would end a text at the one and change the other. */
const unkeepable = '\\u0000\\ud800-\\udfff';
export const keepable = `[^${unkeepable}]*$`;

const text = (maxLength: number, minLength = 0) =>
  ({ type: 'string', minLength, maxLength, pattern: `^${keepable}` }) as const;
const count = { type: 'integer', minimum: 0, maximum: 1_000_000 } as const;
const number = { type: 'integer', minimum: 0, maximum: 1_000_000_000 } as const;

/** A record with just these fields. */
export const record = <P extends Readonly<Record<string, unknown>>>(properties: P, optional: readonly string[] = []) =>
  ({
    type: 'object',
    additionalProperties: false,
    required: Object.keys(properties).filter((name) => !optional.includes(name)),
    properties,
  }) as const;

export const id = { type: 'string', pattern: '^[0-9a-f]{32}$' } as const;
export const sha256 = { type: 'string', pattern: '^[0-9a-f]{64}$' } as const;
export const seq = number;
/** Checked by `textProblems`, which says more. */
export const briefText = { type: 'string', maxLength: longestText } as const;
export const window = { type: 'string', pattern: '^[A-Za-z0-9_-]{1,64}$' } as const;
export const time = { type: 'string', pattern: '^\\d{4}-\\d\\d-\\d\\dT[0-9:.]{5,15}Z$' } as const;

export const inProject = record({ id });
export const inRevision = record({ id, number });
export const inAttachment = record({ id, hash: sha256 });

const splice = record({ at: { ...number, maximum: longestText }, out: briefText, in: briefText });
const newStepFields = {
  window,
  group: text(80),
  kind: { type: 'string', enum: ['edit', 'undo', 'redo'] },
  splices: { type: 'array', minItems: 1, maxItems: 10_000, items: splice },
} as const;
export const newStep = record(newStepFields);
export const step = record({ ...newStepFields, seq, at: time });

export const projectName = text(200);
export const verdicts = {
  type: ['object', 'null'],
  additionalProperties: false,
  required: ['meets', 'attention', 'fails', 'notAssessed'],
  properties: { meets: count, attention: count, fails: count, notAssessed: count },
} as const;

const revisionFields = {
  name: text(120, 1),
  note: text(4000),
  by: text(120),
  seq,
  /** Content hash of the design, as the engine names it. */
  hash: { type: 'string', pattern: '^(sha256:)?[0-9a-f]{64}$' },
  verdicts,
  /** The workbench's own figures. */
  cost: {},
} as const;
export const newRevision = record(revisionFields, ['cost']);
export const fileHashes = { type: 'object', maxProperties: 1000, additionalProperties: sha256 } as const;
export const revisionLine = record(
  { ...revisionFields, number, at: time, stock: record({ catalogue: fileHashes, rules: fileHashes }) },
  ['cost'],
);

/** A name for people and for a download: no part of a path, nothing that cannot be seen. */
export const fileName = {
  type: 'string',
  minLength: 1,
  maxLength: 120,
  pattern: '^(?!\\.)[^\\\\/:*?"<>|\\u0000-\\u001f\\u007f-\\u009f\\u202a-\\u202e\\u2066-\\u2069\\ud800-\\udfff]+$',
} as const;
export const mediaType = { type: 'string', enum: ['image/png', 'image/jpeg', 'image/webp', 'image/vnd.dxf'] } as const;

const shelfName = (ending: string) =>
  ({ type: 'string', pattern: `^[A-Za-z0-9][A-Za-z0-9_-]{0,60}${ending}$` }) as const;
/** Which data file of the shelf is meant: a catalogue file by its name, site rules by that of their profile. */
export const inShelf = {
  ...record({ kind: { type: 'string', enum: ['catalogue', 'rules'] }, name: { type: 'string' } }),
  if: { type: 'object', properties: { kind: { const: 'rules' } } },
  // biome-ignore lint/suspicious/noThenProperty: a word of JSON Schema.
  then: { type: 'object', properties: { name: shelfName('') } },
  else: { type: 'object', properties: { name: shelfName('\\.(yaml|yml|json)') } },
} as const;
export const inShelfVersion = {
  ...inShelf,
  required: [...inShelf.required, 'hash'],
  properties: { ...inShelf.properties, hash: sha256 },
} as const;
export const because = text(1000, 1);
