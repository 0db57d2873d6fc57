import { endings } from '../magic-bytes.js';
import {
  briefText,
  fileHashes,
  fileName,
  mediaType,
  projectName,
  record,
  revisionLine,
  seq,
  sha256,
  step,
  time,
} from '../shapes.js';

export const archiveVersion = 1;

/** Longest history that is taken in. */
const mostSteps = 500_000;

/** The file `project.json` of an archive; the text after the last step is `brief.yaml` beside it. */
export const projectJson = record(
  {
    cloche: { type: 'integer', const: archiveVersion },
    name: projectName,
    created: time,
    changed: time,
    start: briefText,
    steps: { type: 'array', maxItems: mostSteps, items: step },
    revisions: { type: 'array', maxItems: 10_000, items: revisionLine },
    attachments: {
      type: 'array',
      maxItems: 1000,
      items: record({ hash: sha256, name: fileName, mediaType, size: seq, at: time }),
    },
    /** Catalogue and site rules that were in force where the archive was made; archives of earlier versions have none. */
    stock: record({ catalogue: fileHashes, rules: fileHashes }),
    /** Texts of all data files that the project or a revision was computed from, by their hashes. */
    texts: { type: 'object', maxProperties: 10_000, propertyNames: sha256, additionalProperties: briefText },
  },
  ['stock', 'texts'],
);

const ending = Object.values(endings).join('|');
/** Names that an archive may hold; everything else is refused, a way out of the folder first. */
export const attachmentPath = new RegExp(`^attachments/([0-9a-f]{64})\\.(${ending})$`);
export const isKnownPath = (name: string): boolean =>
  name === 'brief.yaml' || name === 'project.json' || attachmentPath.test(name);
