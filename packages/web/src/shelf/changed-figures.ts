import { listAt, shownText, valueAt } from '../brief/path.js';

/** A figure that the project changed, as the brief writes it. */
export interface ChangedFigure {
  readonly item: string;
  readonly field: string;
  readonly value: string;
  readonly because: string;
}

/** What a project changed of some items, in the order of the brief. */
export const figuresOfItems = (data: unknown, items: ReadonlySet<string>): readonly ChangedFigure[] =>
  listAt(data, ['site', 'changes'])
    .filter((entry) => items.has(textAt(entry, 'item')))
    .map((entry) => ({
      item: textAt(entry, 'item'),
      field: textAt(entry, 'field'),
      value: textAt(entry, 'value'),
      because: textAt(entry, 'because'),
    }));

const textAt = (entry: unknown, key: string): string => shownText(valueAt(entry, [key]));
