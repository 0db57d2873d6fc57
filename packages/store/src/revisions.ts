import type { Database } from './database.js';
import type { Tables } from './schema.js';
import { replay } from './splices.js';
import { stepsAfter } from './steps.js';
import { keepText } from './texts.js';
import type { FileHashes, NewRevision, Revision, RevisionLine, StockHashes } from './types.js';

/** Texts of the data files in force, by their names. */
export interface StockTexts {
  readonly catalogue: Readonly<Record<string, string>>;
  readonly rules: Readonly<Record<string, string>>;
}

/** Immutable states of a project: there is no way to change or to remove one. */
export interface Revisions {
  readonly list: (project: string) => Promise<readonly RevisionLine[]>;
  readonly get: (project: string, number: number) => Promise<Revision | undefined>;
  /**
   * Keeps the text as it was after step `seq`, and the data files that were in force.
   * @returns its number; `no-step` when the history does not reach so far; undefined without such a project
   */
  readonly add: (
    project: string,
    made: NewRevision & { readonly at: string; readonly stock: StockTexts },
  ) => Promise<number | 'no-step' | undefined>;
}

export const revisionOf = (row: Tables['revisions']): RevisionLine => ({
  number: row.number,
  name: row.name,
  note: row.note,
  by: row.author,
  at: row.at,
  seq: row.seq,
  hash: row.hash,
  verdicts: row.verdicts_json === null ? null : JSON.parse(row.verdicts_json),
  cost: JSON.parse(row.cost_json),
  stock: JSON.parse(row.stock_json),
});

/** Inserts one as it is: with the number and the hashes that it has. */
export async function insertRevision(db: Database, project: string, line: RevisionLine, text: string): Promise<void> {
  await db
    .insertInto('revisions')
    .values({
      project,
      number: line.number,
      name: line.name,
      note: line.note,
      author: line.by,
      at: line.at,
      seq: line.seq,
      hash: line.hash,
      text_hash: await keepText(db, text),
      verdicts_json: line.verdicts === null ? null : JSON.stringify(line.verdicts),
      cost_json: JSON.stringify(line.cost ?? null),
      stock_json: JSON.stringify(line.stock),
    })
    .execute();
}

export const revisionLines = async (db: Database, project: string): Promise<readonly RevisionLine[]> =>
  (await db.selectFrom('revisions').selectAll().where('project', '=', project).orderBy('number').execute()).map(
    revisionOf,
  );

export function revisionsIn(db: Database): Revisions {
  return {
    list: (project) => revisionLines(db, project),
    async get(project, number) {
      const row = await db
        .selectFrom('revisions')
        .innerJoin('texts', 'texts.hash', 'revisions.text_hash')
        .selectAll('revisions')
        .select('texts.text')
        .where('project', '=', project)
        .where('number', '=', number)
        .executeTakeFirst();
      return row && { ...revisionOf(row), text: row.text };
    },
    add: (project, { at, stock, ...made }) =>
      db.transaction().execute(async (tx) => {
        const head = await tx
          .selectFrom('projects')
          .select(['seq', 'text', 'start'])
          .where('id', '=', project)
          .where('removed', 'is', null)
          .executeTakeFirst();
        if (!head) return undefined;
        if (made.seq > head.seq) return 'no-step';
        const text = made.seq === head.seq ? head.text : await textAt(tx, project, head.start, made.seq);
        const last = await tx
          .selectFrom('revisions')
          .select((q) => q.fn.max('number').as('number'))
          .where('project', '=', project)
          .executeTakeFirst();
        const number = Number(last?.number ?? 0) + 1;
        await insertRevision(tx, project, { ...made, number, at, stock: await keepStock(tx, stock) }, text);
        return number;
      }),
  };
}

async function textAt(db: Database, project: string, start: string, seq: number): Promise<string> {
  const steps = (await stepsAfter(db, project, 0)).filter((step) => step.seq <= seq);
  const text = replay(start, steps);
  if (!text.ok) throw new Error(`the history of project ${project} does not replay`);
  return text.value;
}

async function keepStock(db: Database, { catalogue, rules }: StockTexts): Promise<StockHashes> {
  const hashes = async (files: Readonly<Record<string, string>>): Promise<FileHashes> => {
    const kept: Record<string, string> = {};
    for (const name of Object.keys(files).sort()) kept[name] = await keepText(db, files[name]!);
    return kept;
  };
  return { catalogue: await hashes(catalogue), rules: await hashes(rules) };
}
