import type { Conflict } from './merge-data.js';
import type { NewStep, Step } from './steps.js';

export type Stop = () => void;

/** How the server took steps; a request that was lost on the way throws. */
export type Appended =
  | { readonly outcome: 'kept'; readonly seq: number }
  | { readonly outcome: 'behind'; readonly steps: readonly Step[] }
  | { readonly outcome: 'refused'; readonly why: string }
  | { readonly outcome: 'gone' };

/** What comes from the server by itself. */
export interface Heard {
  readonly steps: (steps: readonly Step[]) => void;
  readonly revision: () => void;
  readonly gone: () => void;
  /** Listening has begun, or begun again: something may have been missed. */
  readonly opened: () => void;
}

/** A project as it was opened: its text, and all steps that led to it. */
export interface Opened {
  readonly text: string;
  readonly seq: number;
  readonly steps: readonly (NewStep & Pick<Step, 'seq'>)[];
}

/** A project as this browser last had it from the server: it opens from here while the server is away. */
export interface Copy {
  readonly read: () => Promise<Opened | null>;
  /** Null: the project was taken out. */
  readonly write: (opened: Opened | null) => void;
  /** Writes what waits. */
  readonly close: () => void;
}

/** The way to one project on the server. */
export interface Wire {
  /** A server that does not answer throws a type error, as a browser does. */
  readonly open: () => Promise<Opened>;
  /** Null when the project was taken out. */
  readonly since: (after: number) => Promise<readonly Step[] | null>;
  readonly append: (base: number, steps: readonly NewStep[]) => Promise<Appended>;
  readonly listen: (heard: Heard) => Stop;
}

/** What one window has not yet brought to the server, with the text that it stands on. */
export interface Kept {
  readonly base: number;
  readonly text: string;
  readonly steps: readonly NewStep[];
  readonly conflicts: readonly Conflict[];
}

/** A place in this browser that outlives the window. */
export interface Keep {
  /** False where it could not be kept. Null: there is nothing any more. */
  readonly write: (kept: Kept | null) => boolean;
  /** What windows that are gone have left of this project. */
  readonly left: () => readonly Kept[];
  readonly clearLeft: () => void;
}

export interface Clock {
  /** Milliseconds, from any start. */
  readonly now: () => number;
  readonly after: (ms: number, run: () => void) => Stop;
}
