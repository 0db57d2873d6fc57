import { chmodSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { type Outcome, ok, type Problem, problem, refuse } from '@cloche/engine';
import { Kysely, Migrator, type SqliteDatabase, SqliteDialect } from 'kysely';
import Libsql from 'libsql';
import { migrations } from './migrations.js';
import { holdFolder } from './one-process.js';
import type { Tables } from './schema.js';

export type Database = Kysely<Tables>;

/**
 * Opens the database of a data folder and brings its tables up to date; without a folder, one in memory.
 *
 * The folder is held for as long as the database is open.
 * @returns the database, or `store/folder`, `store/in-use`, `store/damaged`, `store/newer`
 */
export async function openDatabase(folder: string | null): Promise<Outcome<Database>> {
  const opened = openFile(folder);
  if (!opened.ok) return opened;
  const db = new Kysely<Tables>({ dialect: new SqliteDialect({ database: opened.value }) });
  const problems = await migrate(db, folder ?? '');
  if (problems.length === 0) return ok(db);
  await db.destroy();
  return refuse(problems);
}

function openFile(folder: string | null): Outcome<SqliteDatabase> {
  let release = () => {};
  try {
    if (folder !== null) {
      mkdirSync(folder, { recursive: true, mode: 0o700 });
      release = holdFolder(folder);
    }
    const file = new Libsql(folder === null ? ':memory:' : join(folder, 'cloche.db'));
    // Every commit reaches the disk before it is acknowledged.
    if (folder !== null) chmodSync(join(folder, 'cloche.db'), 0o600);
    file.exec('pragma journal_mode = WAL; pragma synchronous = FULL; pragma foreign_keys = ON');
    const close = () => {
      // So that a copy of the one file holds everything.
      file.exec('pragma wal_checkpoint(TRUNCATE)');
      file.close();
      release();
    };
    return ok({ prepare: (statement) => file.prepare(statement), close });
  } catch (error) {
    release();
    return refuse([fileProblem(folder ?? '', error)]);
  }
}

function fileProblem(folder: string, error: unknown): Problem {
  const code = codeOf(error);
  if (code.startsWith('SQLITE_BUSY'))
    return problem(
      'store/in-use',
      [folder],
      `The data folder ${folder} is in use by another Cloche.`,
      'Stop the other one, or give this one a folder of its own with --data DIR.',
    );
  if (code.startsWith('SQLITE_NOTADB') || code.startsWith('SQLITE_CORRUPT'))
    return problem(
      'store/damaged',
      [folder],
      `The file cloche.db in ${folder} cannot be read as a database.`,
      'Put back a copy of the folder, or move it away to start with an empty one. Nothing was changed.',
    );
  return folderProblem(folder, error);
}

const codeOf = (error: unknown): string => String((error as { code?: unknown }).code ?? 'error');

const folderProblem = (folder: string, error: unknown): Problem =>
  problem(
    'store/folder',
    [folder],
    `The data folder ${folder} cannot be used (${codeOf(error)}).`,
    'Choose a folder that you may write to with --data DIR, or free space on the disk.',
  );

async function migrate(db: Database, folder: string): Promise<Problem[]> {
  const migrator = new Migrator({ db, provider: { getMigrations: async () => migrations } });
  if (await writtenByNewer(db))
    return [
      problem(
        'store/newer',
        [folder],
        `The data folder ${folder} was written by a newer Cloche than this one.`,
        'Use the newer one, or another folder with --data DIR. Nothing was changed.',
      ),
    ];
  const { error } = await migrator.migrateToLatest();
  return error === undefined ? [] : [fileProblem(folder, error)];
}

/** True when tables were changed in a way that this version does not know. */
async function writtenByNewer(db: Database): Promise<boolean> {
  const tables = await db.introspection.getTables({ withInternalKyselyTables: true });
  if (!tables.some((t) => t.name === 'kysely_migration')) return false;
  const done = await db
    .withTables<{ kysely_migration: { name: string } }>()
    .selectFrom('kysely_migration')
    .select('name')
    .execute();
  return done.some(({ name }) => !(name in migrations));
}
