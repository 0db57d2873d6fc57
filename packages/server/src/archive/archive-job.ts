import type { Outcome } from '@cloche/engine';
import type { AttachmentFile, RevisionLine, WholeProject } from '@cloche/store';

/** A project as the archive holds it. */
export type ArchivedProject = WholeProject & { readonly attachments: readonly AttachmentFile[] };

/** A project as it comes out of an archive: checked, and each revision with the text that it had. */
export type UnpackedProject = Omit<WholeProject, 'revisions'> & {
  readonly revisions: readonly (RevisionLine & { readonly text: string })[];
  readonly attachments: readonly AttachmentFile[];
};

/** What the thread is asked for: an archive of a project, or the project of an archive. */
export type ArchiveJob =
  | { readonly ask: 'pack'; readonly project: ArchivedProject }
  | { readonly ask: 'unpack'; readonly zip: Uint8Array };

export interface ArchiveAnswers {
  readonly pack: Uint8Array;
  readonly unpack: Outcome<UnpackedProject>;
}
