import type { Database } from './database.js';
import { keepText, textOf } from './texts.js';
import type { ShelfKind, ShelfVersion } from './types.js';

/** Which data file is meant. */
export interface ShelfPlace {
  readonly kind: ShelfKind;
  readonly name: string;
}

/** Catalogue and rules that replace what was shipped; every version stays readable. */
export interface Shelf {
  /** All changes, oldest first; the last of a file is in force. */
  readonly versions: () => Promise<readonly ShelfVersion[]>;
  /** Texts that replace or join what was shipped. */
  readonly inForce: () => Promise<readonly (ShelfPlace & { readonly text: string })[]>;
  /** @returns the hash of the text */
  readonly put: (
    place: ShelfPlace,
    made: { readonly text: string; readonly because: string; readonly at: string; readonly file?: string | null },
  ) => Promise<string>;
  /** Back to what was shipped, or away. */
  readonly takeBack: (place: ShelfPlace, made: { readonly because: string; readonly at: string }) => Promise<void>;
  /** A version of the file; undefined when it never had this one. */
  readonly text: (place: ShelfPlace, hash: string) => Promise<string | undefined>;
}

export function shelfIn(db: Database): Shelf {
  const versions = async (): Promise<readonly ShelfVersion[]> =>
    db
      .selectFrom('shelf_versions')
      .select(['kind', 'name', 'hash', 'at', 'because', 'file'])
      .orderBy('kind')
      .orderBy('name')
      .orderBy('number')
      .execute();
  const append = async (tx: Database, { kind, name }: ShelfPlace, made: Omit<ShelfVersion, 'kind' | 'name'>) => {
    const last = await tx
      .selectFrom('shelf_versions')
      .select((q) => q.fn.max('number').as('number'))
      .where('kind', '=', kind)
      .where('name', '=', name)
      .executeTakeFirst();
    await tx
      .insertInto('shelf_versions')
      .values({ kind, name, number: Number(last?.number ?? 0) + 1, ...made })
      .execute();
  };
  return {
    versions,
    async inForce() {
      const last = new Map<string, ShelfVersion>();
      for (const version of await versions()) last.set(`${version.kind}/${version.name}`, version);
      const files: (ShelfPlace & { text: string })[] = [];
      for (const { kind, name, hash } of last.values()) {
        const text = hash === null ? undefined : await textOf(db, hash);
        if (text !== undefined) files.push({ kind, name, text });
      }
      return files;
    },
    put: (place, { text, because, at, file = null }) =>
      db.transaction().execute(async (tx) => {
        const hash = await keepText(tx, text);
        await append(tx, place, { hash, at, because, file });
        return hash;
      }),
    takeBack: (place, { because, at }) =>
      db.transaction().execute((tx) => append(tx, place, { hash: null, at, because, file: null })),
    async text({ kind, name }, hash) {
      const row = await db
        .selectFrom('shelf_versions')
        .innerJoin('texts', 'texts.hash', 'shelf_versions.hash')
        .select('texts.text')
        .where('kind', '=', kind)
        .where('name', '=', name)
        .where('shelf_versions.hash', '=', hash)
        .executeTakeFirst();
      return row?.text;
    },
  };
}
