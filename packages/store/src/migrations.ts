import type { Kysely, Migration } from 'kysely';

/** First form. */
const projects: Migration = {
  async up(db: Kysely<unknown>) {
    await db.schema
      .createTable('projects')
      .addColumn('id', 'text', (c) => c.primaryKey())
      .addColumn('name', 'text', (c) => c.notNull())
      .addColumn('created', 'text', (c) => c.notNull())
      .addColumn('changed', 'text', (c) => c.notNull())
      .addColumn('removed', 'text')
      .addColumn('seq', 'integer', (c) => c.notNull())
      .addColumn('start', 'text', (c) => c.notNull())
      .addColumn('text', 'text', (c) => c.notNull())
      .addColumn('summary_seq', 'integer', (c) => c.notNull())
      .addColumn('verdicts_json', 'text')
      .addColumn('picture', 'text')
      .execute();
    await db.schema
      .createTable('steps')
      .addColumn('project', 'text', (c) => c.notNull().references('projects.id'))
      .addColumn('seq', 'integer', (c) => c.notNull())
      .addColumn('at', 'text', (c) => c.notNull())
      .addColumn('window_id', 'text', (c) => c.notNull())
      .addColumn('group_id', 'text', (c) => c.notNull())
      .addColumn('kind', 'text', (c) => c.notNull())
      .addColumn('splices_json', 'text', (c) => c.notNull())
      .addPrimaryKeyConstraint('steps_key', ['project', 'seq'])
      .execute();
    await db.schema
      .createTable('texts')
      .addColumn('hash', 'text', (c) => c.primaryKey())
      .addColumn('text', 'text', (c) => c.notNull())
      .execute();
    await db.schema
      .createTable('revisions')
      .addColumn('project', 'text', (c) => c.notNull().references('projects.id'))
      .addColumn('number', 'integer', (c) => c.notNull())
      .addColumn('name', 'text', (c) => c.notNull())
      .addColumn('note', 'text', (c) => c.notNull())
      .addColumn('author', 'text', (c) => c.notNull())
      .addColumn('at', 'text', (c) => c.notNull())
      .addColumn('seq', 'integer', (c) => c.notNull())
      .addColumn('hash', 'text', (c) => c.notNull())
      .addColumn('text_hash', 'text', (c) => c.notNull().references('texts.hash'))
      .addColumn('verdicts_json', 'text')
      .addColumn('cost_json', 'text', (c) => c.notNull())
      .addColumn('stock_json', 'text', (c) => c.notNull())
      .addPrimaryKeyConstraint('revisions_key', ['project', 'number'])
      .execute();
    await db.schema
      .createTable('blobs')
      .addColumn('hash', 'text', (c) => c.primaryKey())
      .addColumn('bytes', 'blob', (c) => c.notNull())
      .execute();
    await db.schema
      .createTable('attachments')
      .addColumn('project', 'text', (c) => c.notNull().references('projects.id'))
      .addColumn('hash', 'text', (c) => c.notNull().references('blobs.hash'))
      .addColumn('name', 'text', (c) => c.notNull())
      .addColumn('media_type', 'text', (c) => c.notNull())
      .addColumn('size', 'integer', (c) => c.notNull())
      .addColumn('at', 'text', (c) => c.notNull())
      .addPrimaryKeyConstraint('attachments_key', ['project', 'hash'])
      .execute();
    await db.schema
      .createTable('shelf_versions')
      .addColumn('kind', 'text', (c) => c.notNull())
      .addColumn('name', 'text', (c) => c.notNull())
      .addColumn('number', 'integer', (c) => c.notNull())
      .addColumn('hash', 'text', (c) => c.references('texts.hash'))
      .addColumn('at', 'text', (c) => c.notNull())
      .addColumn('because', 'text', (c) => c.notNull())
      .addPrimaryKeyConstraint('shelf_versions_key', ['kind', 'name', 'number'])
      .execute();
    await db.schema
      .createTable('opened_files')
      .addColumn('path', 'text', (c) => c.primaryKey())
      .addColumn('text_hash', 'text', (c) => c.notNull())
      .addColumn('project', 'text', (c) => c.notNull().references('projects.id'))
      .execute();
  },
};

/** What a data file was called that was brought onto the shelf. */
const shelfFiles: Migration = {
  async up(db: Kysely<unknown>) {
    await db.schema.alterTable('shelf_versions').addColumn('file', 'text').execute();
  },
};

/** In the order of their names. One that was released is never changed: another one follows it. */
export const migrations: Readonly<Record<string, Migration>> = {
  '0001-projects': projects,
  '0002-shelf-files': shelfFiles,
};
