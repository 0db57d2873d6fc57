import type { Edit } from '../brief/document.js';
import { idsInUse } from '../brief/find.js';
import { listAt, type Path, pathKey, valueAt } from '../brief/path.js';
import { namesOf } from '../brief/references.js';
import type { Field } from '../brief/shapes.js';
import { canAdd } from '../brief/templates.js';
import type { Design } from '../engine/contract.js';
import { scheduleTexts as say } from '../texts/schedules.js';
import { texts } from '../texts.js';
import { applies, cellAt, cellText, type Known, readCell } from './cells.js';
import type { Schedule } from './schedule.js';

/** A text for one cell: typed, pasted, or empty to clear it. Rows past the last one are new. */
export interface CellInput {
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

export interface Refusal extends CellInput {
  readonly reason: string;
}

/** What goes into the brief, and what stays out with its reason. */
export interface EditPlan {
  readonly edits: readonly Edit[];
  readonly refused: readonly Refusal[];
  /** Cells taken, unchanged ones not counted. */
  readonly taken: number;
}

interface Given {
  readonly schedule: Schedule;
  /** Rows in the order that they are shown in. */
  readonly rows: readonly Path[];
  readonly known: Known;
  readonly design: Design | undefined;
}

/**
 * Reads a block of cells for a schedule: what can be read is to be written in one go, what cannot is named with its reason.
 * Each cell is read against the brief as the cells before it leave it: a pasted word "pulsed" makes room for the pulse energy
 * beside it.
 */
export function planEdits({ schedule, rows, known, design }: Given, inputs: readonly CellInput[]): EditPlan {
  const edits: Edit[] = [];
  const refused: Refusal[] = [];
  let data = known.data;
  let taken = 0;
  const put = (path: Path, value: unknown) => {
    data = withValueAt(data, path, value);
    edits.push([path, value]);
  };
  const ids = new Set(idsInUse(data));

  for (const [row, cells] of byRow(inputs)) {
    const isNew = row >= rows.length;
    const filled = isNew ? cells.filter((cell) => cell.text.trim() !== '') : cells;
    if (filled.length === 0) continue;
    const begun = isNew ? newRow(schedule, data, design) : { path: rows[row]!, entry: undefined };
    if (typeof begun === 'string') {
      refused.push(...filled.map((cell) => ({ ...cell, reason: begun })));
      continue;
    }
    const { path } = begun;
    const before = edits.length;
    if (isNew) put(path, begun.entry);
    let takenHere = 0;
    for (const cell of filled) {
      const field = schedule.columns[cell.column];
      if (!field) {
        refused.push({ ...cell, reason: say.noColumn });
        continue;
      }
      const now = cellAt(data, path, field);
      if (!isNew && cellText(now) === cell.text.trim()) continue;
      const read = applies(data, path, field)
        ? readCell(field, cell.text, { ...known, data })
        : ({ ok: false, reason: say.doesNotApply } as const);
      if (!read.ok) {
        if (cell.text.trim() !== '' || now !== undefined) refused.push({ ...cell, reason: read.reason });
        continue;
      }
      const taken = 'id' in field.shape && read.value !== now && ids.has(String(read.value));
      if (taken) {
        refused.push({ ...cell, reason: texts.forms.idTaken(String(read.value)) });
        continue;
      }
      for (const [at, value] of writes(data, path, field, read.value)) put(at, value);
      if ('id' in field.shape) ids.add(String(read.value));
      takenHere++;
    }
    if (isNew && takenHere === 0) {
      // Nothing of the row could be read: it is not begun at all.
      data = withValueAt(data, path, undefined);
      edits.length = before;
    } else if (isNew) {
      edits.length = before;
      edits.push([path, valueAt(data, path)]);
    }
    taken += takenHere;
  }
  return { edits, refused, taken };
}

function byRow(inputs: readonly CellInput[]): ReadonlyMap<number, readonly CellInput[]> {
  const rows = new Map<number, CellInput[]>();
  for (const input of inputs) rows.set(input.row, [...(rows.get(input.row) ?? []), input]);
  return new Map([...rows].sort(([a], [b]) => a - b));
}

/** A row with start values after the last one, or why there can be none. */
function newRow(
  { adding }: Schedule,
  data: unknown,
  design: Design | undefined,
): string | { readonly path: Path; readonly entry: unknown } {
  if (!adding) return say.noNewRows;
  if (adding.needs && !canAdd(data, { list: adding.list, title: '', adds: [], needs: adding.needs }))
    return adding.needs[1];
  return { path: [...adding.list, listAt(data, adding.list).length], entry: adding.entry({ data, design }) };
}

/** What one cell writes: often its value alone, sometimes the object around it or every place that names a thing. */
function* writes(data: unknown, row: Path, field: Field, value: unknown): Generator<Edit> {
  const path = [...row, ...field.path];
  const { shape } = field;
  if ('id' in shape) {
    const before = valueAt(data, path);
    if (typeof before === 'string') for (const named of namesOf(data, before)) yield [named, value];
  }
  if ('variants' in shape && typeof value === 'string')
    yield [path.slice(0, -1), { [String(path.at(-1))]: value, ...shape.variants[value] }];
  else if (value === undefined && field.heart) yield [[...row, ...field.heart], undefined];
  else yield [path, value];
}

/** A copy of plain data with one value replaced; what is missing on the way is made. */
export function withValueAt(data: unknown, path: Path, value: unknown): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  if (typeof step === 'number') {
    const list: unknown[] = Array.isArray(data) ? [...data] : [];
    if (rest.length === 0 && value === undefined) list.splice(step, 1);
    else list[step] = withValueAt(list[step], rest, value);
    return list;
  }
  const record = typeof data === 'object' && data !== null ? (data as Record<string, unknown>) : {};
  const inner = withValueAt(record[step], rest, value);
  if (inner !== undefined) return { ...record, [step]: inner };
  const { [step]: _, ...left } = record;
  return left;
}

export const cellKey = (row: Path, field: Field): string => pathKey([...row, ...field.path]);
