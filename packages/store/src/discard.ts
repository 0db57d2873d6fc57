import { sql } from 'kysely';
import type { Database } from './database.js';

/** Takes projects of the bin out of the tables, and what only they had; every other text and file stays. */
export async function discardProjects(tx: Database, wanted: readonly string[]): Promise<number> {
  if (wanted.length === 0) return 0;
  const rows = await tx
    .selectFrom('projects')
    .select('id')
    .where('id', 'in', [...wanted])
    .where('removed', 'is not', null)
    .execute();
  const ids = rows.map(({ id }) => id);
  if (ids.length === 0) return 0;
  const revisions = await tx.selectFrom('revisions').select('text_hash').where('project', 'in', ids).execute();
  const attached = await tx.selectFrom('attachments').select('hash').where('project', 'in', ids).execute();
  for (const table of ['steps', 'revisions', 'attachments', 'opened_files'] as const)
    await tx.deleteFrom(table).where('project', 'in', ids).execute();
  await tx.deleteFrom('projects').where('id', 'in', ids).execute();
  for (const { hash } of attached)
    await sql`delete from blobs where hash = ${hash}
      and not exists (select 1 from attachments where attachments.hash = blobs.hash)`.execute(tx);
  // Data files of revisions are named in JSON; their texts stay, since others were computed from them, too.
  for (const { text_hash } of revisions)
    await sql`delete from texts where hash = ${text_hash}
      and not exists (select 1 from revisions where text_hash = texts.hash or instr(stock_json, texts.hash) > 0)
      and not exists (select 1 from shelf_versions where shelf_versions.hash = texts.hash)`.execute(tx);
  return ids.length;
}
