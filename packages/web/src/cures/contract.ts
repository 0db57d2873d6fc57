import type { CureProgress, CureSearch } from '@cloche/engine';
import type { TextFile } from '../engine/contract.js';

export type { Cure, CureEdit, CureProgress, CureSearch } from '@cloche/engine';

export interface CureStock {
  readonly briefText: string;
  readonly catalogueFiles: readonly TextFile[];
  readonly ruleTexts: Readonly<Record<string, string>>;
}

/** What the worker does. */
export interface CureFinder {
  find(stock: CureStock, id: string, told: (progress: CureProgress) => void): CureSearch;
}
