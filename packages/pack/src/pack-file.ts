import type { Catalogue, Design, Finding, SiteRules } from '@cloche/engine';

/** One file of the pack, in memory. */
export interface PackFile {
  readonly name: string;
  readonly mediaType: string;
  readonly bytes: Uint8Array;
}

export interface PackInput {
  readonly design: Design;
  readonly findings: readonly Finding[];
  readonly catalogue: Catalogue;
  readonly rules: SiteRules;
  /** Date of issue, ISO 8601 (`2026-03-09`); the pack has no clock of its own. */
  readonly issued: string;
  /** The two weights of the shipped font, as TTF bytes. */
  readonly fonts: { readonly regular: Uint8Array; readonly medium: Uint8Array };
  readonly revision: { readonly name: string; readonly hash: string };
}

export interface PackOptions {
  /** Told after each file: its name, and the share of all files that is done. */
  readonly onProgress?: (done: string, share: number) => void;
  /** Names of the files to make; all when left out. */
  readonly only?: readonly string[];
  /** Looked at between files; once true, no further file is made. */
  readonly signal?: { readonly cancelled: boolean };
}
