import type { Database } from './database.js';
import { hashOf } from './names.js';

/** Keeps a text under its own hash, once. */
export async function keepText(db: Database, text: string): Promise<string> {
  const hash = hashOf(text);
  await db
    .insertInto('texts')
    .values({ hash, text })
    .onConflict((c) => c.column('hash').doNothing())
    .execute();
  return hash;
}

export const textOf = async (db: Database, hash: string): Promise<string | undefined> =>
  (await db.selectFrom('texts').select('text').where('hash', '=', hash).executeTakeFirst())?.text;
