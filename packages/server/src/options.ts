/** A data file as it was read: the server hands it on and never looks at the disk itself. */
export interface TextFile {
  readonly name: string;
  readonly text: string;
}

export interface ExampleBrief extends TextFile {
  readonly title: string;
}

export interface ServerOptions {
  /** 0 asks the system for a free one. */
  readonly port: number;
  /** Loopback only: another address is refused. */
  readonly host?: '127.0.0.1' | '::1';
  /** Folder of the built workbench. */
  readonly webRoot: string;
  readonly examples: readonly ExampleBrief[];
  readonly catalogueFiles: readonly TextFile[];
  /** Texts of the site rules by the name of their profile. */
  readonly rulesFiles: Readonly<Record<string, string>>;
  readonly fonts: { readonly regular: Uint8Array; readonly medium: Uint8Array };
  /** The brief named on the command line; without it the workbench opens the first example. */
  readonly openBrief?: TextFile;
  /** Script of the thread that makes packs; by default the one that is built beside the server. */
  readonly packWorker?: URL;
  /** The day that stands on the sheets, ISO 8601; by default the server's own. */
  readonly today?: () => string;
}

export interface RunningServer {
  readonly url: string;
  readonly close: () => Promise<void>;
}
