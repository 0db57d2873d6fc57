/** A point on paper in millimetres from the upper left corner of the trimmed sheet; y grows downward, as in SVG. */
export type PaperPoint = readonly [number, number];

export interface Pen {
  /** Line width on paper [mm]. */
  readonly width: number;
  readonly colour: string;
  /** Lengths of strokes and gaps [mm]; continuous when absent. */
  readonly dash?: readonly number[];
}

export type Anchor = 'start' | 'middle' | 'end';

/** One stroke of the drawing. Paths are SVG path data with absolute coordinates in millimetres. */
export type Mark =
  | { readonly mark: 'path'; readonly d: string; readonly pen?: Pen; readonly fill?: string; readonly data?: string }
  | {
      readonly mark: 'text';
      readonly at: PaperPoint;
      readonly text: string;
      /** Height of the capitals [mm] (ISO 3098). */
      readonly height: number;
      readonly anchor: Anchor;
      readonly colour: string;
      readonly medium: boolean;
      /** Turned counter-clockwise about `at` [rad]. */
      readonly turn: number;
    };

/** What belongs together and can be shown or hidden as one. */
export interface Layer {
  readonly id: string;
  readonly title: string;
  readonly marks: readonly Mark[];
}

/** One drawing sheet, still free of any file format: SVG and PDF are written from it. */
export interface Sheet {
  readonly id: string;
  readonly title: string;
  /** What a person who cannot see the drawing should know. */
  readonly description: string;
  readonly paper: 'A3' | 'A2';
  readonly width: number;
  readonly height: number;
  /** Denominator of the scale: 50 for 1:50. */
  readonly scale: number;
  readonly layers: readonly Layer[];
}
