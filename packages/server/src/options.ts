import type { Store } from '@cloche/store';

/** A data file as it was read: the server hands it on and never looks at the disk itself. */
export interface TextFile {
  readonly name: string;
  readonly text: string;
}

export interface ExampleBrief extends TextFile {
  readonly title: string;
}

/** A brief that is to become a project, or to be found again as the one that it became. */
export interface OpenedBrief extends TextFile {
  /** Where it lies; a brief without a place is a new project each time. */
  readonly path?: string;
}

export interface ServerOptions {
  /** 0 asks the system for a free one. */
  readonly port: number;
  /** Name or address to listen on; by default this machine alone. Any other needs a token. */
  readonly host?: string;
  /** What a browser must bring once, in the link: needed where other machines reach the server. */
  readonly token?: string;
  /** Folder of the built workbench. */
  readonly webRoot: string;
  readonly examples: readonly ExampleBrief[];
  /** As shipped; the shelf of the store may replace them. */
  readonly catalogueFiles: readonly TextFile[];
  /** Texts of the site rules by the name of their profile, as shipped. */
  readonly rulesFiles: Readonly<Record<string, string>>;
  readonly fonts: { readonly regular: Uint8Array; readonly medium: Uint8Array };
  /** Where projects are kept; without one they live in memory and end with the server. Closed by who opened it. */
  readonly store?: Store;
  /** The brief named on the command line. */
  readonly openBrief?: OpenedBrief;
  /** Script of the thread that makes packs; by default the one that is built beside the server. */
  readonly packWorker?: URL;
  /** Script of the thread that reads and writes archives of projects; by default the one that is built beside the server. */
  readonly archiveWorker?: URL;
  /** The day that stands on the sheets, ISO 8601; by default the server's own. */
  readonly today?: () => string;
  /** The time of what is kept, ISO 8601; by default the server's own. */
  readonly now?: () => string;
}

export interface RunningServer {
  readonly url: string;
  readonly close: () => Promise<void>;
}
