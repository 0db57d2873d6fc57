/** State in which a room is measured. Source: ISO 14644-1:2015, 3.3 (from memory). */
export type OccupancyState = 'as-built' | 'at-rest' | 'operational';

/** Why a cell of the class table sets no limit. */
export type EmptyCell = 'too many to count' | 'too few for statistics' | 'too few and lost in the sampling line';

export type Clothing = 'indoor' | 'cleanroom';

export type FilterClass = 'E10' | 'E11' | 'E12' | 'H13' | 'H14' | 'U15' | 'U16' | 'U17';

/** A point of a fan curve: flow [m3/s] against outside static pressure [Pa]. */
export interface FanPoint {
  readonly flow: number;
  readonly pressure: number;
}

/** Where fan and resistance agree. */
export interface OperatingPoint {
  /** [m3/s] */
  readonly flow: number;
  /** Static pressure that the fan gives there [Pa]. */
  readonly pressure: number;
}

/** A zone of well-mixed air: how fast it goes to its steady concentration, and which that is. */
export interface WellMixedZone {
  /** [1/s] */
  readonly decayRate: number;
  /** [1/m3] */
  readonly steady: number;
}
