import type { ShelfKind, StepKind } from './types.js';

/** Tables as the queries see them; columns ending in `_json` hold JSON. Made and changed by `migrations.ts` alone. */
export interface Tables {
  readonly projects: {
    id: string;
    name: string;
    created: string;
    changed: string;
    /** When it went into the bin. */
    removed: string | null;
    seq: number;
    start: string;
    text: string;
    summary_seq: number;
    verdicts_json: string | null;
    picture: string | null;
  };
  readonly steps: {
    project: string;
    seq: number;
    at: string;
    window_id: string;
    group_id: string;
    kind: StepKind;
    splices_json: string;
  };
  readonly revisions: {
    project: string;
    number: number;
    name: string;
    note: string;
    author: string;
    at: string;
    seq: number;
    hash: string;
    text_hash: string;
    verdicts_json: string | null;
    cost_json: string;
    stock_json: string;
  };
  /** Texts by their own hash: revisions, and data files that were in force. */
  readonly texts: { hash: string; text: string };
  readonly attachments: {
    project: string;
    hash: string;
    name: string;
    media_type: string;
    size: number;
    at: string;
  };
  readonly blobs: { hash: string; bytes: Uint8Array };
  readonly shelf_versions: {
    kind: ShelfKind;
    name: string;
    number: number;
    hash: string | null;
    at: string;
    because: string;
    /** Name of the file that was brought; null where it was not told. */
    file: string | null;
  };
  /** Briefs named on the command line, and the projects that they became. */
  readonly opened_files: { path: string; text_hash: string; project: string };
}
