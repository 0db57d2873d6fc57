import type { Calculation, Dimension, Outcome, Topic, TopicArguments, TopicInput } from '../../floor/index.js';
import { filterTable, roomAir } from '../tables.js';

const put = (name: string, about: string, shape: TopicInput['shape'], fallback?: string): TopicInput =>
  fallback === undefined ? { name, about, shape } : { name, about, shape, default: fallback };

export const quantity = (name: string, dimension: Dimension, about: string, fallback?: string): TopicInput =>
  put(name, about, { dimension }, fallback);
export const pure = (name: string, about: string, fallback?: string): TopicInput =>
  put(name, about, { number: true }, fallback);
export const choice = (name: string, words: readonly string[], about: string, fallback?: string): TopicInput =>
  put(name, about, { choice: words }, fallback);
export const optional = (input: TopicInput): TopicInput => ({ ...input, optional: true });

export const airDensity = pure('density', 'density of the air in kg/m3', String(roomAir.density));
export const filterClasses = Object.keys(filterTable);

/** Reads inputs that are known to be there: the caller of a topic fills defaults and refuses missing ones. */
export interface Given {
  readonly number: (name: string) => number;
  readonly optional: (name: string) => number | undefined;
  readonly word: (name: string) => string;
}

const reader = (inputs: TopicArguments): Given => ({
  number: (name) => Number(inputs[name] ?? Number.NaN),
  optional: (name) => (inputs[name] === undefined ? undefined : Number(inputs[name])),
  word: (name) => String(inputs[name]),
});

export const topic = (
  name: string,
  about: string,
  inputs: readonly TopicInput[],
  run: (given: Given) => Outcome<Calculation>,
): Topic => ({ name, about, inputs, run: (given) => run(reader(given)) });

/** The next computation on a good value; problems are passed on. */
export const andThen = <T, U>(outcome: Outcome<T>, next: (value: T) => Outcome<U>): Outcome<U> =>
  outcome.ok ? next(outcome.value) : outcome;
