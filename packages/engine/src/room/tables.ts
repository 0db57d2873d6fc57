import { type Source, source } from '../floor/source.js';

export const roomSources = {
  geometry: source('plan geometry', 'derived') satisfies Source,
  doorSwing: source('area of a circular sector', 'derived') satisfies Source,
  similarTriangles: source('similar triangles', 'derived') satisfies Source,
  workingSpace: source('29 CFR 1910.303(g)(1)(i)', 'read', 'Table S-1') satisfies Source,
  workingSpaceMetric: source('29 CFR 1910.303(g)(1)(i)', 'from memory', 'Table S-1, metric column') satisfies Source,
  sprinklerPlane: source('NFPA 13 (2016), 8.5.6.1', 'published') satisfies Source,
  sprinklerSuspended: source('NFPA 13 (2016)', 'from memory', 'Table 8.6.5.2.2, light hazard') satisfies Source,
  sprinklerReach: source('NFPA 13: 15 ft largest spacing, light hazard', 'from memory') satisfies Source,
  offset: source('Minkowski sum with a disc; Steiner formula', 'derived') satisfies Source,
  widestPath: source('widest path of a disc by obstacle pairs', 'derived') satisfies Source,
} as const;

/** A: live one side, nothing grounded opposite. B: grounded parts opposite (concrete, brick, tile count). C: live both sides. */
export type WorkingSpaceCondition = 'A' | 'B' | 'C';

export interface WorkingSpaceRow {
  readonly volts: readonly [number, number];
  readonly feet: Readonly<Record<WorkingSpaceCondition, number>>;
  /** As the metric column rounds them [m]. */
  readonly metres: Readonly<Record<WorkingSpaceCondition, number>>;
}

/** Clear depth before live parts, 600 V to ground or less. Source: 29 CFR 1910.303(g)(1)(i), Table S-1 (feet read; metres from memory). */
export const workingSpaceTable: readonly WorkingSpaceRow[] = [
  { volts: [0, 150], feet: { A: 3, B: 3, C: 3 }, metres: { A: 0.9, B: 0.9, C: 0.9 } },
  { volts: [150, 600], feet: { A: 3, B: 3.5, C: 4 }, metres: { A: 0.9, B: 1.07, C: 1.22 } },
];

/**
 * Partitions and curtains closer under a head than the free plane: least distance below the deflector for a horizontal
 * distance up to ...; [m]. Light hazard only.
 * Source: NFPA 13 (2016), Table 8.6.5.2.2 (from memory), inches in the handbook of layout.
 */
export const suspendedObstructionTable: readonly { readonly upTo: number; readonly below: number }[] = [
  { upTo: 6, below: 3 },
  { upTo: 9, below: 4 },
  { upTo: 12, below: 6 },
  { upTo: 15, below: 8 },
  { upTo: 18, below: 9.5 },
  { upTo: 24, below: 12.5 },
  { upTo: 30, below: 15.5 },
].map((row) => ({ upTo: row.upTo * 0.0254, below: row.below * 0.0254 }));

/** Half the largest spacing of heads: how far a head is taken to reach [m]. Source: NFPA 13, 15 ft (from memory). */
export const sprinklerReach = (15 * 0.3048) / 2;

export const roomCautions = {
  plan: 'A planning aid. Escape routes and widths are decided by the local code and the building or fire official.',
  fire: 'Only the fire protection engineer or the fire authority can accept sprinkler and detector cover.',
  electric: 'Defer to the local electrical code and a licensed electrician.',
  sight: 'Direct line of sight in plan only: no scatter, no reflection, no heights. Not a laser hazard verdict.',
} as const;
