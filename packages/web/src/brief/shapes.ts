import type { Dimension, ItemKind } from '@cloche/engine';
import type { Written } from './document.js';
import type { Path } from './path.js';

/** Lists of the brief that a reference may choose from; `room` is the room itself. */
export type Kind = 'room' | 'tables' | 'equipment' | 'lasers' | 'doors' | 'windows' | 'enclosures' | 'runs' | 'devices';

/** What may stand in a field, and so how it is typed or chosen. */
export type FieldShape =
  | { readonly quantity: Dimension }
  | { readonly choice: readonly Written[] }
  /** Choosing a word replaces the whole object that the word stands in, since its other fields depend on it. */
  | { readonly variants: Readonly<Record<string, Readonly<Record<string, unknown>>>> }
  | { readonly text: true }
  | { readonly whole: true }
  | { readonly number: true }
  | { readonly yesNo: true }
  | { readonly money: true }
  | { readonly id: true }
  /** One thing of the brief, several of them, or a thing or else a point. */
  | { readonly reference: readonly Kind[] }
  | { readonly references: readonly Kind[] }
  | { readonly place: readonly Kind[] }
  | { readonly several: readonly string[] }
  | { readonly item: readonly ItemKind[]; readonly of?: string }
  /** A day: `2026-11-02`. */
  | { readonly date: true }
  /** Any item of the catalogue. */
  | { readonly anyItem: true }
  | { readonly profile: true }
  | { readonly rule: true }
  /** A number, yes or no, or a quantity, as the rule asks. */
  | { readonly ruleValue: true };

/** One value of the brief: where it stands under its thing, what it is called, what it may be. */
export interface Field {
  readonly path: Path;
  readonly label: string;
  readonly shape: FieldShape;
  /** Shown only while the value at a path is this word, or is there at all. */
  readonly when?: readonly [Path, string | boolean];
  /** Leaving it open takes out this object, which cannot be without it. */
  readonly heart?: Path;
  /** Stands on the card beside the thing in the plan. */
  readonly onCard?: true;
  /** Rarely told: folded away under the others. */
  readonly further?: true;
}

/** A small table under a thing: points of a path, legs of a beam, openings. */
export interface Rows {
  readonly path: Path;
  readonly title: string;
  readonly one: string;
  readonly columns: readonly Field[];
  /** A first row, or one after the last that is there. */
  readonly row: (rows: readonly unknown[], data: unknown, base: Path) => unknown;
  /** Seldom changed: folded to its title. */
  readonly folded?: true;
  /** Rows that must stay. */
  readonly least?: number;
}

/** `at.0` as a path: numbers are places in lists. */
export const steps = (path: string): Path => path.split('.').map((s) => (/^\d+$/.test(s) ? Number(s) : s));

const field =
  <A extends readonly unknown[]>(shape: (...args: A) => FieldShape) =>
  (path: string, label: string, ...args: A): Field => ({ path: steps(path), label, shape: shape(...args) });

export const quantity = field((dimension: Dimension = 'length') => ({ quantity: dimension }));
export const choice = field((words: readonly Written[]) => ({ choice: words }));
export const variants = field((objects: Readonly<Record<string, Readonly<Record<string, unknown>>>>) => ({
  variants: objects,
}));
export const words = field(() => ({ text: true }));
export const whole = field(() => ({ whole: true }));
export const plainNumber = field(() => ({ number: true }));
export const yesNo = field(() => ({ yesNo: true }));
export const money = field(() => ({ money: true }));
export const idField = field(() => ({ id: true }))('id', 'id');
export const reference = field((...kinds: readonly Kind[]) => ({ reference: kinds }));
export const references = field((...kinds: readonly Kind[]) => ({ references: kinds }));
export const placeField = field((...kinds: readonly Kind[]) => ({ place: kinds }));
export const several = field((choices: readonly string[]) => ({ several: choices }));
export const item = field((kinds: readonly ItemKind[], of?: string) => ({
  item: kinds,
  ...(of === undefined ? {} : { of }),
}));

export const only = (when: string, word: string | boolean, shown: Field): Field => ({
  ...shown,
  when: [steps(when), word],
});
export const heart = (object: string, shown: Field): Field => ({ ...shown, heart: steps(object) });
export const further = (...fields: readonly Field[]): readonly Field[] =>
  fields.map((shown) => ({ ...shown, further: true }));
export const onCard = (...fields: readonly Field[]): readonly Field[] =>
  fields.map((shown) => ({ ...shown, onCard: true }));

export const place = [quantity('at.0', 'from west'), quantity('at.1', 'from south')];
export const placeOnTable = [quantity('at.0', 'along table'), quantity('at.1', 'across table')];
export const footprint = [quantity('size.0', 'length'), quantity('size.1', 'width')];
