/** How well a value is backed. `read`: the text was read; `published`: read in a reproduction; the others as they say. */
export type SourceMark =
  | 'read'
  | 'published'
  | 'from memory'
  | 'common practice'
  | 'derived'
  | 'computed'
  | 'entered'
  | 'invented';

/** Where a figure, formula or rule comes from. */
export interface Source {
  readonly work: string;
  readonly clause?: string;
  readonly mark: SourceMark;
}

export const source = (work: string, mark: SourceMark, clause?: string): Source =>
  clause === undefined ? { work, mark } : { work, clause, mark };

export const commonPractice: Source = { work: 'rule of the trade', mark: 'common practice' };
export const geometrySource: Source = { work: 'geometry', mark: 'derived' };
export const enteredByUser: Source = { work: 'brief', mark: 'entered' };

/** One line, as it stands on sheets: `ISO 14644-1:2015, Table 1 (published)`. */
export const sourceText = (s: Source): string => `${s.work}${s.clause ? `, ${s.clause}` : ''} (${s.mark})`;
