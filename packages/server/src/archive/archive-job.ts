import type { Outcome } from '@cloche/engine';
import type { AttachmentFile, RevisionLine, StockHashes, WholeProject } from '@cloche/store';

/** A project as the archive holds it. */
export type ArchivedProject = WholeProject & {
  readonly attachments: readonly AttachmentFile[];
  /** What was in force when the archive was made. */
  readonly stock: StockHashes;
};

/** A project as it comes out of an archive: checked, and each revision with the text that it had. */
export type UnpackedProject = Omit<WholeProject, 'revisions'> & {
  readonly revisions: readonly (RevisionLine & { readonly text: string })[];
  readonly attachments: readonly AttachmentFile[];
  /** Null for an archive that does not tell. */
  readonly stock: StockHashes | null;
};

/** What the thread is asked for: an archive of a project, or the project of an archive. */
export type ArchiveJob =
  | { readonly ask: 'pack'; readonly project: ArchivedProject }
  | { readonly ask: 'unpack'; readonly zip: Uint8Array };

export interface ArchiveAnswers {
  readonly pack: Uint8Array;
  readonly unpack: Outcome<UnpackedProject>;
}
