/** One replacement in a text: at offset `at` (UTF-16 units) stands `out`; `in` takes its place. */
export interface Splice {
  readonly at: number;
  readonly out: string;
  readonly in: string;
}

/** What one gesture in one window did to the text. Its splices apply one after the other. */
export interface NewStep {
  /** The window that it was made in. */
  readonly window: string;
  /** Steps of one group are undone together. */
  readonly group: string;
  readonly kind: StepKind;
  readonly splices: readonly Splice[];
}

export type StepKind = 'edit' | 'undo' | 'redo';

/** A step with its place in the project's one history. An undo carries the inverse splices: the text is the replay of all. */
export interface Step extends NewStep {
  /** Counted from 1; the text before the first step is that of the project's making. */
  readonly seq: number;
  /** When it was kept, ISO 8601. */
  readonly at: string;
}

/** How many findings of each verdict there were. */
export interface VerdictCount {
  readonly meets: number;
  readonly attention: number;
  readonly fails: number;
  readonly notAssessed: number;
}

/** A project as the list of all shows it. */
export interface ProjectLine {
  readonly id: string;
  readonly name: string;
  readonly created: string;
  readonly changed: string;
  /** Number of the last step: the head. */
  readonly seq: number;
  readonly revisions: number;
  readonly verdicts: VerdictCount | null;
  readonly hasPicture: boolean;
}

export interface Project {
  readonly id: string;
  readonly name: string;
  readonly created: string;
  readonly changed: string;
  readonly seq: number;
  readonly text: string;
}

/** What a window that has computed the project tells for the list. */
export interface Summary {
  readonly seq: number;
  readonly name: string;
  /** SVG. */
  readonly picture: string | null;
  readonly verdicts: VerdictCount | null;
}

/** Hashes of the data files by their names. */
export type FileHashes = Readonly<Record<string, string>>;

/** What a revision was computed from, besides its text. */
export interface StockHashes {
  readonly catalogue: FileHashes;
  readonly rules: FileHashes;
}

export interface NewRevision {
  readonly name: string;
  readonly note: string;
  readonly by: string;
  readonly seq: number;
  /** Content hash of the design. */
  readonly hash: string;
  readonly verdicts: VerdictCount | null;
  /** The workbench's own figures of cost; kept as they are. */
  readonly cost: unknown;
}

export interface RevisionLine extends NewRevision {
  readonly number: number;
  readonly at: string;
  /** Hashes of catalogue and rules that were in force. */
  readonly stock: StockHashes;
}

export interface Revision extends RevisionLine {
  readonly text: string;
}

export interface Attachment {
  /** SHA-256 of the bytes, 64 hexadecimal digits. */
  readonly hash: string;
  readonly name: string;
  readonly mediaType: string;
  readonly size: number;
  readonly at: string;
}

export interface AttachmentFile extends Attachment {
  readonly bytes: Uint8Array;
}

export type ShelfKind = 'catalogue' | 'rules';

/** A change of one data file of the shelf; without a hash it went back to what was shipped, or away. */
export interface ShelfVersion {
  readonly kind: ShelfKind;
  readonly name: string;
  readonly hash: string | null;
  readonly at: string;
  readonly because: string;
  /** Name of the file that was brought; null where it was not told, or went back. */
  readonly file: string | null;
}

/** All of a project, as it leaves this machine and comes back. */
export interface WholeProject {
  readonly name: string;
  readonly created: string;
  readonly changed: string;
  /** The text before the first step. */
  readonly start: string;
  readonly text: string;
  readonly steps: readonly Step[];
  readonly revisions: readonly RevisionLine[];
  /** Texts of catalogue files and site rules that its revisions were computed from, by their hashes. */
  readonly texts: Readonly<Record<string, string>>;
}
