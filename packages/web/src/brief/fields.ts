import { layoutFields, layoutRows } from './fields/layout.js';
import { needsFields, needsRows } from './fields/needs.js';
import { surveyFields, surveyRows } from './fields/survey.js';
import type { Path } from './path.js';
import type { Field, Rows } from './shapes.js';

/** What can be typed for each thing, by the list of the brief that it stands in. */
export const fieldsOf: Readonly<Record<string, readonly Field[]>> = {
  ...surveyFields,
  ...needsFields,
  ...layoutFields,
};
const rowsOf: Readonly<Record<string, readonly Rows[]>> = { ...surveyRows, ...needsRows, ...layoutRows };

/** The list that a thing stands in is the last name on the way to it; equipment on a table is measured on the table. */
function listOf(path: Path): string {
  const list = String([...path].reverse().find((s) => typeof s === 'string'));
  return list === 'equipment' && path[0] === 'tables' ? 'tableEquipment' : list;
}

export const fieldsAt = (path: Path): readonly Field[] => fieldsOf[listOf(path)] ?? [];
export const rowsAt = (path: Path): readonly Rows[] => rowsOf[listOf(path)] ?? [];
