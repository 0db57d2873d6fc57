import type { Field } from '../brief/shapes.js';
import { isFigure } from './cells.js';
import { columnName, type Schedule } from './schedule.js';

export const columnKey = (schedule: Schedule, field: Field): string => `${schedule.id} ${columnName(field)}`;

/** A column wide enough for its head and for what usually stands in it. */
function usual({ label, shape }: Field): number {
  const forHead = label.length * 7 + 34;
  const forCells =
    'item' in shape || 'anyItem' in shape || 'references' in shape || 'text' in shape ? 168 : 'id' in shape ? 128 : 92;
  return Math.max(forHead, forCells);
}

export const widthOf = (given: Readonly<Record<string, number>>, schedule: Schedule, field: Field): number =>
  given[columnKey(schedule, field)] ??
  (field === schedule.columns[0] ? schedule.nameWidth : undefined) ??
  (isFigure(field) ? Math.max(96, usual(field)) : usual(field));
