import { useMemo } from 'react';
import { type Path, pathKey } from '../brief/path.js';
import type { Field } from '../brief/shapes.js';
import type { Design, Problem } from '../engine/contract.js';
import { useWorkbench } from '../state/store.js';
import type { OutCell } from './block-text.js';
import { applies, cellAt, cellText, isFigure } from './cells.js';
import { type CellInput, cellKey, planEdits, type Refusal } from './plan-edits.js';
import { inOrder } from './row-order.js';
import type { Schedule } from './schedule.js';
import { useLook } from './state.js';
import { useOutcome } from './use-outcome.js';

/** What one cell shows. */
export interface CellView {
  readonly text: string;
  readonly applies: boolean;
  readonly assumed: string | undefined;
  readonly problem: string | undefined;
  readonly refusal: Refusal | undefined;
}

export interface GridModel {
  readonly schedule: Schedule;
  /** Rows as shown; one more, without a path, takes new ones. */
  readonly rows: readonly Path[];
  readonly canAdd: boolean;
  /** What a cell is a value of, where that differs from row to row. */
  readonly fieldAt?: (row: number, column: number) => Field | undefined;
  /** What a row is called aloud, where its path does not tell. */
  readonly nameOf?: (path: Path) => string | undefined;
  /** The quantity that the cells of a row make, where it is cut into several. */
  readonly whole?: (row: number) => string;
  readonly cell: (row: number, column: number) => CellView;
  readonly refused: readonly Refusal[];
  readonly taken: number;
  readonly write: (inputs: readonly CellInput[]) => void;
  readonly forgetRefused: () => void;
  /** The header and all cells, or those of a range, on their way out. */
  readonly out: (from?: {
    top: number;
    bottom: number;
    left: number;
    right: number;
  }) => readonly (readonly OutCell[])[];
}

export const told = (problem: Problem): string => `${problem.message} ${problem.hint}`.trim();

/** What is computed with where the brief says nothing, by its place. */
export const assumedAt = (design: Design | undefined): ReadonlyMap<string, string> =>
  new Map((design?.assumptions ?? []).map((a) => [pathKey(a.path), a.value] as const));

/** A schedule over the brief: what its cells show, and how they are written. */
export function useGrid(schedule: Schedule): GridModel {
  const data = useWorkbench((s) => s.data);
  const shelf = useWorkbench((s) => s.shelf);
  const problems = useWorkbench((s) => s.problems);
  const design = useWorkbench((s) => s.computed?.design);
  const sorting = useLook((s) => s.sorting);
  const { outcome, take, forgetRefused } = useOutcome((a, b) => a.row === b.row && a.column === b.column);
  const rows = useMemo(() => inOrder(schedule.rows(data), schedule.columns, data, sorting), [schedule, data, sorting]);
  const assumed = useMemo(() => assumedAt(design), [design]);
  const problemAt = useMemo(() => problemsByCell(problems, schedule, rows), [problems, schedule, rows]);
  const refusedAt = useMemo(() => new Map(outcome.refused.map((r) => [`${r.row} ${r.column}`, r])), [outcome]);

  const cell = (row: number, column: number): CellView => {
    const [path, field] = [rows[row], schedule.columns[column]!];
    const refusal = refusedAt.get(`${row} ${column}`);
    if (!path) return { text: '', applies: true, assumed: undefined, problem: undefined, refusal };
    const value = cellAt(data, path, field);
    const key = cellKey(path, field);
    if (!applies(data, path, field))
      return { text: '', applies: false, assumed: undefined, problem: undefined, refusal };
    return {
      text: cellText(value),
      applies: true,
      assumed: value === undefined ? assumed.get(key) : undefined,
      problem: problemAt.get(key),
      refusal,
    };
  };

  const write = (inputs: readonly CellInput[]) =>
    take(inputs, planEdits({ schedule, rows, known: { data: useWorkbench.getState().data, shelf }, design }, inputs));

  return {
    schedule,
    rows,
    canAdd: schedule.adding !== undefined,
    cell,
    ...outcome,
    write,
    forgetRefused,
    out: (from = { top: 0, bottom: rows.length - 1, left: 0, right: schedule.columns.length - 1 }) =>
      rows.slice(from.top, from.bottom + 1).map((path) =>
        schedule.columns.slice(from.left, from.right + 1).map((field) => ({
          text: applies(data, path, field) ? cellText(cellAt(data, path, field)) : '',
          figure: isFigure(field),
        })),
      ),
  };
}

/** Each problem by the cell it belongs to; one with a whole row stands in its first cell. */
function problemsByCell(
  problems: readonly Problem[],
  schedule: Schedule,
  rows: readonly Path[],
): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  const add = (key: string, problem: Problem) =>
    found.set(key, [found.get(key), told(problem)].filter(Boolean).join(' '));
  for (const problem of problems) {
    const key = pathKey(problem.path);
    for (const row of rows) {
      const start = pathKey(row);
      if (key !== start && !key.startsWith(`${start}/`)) continue;
      const within = schedule.columns.find((field) => {
        const cell = cellKey(row, field);
        return key === cell || key.startsWith(`${cell}/`) || cell.startsWith(`${key}/`);
      });
      add(cellKey(row, within ?? schedule.columns[0]!), problem);
    }
  }
  return found;
}
