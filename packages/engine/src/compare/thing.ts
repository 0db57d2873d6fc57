import type { Vec3 } from '../floor/geometry/vec.js';
import type { QuantityName } from './quantities.js';

export const thingKinds = [
  'room',
  'door',
  'window',
  'board',
  'column',
  'beam',
  'obstruction',
  'sprinkler',
  'detector',
  'exit sign',
  'air terminal',
  'luminaire',
  'table',
  'equipment',
  'laser',
  'enclosure',
  'curtain run',
  'cover',
  'sign',
  'stop',
  'interlock',
  'sensor',
] as const;
export type ThingKind = (typeof thingKinds)[number];

/** A list of numbers is a place in the room, of two or three coordinates [m]. */
export type FactValue = string | number | boolean | readonly number[] | null;

/** One thing that can be said of a thing: a number in SI with its quantity, a word, a yes or no, a place. */
export interface Fact {
  readonly field: string;
  readonly value: FactValue;
  readonly quantity: QuantityName | null;
}

/** Something of a design in the form in which two states of it are laid beside each other. */
export interface Thing {
  readonly id: string;
  readonly kind: ThingKind;
  readonly name: string;
  /** Points that go along when it is moved or turned as a whole, in an order that is kept; empty for what has no place of its own. */
  readonly points: readonly Vec3[];
  /** Where it stands and how it is turned when its size changed too; absent where only its points can tell. */
  readonly pose?: { readonly at: Vec3; readonly turn: number };
  /** What its points are called when they do not move together; absent where its sizes tell the rest. */
  readonly corners?: 'corner' | 'point';
  /** What it stands on or belongs to, and moves with. */
  readonly carrier: string | null;
  /** Height of the face that carries others [m]. */
  readonly surface: number;
  readonly sizes: readonly Fact[];
  readonly facts: readonly Fact[];
}

export const fact = (field: string, value: FactValue, quantity: QuantityName | null = null): Fact => ({
  field,
  value,
  quantity,
});
