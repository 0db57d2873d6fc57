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

/** The way to one project on the server. */
export interface Wire {
  /** The text, and all steps that led to it. */
  readonly open: () => Promise<{ readonly text: string; readonly seq: number; readonly steps: readonly Step[] }>;
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
