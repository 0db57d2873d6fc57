import type { Edit } from '../brief/document.js';
import { fieldsOf } from '../brief/fields.js';
import type { Path } from '../brief/path.js';
import type { Field } from '../brief/shapes.js';
import { needsLists } from '../brief/templates.js';
import { scheduleTexts as say } from '../texts/schedules.js';
import { amountOf, joined, unitsDisagree } from './amount-text.js';
import { applies, cellAt, cellText, type Known, readCell } from './cells.js';
import { type CellInput, type EditPlan, type Refusal, withValueAt } from './plan-edits.js';

/** One quantity of a need that stands once in the brief. */
export interface NeedRow {
  readonly base: Path;
  readonly field: Field;
  /** Need and quantity, as the first cell shows them. */
  readonly name: string;
}

/** Columns of the schedule. */
export const needColumn = { name: 0, value: 1, unit: 2 } as const;

/** Every need that is a single object, in the order of the form, quantity by quantity; what every brief has comes last. */
export const needRows: readonly NeedRow[] = [
  ...Object.entries(needsLists).flatMap(([id, addable]) =>
    'single' in addable ? rowsOf(id, addable.list, addable.title) : [],
  ),
  ...rowsOf('needs', ['needs'], say.everyBrief),
  ...rowsOf('site', ['site'], say.site),
];

function rowsOf(id: string, base: Path, title: string): readonly NeedRow[] {
  return fieldsOf[id]!.map((field) => ({ base, field, name: `${title}: ${field.label}` }));
}

export const pathOf = ({ base, field }: NeedRow): Path => [...base, ...field.path];

/** Quantities and money have a unit of their own in a cell beside. */
export const hasUnit = ({ field: { shape } }: NeedRow): boolean => 'quantity' in shape || 'money' in shape;

/** What the three cells of a row show. */
export function needCells(data: unknown, row: NeedRow): readonly [string, string, string] {
  const text = cellText(cellAt(data, row.base, row.field));
  const { value, unit } = hasUnit(row) ? amountOf(text) : { value: text, unit: '' };
  return [row.name, value, unit];
}

/**
 * Reads a block of cells for the schedule of single needs. Value and unit of one row are read together, whichever of them was pasted;
 * names of quantities are fixed. What cannot be read stays out with its reason.
 */
export function planNeeds(rows: readonly NeedRow[], known: Known, inputs: readonly CellInput[]): EditPlan {
  const edits: Edit[] = [];
  const refused: Refusal[] = [];
  let data = known.data;
  let taken = 0;
  for (const [index, row] of rows.entries()) {
    const cells = inputs.filter((input) => input.row === index);
    if (cells.length === 0) continue;
    const wrong = fixedCells(row, cells);
    refused.push(...wrong);
    const given = cells.filter((cell) => !wrong.some((each) => each.column === cell.column) && cell.column !== 0);
    if (given.length === 0) continue;
    const read = readRow(row, { ...known, data }, given);
    if (read === 'same') continue;
    if (typeof read === 'string') {
      refused.push(...given.slice(0, 1).map((cell) => ({ ...cell, reason: read })));
      continue;
    }
    const edit: Edit = [pathOf(row), read.value];
    data = withValueAt(data, ...edit);
    edits.push(edit);
    taken += given.length;
  }
  const beyond = inputs.filter((input) => input.row >= rows.length && input.text.trim() !== '');
  refused.push(...beyond.map((cell) => ({ ...cell, reason: say.noNeedRow })));
  return { edits, refused, taken };
}

/** Cells that nothing can be written into: another name, a unit of what has none, a column too many. */
function fixedCells(row: NeedRow, cells: readonly CellInput[]): readonly Refusal[] {
  return cells.flatMap((cell): Refusal[] => {
    const text = cell.text.trim();
    if (cell.column === needColumn.name) return text === row.name ? [] : [{ ...cell, reason: say.fixedName(row.name) }];
    if (cell.column > needColumn.unit) return text === '' ? [] : [{ ...cell, reason: say.noColumn }];
    if (cell.column === needColumn.unit && !hasUnit(row)) return text === '' ? [] : [{ ...cell, reason: say.noUnit }];
    return [];
  });
}

/** The value that the cells of a row make, `same` when it stands there already, or why they make none. */
function readRow(
  row: NeedRow,
  known: Known,
  cells: readonly CellInput[],
): 'same' | string | { readonly value: unknown } {
  const [, valueNow, unitNow] = needCells(known.data, row);
  const text = (column: number) => cells.find((cell) => cell.column === column)?.text;
  const value = text(needColumn.value) ?? valueNow;
  const unit = text(needColumn.unit);
  // A unit that stood there gives way to one that comes with its value; two that are pasted must agree.
  if (unit !== undefined && unitsDisagree({ value, unit })) return say.twoUnits(amountOf(value).unit, unit.trim());
  if (value.trim() === '' && (unit ?? '').trim() !== '') return say.unitAlone;
  const whole = hasUnit(row) ? joined({ value, unit: unit ?? unitNow }) : value;
  if (whole === cellText(cellAt(known.data, row.base, row.field))) return 'same';
  if (!applies(known.data, row.base, row.field)) return whole.trim() === '' ? 'same' : say.doesNotApplyNeed;
  const read = readCell(row.field, whole, known);
  return read.ok ? { value: read.value } : read.reason;
}

/** Rows whose need is there or can be begun by a value; the places of what is heard only once they are told. */
export const shownNeeds = (data: unknown): readonly NeedRow[] =>
  needRows.filter((row) => row.field.when === undefined || applies(data, row.base, row.field));
