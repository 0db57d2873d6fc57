import type { Problem } from '@cloche/engine';
import type { PackFile } from '@cloche/pack';
import type { Stock } from './stock.js';

/** What every pack is drawn with; handed to a worker when it starts. */
export interface PackFonts {
  readonly regular: Uint8Array;
  readonly medium: Uint8Array;
}

export interface PackJob {
  readonly brief: string;
  /** Catalogue and rules in force when the pack was asked for. */
  readonly stock: Stock;
  /** Date of issue, ISO 8601. */
  readonly issued: string;
  /** Name of the one file that is wanted; all when left out. */
  readonly file?: string;
}

/** What a worker tells: a file is done, the brief is refused, all files, or a fault of the program. */
export type PackNews =
  | { readonly news: 'progress'; readonly done: string; readonly share: number }
  | { readonly news: 'refused'; readonly problems: readonly Problem[] }
  | { readonly news: 'made'; readonly project: string; readonly files: readonly PackFile[] }
  | { readonly news: 'fault'; readonly message: string };

export type PackProgress = Extract<PackNews, { readonly news: 'progress' }>;
export type PackEnd = Exclude<PackNews, PackProgress>;
