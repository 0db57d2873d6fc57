import type { Database } from './database.js';
import { hashOf } from './names.js';
import type { Tables } from './schema.js';
import type { Attachment, AttachmentFile } from './types.js';

/** Pictures and drawings that belong to a project, by the hash of their bytes. */
export interface Attachments {
  readonly list: (project: string) => Promise<readonly Attachment[]>;
  readonly get: (project: string, hash: string) => Promise<AttachmentFile | undefined>;
  /** The same bytes are kept once, under the name that they had first. */
  readonly add: (
    project: string,
    file: { readonly bytes: Uint8Array; readonly name: string; readonly mediaType: string; readonly at: string },
  ) => Promise<Attachment>;
}

const attachmentOf = (row: Tables['attachments']): Attachment => ({
  hash: row.hash,
  name: row.name,
  mediaType: row.media_type,
  size: row.size,
  at: row.at,
});

export async function insertAttachment(db: Database, project: string, file: AttachmentFile): Promise<void> {
  await db
    .insertInto('blobs')
    .values({ hash: file.hash, bytes: file.bytes })
    .onConflict((c) => c.column('hash').doNothing())
    .execute();
  await db
    .insertInto('attachments')
    .values({
      project,
      hash: file.hash,
      name: file.name,
      media_type: file.mediaType,
      size: file.bytes.length,
      at: file.at,
    })
    .onConflict((c) => c.columns(['project', 'hash']).doNothing())
    .execute();
}

export function attachmentsIn(db: Database): Attachments {
  const rowsOf = (project: string) => db.selectFrom('attachments').where('attachments.project', '=', project);
  return {
    list: async (project) =>
      (await rowsOf(project).selectAll('attachments').orderBy('at').orderBy('hash').execute()).map(attachmentOf),
    async get(project, hash) {
      const row = await rowsOf(project)
        .innerJoin('blobs', 'blobs.hash', 'attachments.hash')
        .selectAll('attachments')
        .select('blobs.bytes')
        .where('attachments.hash', '=', hash)
        .executeTakeFirst();
      // The driver gives bare memory.
      return row && { ...attachmentOf(row), bytes: new Uint8Array(row.bytes) };
    },
    add: (project, { bytes, name, mediaType, at }) =>
      db.transaction().execute(async (tx) => {
        const hash = hashOf(bytes);
        await insertAttachment(tx, project, { hash, name, mediaType, size: bytes.length, at, bytes });
        const row = await tx
          .selectFrom('attachments')
          .selectAll()
          .where('project', '=', project)
          .where('hash', '=', hash)
          .executeTakeFirstOrThrow();
        return attachmentOf(row);
      }),
  };
}
