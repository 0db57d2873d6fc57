import { parseQuantity } from '@cloche/engine';
import type { Path } from '../brief/path.js';
import type { Field } from '../brief/shapes.js';
import { cellAt, cellText } from './cells.js';
import type { Sorting } from './state.js';

const collator = new Intl.Collator('en', { numeric: true });

/** A quantity by its size, a number by its value, all else by its letters. */
function keyOf({ shape }: Field, value: unknown): number | string {
  const text = cellText(value);
  if ('quantity' in shape) {
    const read = parseQuantity(text, shape.quantity);
    return read.ok ? read.value : text;
  }
  if ('money' in shape) return Number.parseFloat(text);
  return typeof value === 'number' ? value : text;
}

const compare = (a: number | string, b: number | string): number =>
  typeof a === 'number' && typeof b === 'number' ? a - b : collator.compare(String(a), String(b));

/** Rows in the order to look at them; empty cells stand last either way. */
export function inOrder(
  rows: readonly Path[],
  columns: readonly Field[],
  data: unknown,
  sorting: Sorting | null,
): readonly Path[] {
  const field = sorting ? columns[sorting.column] : undefined;
  if (!sorting || !field) return rows;
  const keyed = rows.map((row) => ({ row, value: cellAt(data, row, field) }));
  const empty = keyed.filter(({ value }) => cellText(value) === '');
  const full = keyed
    .filter(({ value }) => cellText(value) !== '')
    .map(({ row, value }) => ({ row, key: keyOf(field, value) }))
    .sort((a, b) => (sorting.down ? compare(b.key, a.key) : compare(a.key, b.key)));
  return [...full, ...empty].map(({ row }) => row);
}
