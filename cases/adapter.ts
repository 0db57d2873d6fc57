/** One check case as its file gives it. */
export interface CheckCase {
  readonly id: string;
  readonly topic: string;
  readonly given: Readonly<Record<string, unknown>>;
  readonly expect: Readonly<Record<string, unknown>>;
  readonly tolerance_rel?: number;
  readonly tolerance_abs?: number;
  readonly exact?: boolean;
}

/** Thrown by an adapter when a topic's fields or values are outside what the engine computes. */
export class Unsupported extends Error {}

/**
 * The given fields of a case. It remembers which were read: a field that an adapter does not know makes the case
 * unsupported, because an answer that ignores an input would be luck.
 */
export class Given {
  readonly #fields: Readonly<Record<string, unknown>>;
  readonly #read = new Set<string>(['note', 'rule', 'meaning', 'description', 'title']);

  constructor(fields: Readonly<Record<string, unknown>>) {
    this.#fields = fields;
  }

  has(name: string): boolean {
    return this.#fields[name] !== undefined;
  }

  /** Says that a field changes nothing in this topic. */
  ignore(...names: readonly string[]): void {
    for (const name of names) this.#read.add(name);
  }

  any(name: string): unknown {
    this.#read.add(name);
    return this.#fields[name];
  }

  number(name: string): number {
    const value = this.any(name);
    if (typeof value !== 'number') throw new Unsupported(`field ${name} is missing`);
    return value;
  }

  optionalNumber(name: string): number | undefined {
    return this.has(name) ? this.number(name) : undefined;
  }

  text(name: string): string {
    const value = this.any(name);
    if (typeof value !== 'string') throw new Unsupported(`field ${name} is missing`);
    return value;
  }

  optionalText(name: string): string | undefined {
    return this.has(name) ? this.text(name) : undefined;
  }

  numbers(name: string): readonly number[] {
    const value = this.any(name);
    if (!Array.isArray(value) || value.some((v) => typeof v !== 'number'))
      throw new Unsupported(`field ${name} is no list of numbers`);
    return value as number[];
  }

  /** Fields of the case that no adapter read. */
  unread(): string[] {
    return Object.keys(this.#fields).filter((name) => !this.#read.has(name));
  }
}

/** Turns a case's given fields into engine calls and names the results as the case files do; no engineering here. */
export type Adapter = (given: Given, wanted: ReadonlySet<string>) => Readonly<Record<string, unknown>>;

export type Adapters = Readonly<Record<string, Adapter>>;
