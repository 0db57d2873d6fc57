/** A piece to be cut from a bar: its mark on list, drawing and sticker, its finished length [m], how many. */
export interface BarPiece {
  readonly mark: string;
  readonly length: number;
  readonly count: number;
}

/** Bars that may be used: full length [m], price of one (any one currency), how many there are; unlimited when left out. */
export interface BarStock {
  readonly length: number;
  readonly price?: number;
  readonly available?: number;
}

/** What a plan makes small: the money, the number of bars, or the length bought. */
export type BarAim = 'price' | 'bars' | 'length';

export interface BarRequest {
  readonly pieces: readonly BarPiece[];
  readonly stock: readonly BarStock[];
  /** Width of the saw cut [m]. */
  readonly kerf: number;
  /** Cut off each end of every bar first [m]. */
  readonly trim: number;
  /** `price` when every stock has one, else `length`. */
  readonly aim?: BarAim;
}

export interface PlannedBar {
  /** Index in the stock list. */
  readonly stock: number;
  readonly length: number;
  /** Marks in the order of the cuts, longest piece first. */
  readonly pieces: readonly string[];
  /** What is left of the usable length after the last cut [m]. */
  readonly offcut: number;
}

export interface BarPlan {
  readonly bars: readonly PlannedBar[];
  readonly aim: BarAim;
  /** Total of what the aim makes small: money, bars or metres. */
  readonly cost: number;
  /** No plan can be below this, in the same measure. */
  readonly bound: number;
  /** True when cost equals bound: proven, not believed. */
  readonly optimal: boolean;
  /** Net length of all pieces over the length bought [-]. */
  readonly yield: number;
}

/** A rectangular piece of sheet: width along the first side of the sheet, height along the second [m]. */
export interface SheetPiece {
  readonly mark: string;
  readonly width: number;
  readonly height: number;
  readonly count: number;
}

/** `any`: any number of straight through cuts; `strips`: strips over the full first side, cross cuts, then trims. */
export type SheetCutting = 'any' | 'strips';

export interface SheetRequest {
  readonly pieces: readonly SheetPiece[];
  /** First and second side of the sheet [m]. */
  readonly sheet: readonly [number, number];
  readonly kerf: number;
  /** Cut off each edge of every sheet first [m]. */
  readonly trim: number;
  /** False where grain or print gives the piece a direction. */
  readonly rotation: boolean;
  readonly cutting?: SheetCutting;
}

/** Where a piece lies on its sheet: lower left corner from the corner of the trimmed sheet, sizes as laid [m]. */
export interface PlacedPiece {
  readonly mark: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly turned: boolean;
}

export interface SheetPlan {
  readonly sheets: readonly (readonly PlacedPiece[])[];
  readonly bound: number;
  readonly optimal: boolean;
  /** Net area of all pieces over the area of the sheets bought [-]. */
  readonly yield: number;
}
