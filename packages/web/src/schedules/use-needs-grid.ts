import { useMemo } from 'react';
import { type Path, pathKey } from '../brief/path.js';
import { useWorkbench } from '../state/store.js';
import { applies, cellAt, cellText } from './cells.js';
import type { CellInput } from './plan-edits.js';
import { schedules } from './schedule.js';
import { hasUnit, type NeedRow, needCells, needColumn, pathOf, planNeeds, shownNeeds } from './single-needs.js';
import { useLook } from './state.js';
import { assumedAt, type CellView, type GridModel, told } from './use-grid.js';
import { useOutcome } from './use-outcome.js';

const collator = new Intl.Collator('en', { numeric: true });

/** Needs that stand once in the brief, one quantity a row: what the cells show, and how they are written. */
export function useNeedsGrid(): GridModel {
  const data = useWorkbench((s) => s.data);
  const shelf = useWorkbench((s) => s.shelf);
  const problems = useWorkbench((s) => s.problems);
  const design = useWorkbench((s) => s.computed?.design);
  const sorting = useLook((s) => s.sorting);
  // Value and unit of a row are read together.
  const { outcome, take, forgetRefused } = useOutcome((a, b) => a.row === b.row);
  const needs = useMemo(() => {
    const rows = shownNeeds(data);
    if (!sorting) return rows;
    const text = (row: NeedRow) => needCells(data, row)[sorting.column] ?? '';
    return [...rows].sort((a, b) => collator.compare(text(a), text(b)) * (sorting.down ? -1 : 1));
  }, [data, sorting]);
  const assumed = useMemo(() => assumedAt(design), [design]);
  const rows = useMemo(() => needs.map(pathOf), [needs]);

  const cell = (index: number, column: number): CellView => {
    const row = needs[index];
    const refusal = outcome.refused.find((each) => each.row === index && each.column === column);
    const nothing = { text: '', applies: false, assumed: undefined, problem: undefined, refusal };
    if (!row || (column === needColumn.unit && !hasUnit(row)) || !applies(data, row.base, row.field)) return nothing;
    const text = needCells(data, row)[column] ?? '';
    const key = pathKey(pathOf(row));
    const isValue = column === needColumn.value;
    const problem = problems.find(({ path }) => [key, `${key}/`].some((k) => `${pathKey(path)}/`.startsWith(k)));
    return {
      text,
      applies: true,
      assumed: isValue && text === '' ? assumed.get(key) : undefined,
      problem: isValue && problem ? told(problem) : undefined,
      refusal,
    };
  };

  const write = (inputs: readonly CellInput[]) =>
    take(inputs, planNeeds(needs, { data: useWorkbench.getState().data, shelf }, inputs));

  return {
    schedule: schedules.needs,
    rows,
    canAdd: false,
    fieldAt: (index, column) => (column === needColumn.value ? needs[index]?.field : undefined),
    whole: (index) => {
      const row = needs[index];
      return row ? cellText(cellAt(data, row.base, row.field)) : '';
    },
    nameOf: (path: Path) => needs.find((row) => pathKey(pathOf(row)) === pathKey(path))?.name,
    cell,
    ...outcome,
    write,
    forgetRefused,
    out: (from = { top: 0, bottom: needs.length - 1, left: 0, right: needColumn.unit }) =>
      needs.slice(from.top, from.bottom + 1).map((row) =>
        needCells(data, row)
          .slice(from.left, from.right + 1)
          .map((text, i) => ({ text, figure: i + from.left === needColumn.value && hasUnit(row) })),
      ),
  };
}
