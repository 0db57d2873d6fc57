import type { Ring, Vec2 } from '../engine/contract.js';
import type { Edit } from './edit.js';
import type { Scene } from './scene.js';

export type ToolGroup = 'survey' | 'needs' | 'layout';

/** A number that may be typed instead of pointed: its live value until then. */
export interface ToolField {
  readonly id: string;
  readonly label: string;
  readonly kind: 'length' | 'angle';
  readonly value: number;
}

/** Numbers that were typed for the next point [m or rad]. */
export type Typed = Readonly<Record<string, number>>;

/** What follows the pointer, plan metres. */
export interface Shown {
  readonly rings?: readonly Ring[];
  readonly lines?: readonly (readonly Vec2[])[];
  /** Points that are set. */
  readonly dots?: readonly Vec2[];
  /** Distances with their text. */
  readonly dimensions?: readonly {
    readonly from: Vec2;
    readonly to: Vec2;
    readonly text: string;
    readonly field?: string;
  }[];
  /** What the next click would belong to. */
  readonly target?: readonly Vec2[];
  /** A line ends in an arrow. */
  readonly arrow?: true;
}

export type Next<S> =
  /** More points follow. */
  | { readonly kind: 'on'; readonly state: S }
  /** Done: the brief changes, the tool starts again. */
  | { readonly kind: 'done'; readonly edit: Edit; readonly says: string; readonly told?: readonly string[] }
  /** Cannot be; nothing is lost. */
  | { readonly kind: 'no'; readonly why: string };

/** A point as it was pointed at, with what was typed for it. */
export interface Aim {
  readonly at: Vec2;
  readonly typed: Typed;
  /** Closer than this counts as the same point [m]. */
  readonly near: number;
}

/**
 * One way to draw: a small machine from points and numbers to an edit of the brief. It knows no page; what is clicked, moved by keys
 * or typed reaches it the same way.
 */
export interface Tool<S = unknown> {
  readonly id: string;
  /** What is put in, as a word of the strip: `a table`. */
  readonly title: string;
  readonly group: ToolGroup;
  readonly keys?: string;
  /** Why it cannot be used yet. */
  readonly missing?: (scene: Scene) => string | null;
  readonly start: S;
  /** What to do next, in one line. */
  readonly hint: (state: S, scene: Scene) => string;
  /** The point before, for angles. */
  readonly from?: (state: S) => Vec2 | undefined;
  /** Points that are set, to be in line with. */
  readonly set?: (state: S) => readonly Vec2[];
  /** Laid down when it is done: the new thing is then in hand. */
  readonly once?: true;
  /** Legs run straight east or north unless Shift is held. */
  readonly square?: true;
  /** The outline about the pointer, when it is a thing that comes to rest by its edges. */
  readonly outline?: (state: S, scene: Scene) => Ring;
  /** Turned by a quarter. */
  readonly turned?: (state: S) => S;
  /** It goes along the walls. */
  readonly slides?: true;
  /** What is pointed at is a thing and no point: nothing is snapped to. */
  readonly pointsAtThings?: true;
  /** How many typed numbers settle a point; all that may be typed when left out. */
  readonly enough?: number;
  readonly fields: (state: S, aim: Aim, scene: Scene) => readonly ToolField[];
  /** Where the point would be: along a wall, at a typed distance. */
  readonly place: (state: S, aim: Aim, scene: Scene) => Vec2;
  readonly show: (state: S, aim: Aim, scene: Scene) => Shown;
  readonly put: (state: S, aim: Aim, scene: Scene) => Next<S>;
  /** Without the last point; null when there is none. */
  readonly back?: (state: S) => S | null;
}
