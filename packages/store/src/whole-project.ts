import type { Attachments } from './attachments.js';
import { insertAttachment } from './attachments.js';
import type { Database } from './database.js';
import { newId } from './names.js';
import { insertRevision, revisionLines } from './revisions.js';
import { insertSteps, stepsAfter } from './steps.js';
import { keepText, textOf } from './texts.js';
import type { AttachmentFile, RevisionLine, WholeProject } from './types.js';

/** A project with all that belongs to it, on its way out or in. */
export interface WholeProjects {
  readonly read: (
    id: string,
  ) => Promise<(WholeProject & { readonly attachments: readonly AttachmentFile[] }) | undefined>;
  /**
   * Keeps a whole project as a new one; all of it or nothing.
   * @param project its revisions with the texts that they had; that its steps replay is the caller's to know
   */
  readonly add: (
    project: Omit<WholeProject, 'revisions'> & {
      readonly revisions: readonly (RevisionLine & { readonly text: string })[];
      readonly attachments: readonly AttachmentFile[];
    },
  ) => Promise<string>;
}

/** Hashes of all that revisions were computed from, each once. */
const stockHashes = (revisions: readonly RevisionLine[]): readonly string[] => [
  ...new Set(revisions.flatMap(({ stock }) => [...Object.values(stock.catalogue), ...Object.values(stock.rules)])),
];

export function wholeProjectsIn(db: Database, attachments: Attachments): WholeProjects {
  return {
    async read(id) {
      const project = await db.transaction().execute(async (tx) => {
        const row = await tx
          .selectFrom('projects')
          .select(['name', 'created', 'changed', 'start', 'text'])
          .where('id', '=', id)
          .where('removed', 'is', null)
          .executeTakeFirst();
        return row && { ...row, steps: await stepsAfter(tx, id, 0), revisions: await revisionLines(tx, id) };
      });
      if (!project) return undefined;
      const files: AttachmentFile[] = [];
      for (const { hash } of await attachments.list(id)) {
        const file = await attachments.get(id, hash);
        if (file) files.push(file);
      }
      const texts: Record<string, string> = {};
      for (const hash of stockHashes(project.revisions)) {
        // A revision that came from elsewhere, without the texts, has hashes alone.
        const text = await textOf(db, hash);
        if (text !== undefined) texts[hash] = text;
      }
      return { ...project, texts, attachments: files };
    },
    add: (project) =>
      db.transaction().execute(async (tx) => {
        const id = newId();
        const { name, created, changed, start, text, steps } = project;
        await tx
          .insertInto('projects')
          .values({ id, name, created, changed, removed: null, seq: steps.length, start, text, summary_seq: 0 })
          .execute();
        await insertSteps(tx, id, steps);
        for (const each of Object.values(project.texts)) await keepText(tx, each);
        for (const revision of project.revisions) await insertRevision(tx, id, revision, revision.text);
        for (const file of project.attachments) await insertAttachment(tx, id, file);
        return id;
      }),
  };
}
