/** An open interval of the track in which no support may be fixed; its ends are allowed [m]. */
export interface ForbiddenStretch {
  readonly from: number;
  readonly to: number;
}

/** A closed interval of the track that must hold at least one support [m]. */
export interface SupportWindow {
  readonly from: number;
  readonly to: number;
}

/** Where supports must and may stand along a track of length `length` [m]. */
export interface SupportDemand {
  readonly length: number;
  /** Largest distance between two neighbouring supports. */
  readonly spacing: number;
  readonly windows: readonly SupportWindow[];
  readonly forbidden: readonly ForbiddenStretch[];
}

export interface SupportCandidate {
  readonly at: number;
  readonly price: number;
}

/** A stock piece or panel that can be bought: its size along the track [m] and its price in any one currency. */
export interface PricedLength {
  readonly length: number;
  readonly price: number;
}

/** A load of constant size on a stretch of the track [N/m]. */
export interface StretchLoad {
  readonly from: number;
  readonly to: number;
  readonly load: number;
}

/** A single load at one place of the track [N]. */
export interface PointLoad {
  readonly at: number;
  readonly load: number;
}

/**
 * Two places closer than this are one place. Lengths are written in whole or tenth millimetres; sums of them differ from
 * each other by rounding errors far below a thousandth of that.
 */
export const samePlace = 1e-7;
