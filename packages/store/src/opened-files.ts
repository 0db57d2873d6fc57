import type { Database } from './database.js';
import { hashOf } from './names.js';

/** Which project a brief on the disk became, so that opening it again does not make another. */
export interface OpenedFiles {
  /** The project of a file whose text is still what it was when it was opened; undefined when that is in the bin. */
  readonly find: (file: { readonly path: string; readonly text: string }) => Promise<string | undefined>;
  readonly remember: (file: { readonly path: string; readonly text: string }, project: string) => Promise<void>;
}

export function openedFilesIn(db: Database): OpenedFiles {
  return {
    async find({ path, text }) {
      const row = await db
        .selectFrom('opened_files')
        .innerJoin('projects', 'projects.id', 'opened_files.project')
        .select('project')
        .where('path', '=', path)
        .where('text_hash', '=', hashOf(text))
        .where('removed', 'is', null)
        .executeTakeFirst();
      return row?.project;
    },
    async remember({ path, text }, project) {
      const text_hash = hashOf(text);
      await db
        .insertInto('opened_files')
        .values({ path, text_hash, project })
        .onConflict((c) => c.column('path').doUpdateSet({ text_hash, project }))
        .execute();
    },
  };
}
