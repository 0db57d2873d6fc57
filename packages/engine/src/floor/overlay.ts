import type { DisciplineId, Verdict } from './finding.js';
import type { Ring } from './geometry/polygon.js';
import type { Vec2 } from './geometry/vec.js';

/**
 * How a mark is drawn; the legend says what it stands for. `reach` is where something harmful can come to, `keep` what must stay
 * free, `pass` where one can go or what is served, `part` a thing that the overlay is about.
 */
export type OverlayStyle = 'reach' | 'keep' | 'pass' | 'part';

/** One mark laid over the plan, room coordinates [m]. Shells draw marks without knowing what they are about. */
export type OverlayMark =
  /** An area; `grow` widens it all round, with round corners [m]. */
  | {
      readonly mark: 'area';
      readonly style: OverlayStyle;
      readonly outline: Ring;
      readonly holes?: readonly Ring[];
      readonly grow?: number;
    }
  | {
      readonly mark: 'line';
      readonly style: OverlayStyle;
      readonly points: readonly Vec2[];
      readonly verdict?: Verdict;
    }
  | { readonly mark: 'circle'; readonly style: OverlayStyle; readonly centre: Vec2; readonly radius: number }
  /** A short writing with its place, and the verdict of the finding that it comes from. */
  | {
      readonly mark: 'value';
      readonly at: Vec2;
      readonly text: string;
      readonly verdict?: Verdict;
      /** The finding behind it, to be opened. */
      readonly finding?: string;
    };

/** What a discipline can lay over the plan. */
export interface OverlayInfo {
  /** `laser/reach`: stable. */
  readonly id: string;
  readonly discipline: DisciplineId;
  readonly title: string;
  /** Letter that lays it over the plan, by what people think of it; without one it is found by its title. */
  readonly key?: string;
  /** One line for each style that it draws. */
  readonly legend: readonly { readonly style: OverlayStyle; readonly means: string }[];
  /** What it leaves out, so that nobody reads more into it. */
  readonly limits: string;
}
