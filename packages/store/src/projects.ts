import { sql } from 'kysely';
import type { Database } from './database.js';
import { discardProjects } from './discard.js';
import { newId } from './names.js';
import { textProblems } from './splices.js';
import type { Project, ProjectLine, Summary, VerdictCount } from './types.js';

/** Projects as the list shows them, and their way into the bin and out of it. */
export interface Projects {
  /** Newest change first; `removed` lists the bin. */
  readonly list: (removed?: boolean) => Promise<readonly ProjectLine[]>;
  readonly create: (made: { readonly text: string; readonly name: string; readonly at: string }) => Promise<string>;
  /** Undefined when there is none or it is in the bin. */
  readonly get: (id: string) => Promise<Project | undefined>;
  /** `removed` when it is in the bin, `missing` when there never was one. */
  readonly state: (id: string) => Promise<'there' | 'removed' | 'missing'>;
  /** Kept unless a window that had seen more has told its own; false when there is no such project. */
  readonly summarise: (id: string, summary: Summary) => Promise<boolean>;
  readonly picture: (id: string) => Promise<string | undefined>;
  readonly remove: (id: string, at: string) => Promise<boolean>;
  readonly restore: (id: string) => Promise<boolean>;
  /**
   * Throws projects away for good, with history, revisions and attachments; only those of them that are in the bin.
   * @returns how many there were
   */
  readonly discard: (ids: readonly string[]) => Promise<number>;
}

const parsed = (json: string | null): VerdictCount | null => (json === null ? null : JSON.parse(json));

export function projectsIn(db: Database): Projects {
  const there = (id: string) => db.selectFrom('projects').where('id', '=', id).where('removed', 'is', null);
  const change = (id: string) => db.updateTable('projects').where('id', '=', id);
  return {
    async list(removed = false) {
      const rows = await db
        .selectFrom('projects')
        .select(['id', 'name', 'created', 'changed', 'seq', 'verdicts_json'])
        .select(sql<number>`picture is not null`.as('has_picture'))
        .select((q) =>
          q
            .selectFrom('revisions')
            .whereRef('revisions.project', '=', 'projects.id')
            .select((c) => c.fn.countAll<number>().as('n'))
            .as('revisions'),
        )
        .where('removed', removed ? 'is not' : 'is', null)
        .orderBy('changed', 'desc')
        .orderBy('id')
        .execute();
      return rows.map(({ verdicts_json, has_picture, revisions, ...row }) => ({
        ...row,
        revisions: Number(revisions),
        verdicts: parsed(verdicts_json),
        hasPicture: Boolean(has_picture),
      }));
    },
    async create({ text, name, at }) {
      const [problem] = textProblems(text);
      if (problem) throw new Error(`a text was not checked before it was kept: ${problem.message}`);
      const id = newId();
      await db
        .insertInto('projects')
        .values({ id, name, created: at, changed: at, removed: null, seq: 0, start: text, text, summary_seq: 0 })
        .execute();
      return id;
    },
    get: (id) => there(id).select(['id', 'name', 'created', 'changed', 'seq', 'text']).executeTakeFirst(),
    async state(id) {
      const row = await db.selectFrom('projects').select('removed').where('id', '=', id).executeTakeFirst();
      return row === undefined ? 'missing' : row.removed === null ? 'there' : 'removed';
    },
    async summarise(id, { seq, name, picture, verdicts }) {
      await change(id)
        .where('removed', 'is', null)
        .where('summary_seq', '<=', seq)
        .where('seq', '>=', seq)
        .set({
          name,
          picture,
          verdicts_json: verdicts === null ? null : JSON.stringify(verdicts),
          summary_seq: seq,
        })
        .execute();
      return (await there(id).select('id').executeTakeFirst()) !== undefined;
    },
    picture: async (id) => (await there(id).select('picture').executeTakeFirst())?.picture ?? undefined,
    async remove(id, at) {
      const { numUpdatedRows } = await change(id).where('removed', 'is', null).set({ removed: at }).executeTakeFirst();
      return numUpdatedRows === 1n;
    },
    async restore(id) {
      const { numUpdatedRows } = await change(id)
        .where('removed', 'is not', null)
        .set({ removed: null })
        .executeTakeFirst();
      return numUpdatedRows === 1n;
    },
    discard: (ids) => db.transaction().execute((tx) => discardProjects(tx, ids)),
  };
}
