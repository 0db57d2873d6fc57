import type { Assumption } from '../design/types.js';
import type { Brief } from './schema.js';

/** The same record with every optional list present. */
export type WithLists<T> = {
  [K in keyof T as NonNullable<T[K]> extends readonly unknown[] ? K : never]-?: NonNullable<T[K]>;
} & { [K in keyof T as NonNullable<T[K]> extends readonly unknown[] ? never : K]: T[K] };

/** A brief whose lists are all there and whose defaults are filled in, each with its reason. */
export interface CompleteBrief {
  readonly project: Brief['project'];
  readonly site: WithLists<NonNullable<Brief['site']>>;
  readonly room: WithLists<Brief['room']>;
  readonly tables: NonNullable<Brief['tables']>;
  readonly equipment: NonNullable<Brief['equipment']>;
  readonly lasers: NonNullable<Brief['lasers']>;
  readonly needs: WithLists<NonNullable<Brief['needs']>>;
  readonly layout: WithLists<NonNullable<Brief['layout']>>;
  readonly assumptions: readonly Assumption[];
}
