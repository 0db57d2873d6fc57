import type { Calculation } from './calculation.js';
import type { Outcome } from './problem.js';
import type { Dimension } from './units.js';

/** One input of a calculation that can be asked for by itself. */
export interface TopicInput {
  /** As typed on the command line: `wavelength`. */
  readonly name: string;
  readonly about: string;
  readonly shape:
    | { readonly dimension: Dimension }
    | { readonly number: true }
    | { readonly choice: readonly string[] };
  /** Text of the value used when none is given; without it the input is required. */
  readonly default?: string;
  /** May be left out altogether. */
  readonly optional?: true;
}

/** Inputs as read: SI numbers, or words for choices. */
export type TopicArguments = Readonly<Record<string, number | string | undefined>>;

/** A calculation that stands without a project: `cloche calc exposure-limit wavelength="1064 nm" duration="10 s"`. */
export interface Topic {
  readonly name: string;
  readonly about: string;
  readonly inputs: readonly TopicInput[];
  readonly run: (inputs: TopicArguments) => Outcome<Calculation>;
}
