import { fieldsOf } from '../brief/fields.js';
import { listAt, type Path, pathKey, shownText, valueAt } from '../brief/path.js';
import type { Field } from '../brief/shapes.js';
import { money, words } from '../brief/shapes.js';
import { type Addable, layoutLists, needsLists, type Site, surveyLists } from '../brief/templates.js';
import { scheduleTexts } from '../texts/schedules.js';

export const scheduleIds = [
  'tables',
  'tableEquipment',
  'equipment',
  'lasers',
  'cleanliness',
  'darkness',
  'light',
  'access',
  'ways',
  'temperature',
  'needs',
  'enclosures',
  'runs',
  'covers',
  'signs',
  'stops',
  'interlocks',
  'sensors',
  'prices',
  'changes',
] as const;
export type ScheduleId = (typeof scheduleIds)[number];

/** One list of the brief as rows and columns. */
export interface Schedule {
  readonly id: ScheduleId;
  readonly title: string;
  readonly columns: readonly Field[];
  /** Width of the first column, where its names are long [px]. */
  readonly nameWidth?: number;
  /** Where each row stands in the brief. */
  readonly rows: (data: unknown) => readonly Path[];
  /** Where a row is added; absent where rows come from elsewhere. */
  readonly adding?: { readonly list: Path; readonly entry: (site: Site) => unknown; readonly needs?: Addable['needs'] };
}

const inOrder = (data: unknown, list: Path): readonly Path[] => listAt(data, list).map((_, i) => [...list, i]);

/** A form may show one value in several places, each for some kinds of thing; a schedule has one column for it. */
function columnsOf(fields: readonly Field[]): readonly Field[] {
  const byName = new Map<string, Field>();
  for (const field of fields) {
    const name = columnName(field);
    const { when: _, ...always } = field;
    byName.set(name, byName.has(name) ? always : field);
  }
  return [...byName.values()];
}

/** What tells a column from the others of its schedule. */
export const columnName = ({ path, label }: Field): string => `${pathKey(path)} ${label}`;

function listed(id: ScheduleId, { list, adds, needs }: Addable): Schedule {
  const adding = { list, entry: adds[0]!.entry, ...(needs ? { needs } : {}) };
  return {
    id,
    title: scheduleTexts.titles[id],
    columns: columnsOf(fieldsOf[id]!),
    rows: (data) => inOrder(data, list),
    adding,
  };
}

const equipmentOnTables: Schedule = {
  id: 'tableEquipment',
  title: scheduleTexts.titles.tableEquipment,
  columns: fieldsOf.tableEquipment!,
  rows: (data) => listAt(data, ['tables']).flatMap((_, i) => inOrder(data, ['tables', i, 'equipment'])),
};

const anyItem: Field = { path: ['item'], label: scheduleTexts.item, shape: { anyItem: true } };

const prices: Schedule = {
  id: 'prices',
  title: scheduleTexts.titles.prices,
  columns: [
    anyItem,
    money('price', scheduleTexts.price),
    words('per', scheduleTexts.per),
    { path: ['on'], label: scheduleTexts.on, shape: { date: true } },
    words('from', scheduleTexts.from),
    words('because', scheduleTexts.because),
  ],
  rows: (data) => inOrder(data, ['site', 'prices']),
  adding: { list: ['site', 'prices'], entry: () => ({}) },
};

const changes: Schedule = {
  id: 'changes',
  title: scheduleTexts.titles.changes,
  columns: [
    anyItem,
    words('field', scheduleTexts.figure),
    { path: ['value'], label: scheduleTexts.value, shape: { ruleValue: true } },
    words('because', scheduleTexts.because),
  ],
  rows: (data) => inOrder(data, ['site', 'changes']),
  adding: { list: ['site', 'changes'], entry: () => ({}) },
};

/** Needs that stand once in the brief: one quantity a row, its value apart from its unit. */
const needs: Schedule = {
  id: 'needs',
  title: scheduleTexts.titles.needs,
  nameWidth: 300,
  columns: [
    words('quantity', scheduleTexts.quantity),
    { path: ['value'], label: scheduleTexts.value, shape: { ruleValue: true } },
    words('unit', scheduleTexts.unit),
  ],
  rows: () => [],
};

const addables: Readonly<Partial<Record<ScheduleId, Addable>>> = { ...surveyLists, ...needsLists, ...layoutLists };

export const schedules: Readonly<Record<ScheduleId, Schedule>> = Object.fromEntries(
  scheduleIds.map((id) => {
    const own = { tableEquipment: equipmentOnTables, needs, prices, changes }[id as string];
    return [id, own ?? listed(id, addables[id]!)];
  }),
) as Record<ScheduleId, Schedule>;

/** How a row is called aloud: by its id, the item it is for, or its number. */
export function rowName(data: unknown, path: Path): string {
  const entry = valueAt(data, path);
  const name = ['id', 'item', 'where', 'to'].map((key) => shownText(valueAt(entry, [key]))).find((each) => each !== '');
  return name ?? scheduleTexts.row(Number(path.at(-1)) + 1);
}
