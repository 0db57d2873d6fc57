import type { Problem } from '@cloche/engine';
import type { Database } from './database.js';
import type { Tables } from './schema.js';
import { replay } from './splices.js';
import type { NewStep, Step } from './types.js';

/** How an append ended. `behind`: someone else was first; the steps are what happened since the base. */
export type Appended =
  | { readonly outcome: 'appended' | 'behind'; readonly seq: number; readonly steps: readonly Step[] }
  | { readonly outcome: 'unfit'; readonly problems: readonly Problem[] }
  | { readonly outcome: 'missing' };

/** The one history of a project. */
export interface Steps {
  /** The head, and the steps after a number; undefined when there is no such project. */
  readonly since: (
    project: string,
    after: number,
  ) => Promise<{ readonly seq: number; readonly steps: readonly Step[] } | undefined>;
  /**
   * Appends steps to the head that the caller has seen: all of them, durable when the promise is kept, or none.
   * @param made `base` is the number of the last step that the caller has seen, `at` the time, ISO 8601
   */
  readonly append: (
    project: string,
    made: { readonly base: number; readonly steps: readonly NewStep[]; readonly at: string },
  ) => Promise<Appended>;
}

export const stepOf = (row: Tables['steps']): Step => ({
  seq: row.seq,
  at: row.at,
  window: row.window_id,
  group: row.group_id,
  kind: row.kind,
  splices: JSON.parse(row.splices_json),
});

export const rowOf = (project: string, step: Step): Tables['steps'] => ({
  project,
  seq: step.seq,
  at: step.at,
  window_id: step.window,
  group_id: step.group,
  kind: step.kind,
  splices_json: JSON.stringify(step.splices),
});

/** Rows of one statement: far below the number of values that a statement may hold. */
const batch = 1000;

export async function insertSteps(db: Database, project: string, steps: readonly Step[]): Promise<void> {
  for (let i = 0; i < steps.length; i += batch)
    await db
      .insertInto('steps')
      .values(steps.slice(i, i + batch).map((step) => rowOf(project, step)))
      .execute();
}

export async function stepsAfter(db: Database, project: string, after: number): Promise<readonly Step[]> {
  const rows = await db
    .selectFrom('steps')
    .selectAll()
    .where('project', '=', project)
    .where('seq', '>', after)
    .orderBy('seq')
    .execute();
  return rows.map(stepOf);
}

export function stepsIn(db: Database): Steps {
  return {
    since: (project, after) =>
      db.transaction().execute(async (tx) => {
        const head = await headOf(tx, project);
        return head && { seq: head.seq, steps: await stepsAfter(tx, project, after) };
      }),
    append: (project, { base, steps, at }) =>
      db.transaction().execute(async (tx): Promise<Appended> => {
        const head = await headOf(tx, project);
        if (!head) return { outcome: 'missing' };
        const behind = async (): Promise<Appended> => ({
          outcome: 'behind',
          seq: head.seq,
          steps: await stepsAfter(tx, project, base),
        });
        if (head.seq !== base) return behind();
        const text = replay(head.text, steps);
        if (!text.ok) return { outcome: 'unfit', problems: text.problems };
        const kept = steps.map((step, i): Step => ({ ...step, seq: base + i + 1, at }));
        const seq = base + kept.length;
        const { numUpdatedRows } = await tx
          .updateTable('projects')
          .set({ seq, text: text.value, changed: at })
          .where('id', '=', project)
          .where('seq', '=', base)
          .executeTakeFirst();
        if (numUpdatedRows !== 1n) return behind();
        await insertSteps(tx, project, kept);
        return { outcome: 'appended', seq, steps: kept };
      }),
  };
}

const headOf = (db: Database, project: string) =>
  db
    .selectFrom('projects')
    .select(['seq', 'text'])
    .where('id', '=', project)
    .where('removed', 'is', null)
    .executeTakeFirst();
