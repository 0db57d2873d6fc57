import { withEdits } from '../brief/document.js';
import { listAt, type Path, shownText, valueAt } from '../brief/path.js';
import { editText, useWorkbench } from '../state/store.js';

/** What a project put in place of a value on the shelf, and where it stands in the brief. */
export interface OwnValue {
  readonly value: string;
  readonly because: string;
  readonly path: Path;
}

const rulesAt: Path = ['site', 'overrides'];
const figuresAt: Path = ['site', 'changes'];

/** The project's own values of rules, by rule. */
export const ownRules = (data: unknown): ReadonlyMap<string, OwnValue> => own(data, rulesAt, (e) => textAt(e, 'rule'));

/** The project's own figures of catalogue items, by item and field. */
export const ownFigures = (data: unknown): ReadonlyMap<string, OwnValue> =>
  own(data, figuresAt, (e) => figureKey(textAt(e, 'item'), textAt(e, 'field')));

export const figureKey = (item: string, field: string): string => `${item} ${field}`;

const textAt = (entry: unknown, key: string): string => shownText(valueAt(entry, [key]));

function own(data: unknown, list: Path, keyOf: (entry: unknown) => string): ReadonlyMap<string, OwnValue> {
  return new Map(
    listAt(data, list).map((entry, i) => [
      keyOf(entry),
      { value: textAt(entry, 'value'), because: textAt(entry, 'because'), path: [...list, i] },
    ]),
  );
}

/** Numbers and yes or no stand in a brief without quotes; quantities and words are texts. */
export function asWritten(value: string): string | number | boolean {
  if (/^-?\d+(\.\d+)?$/.test(value)) return Number(value);
  return value === 'true' || value === 'false' ? value === 'true' : value;
}

function keep(list: Path, before: OwnValue | undefined, entry: Readonly<Record<string, unknown>>): void {
  const { text, data } = useWorkbench.getState();
  const path = before?.path ?? [...list, listAt(data, list).length];
  editText(withEdits(text, [[path, entry]]), null);
}

export const keepRule = (rule: string, value: string, because: string): void =>
  keep(rulesAt, ownRules(useWorkbench.getState().data).get(rule), { rule, value: asWritten(value), because });

export const keepFigure = (item: string, field: string, value: string, because: string): void =>
  keep(figuresAt, ownFigures(useWorkbench.getState().data).get(figureKey(item, field)), {
    item,
    field,
    value: asWritten(value),
    because,
  });

/** Takes the project's own value out: what is on the shelf holds again. */
export const giveBack = ({ path }: OwnValue): void =>
  editText(withEdits(useWorkbench.getState().text, [[path, undefined]]), null);
