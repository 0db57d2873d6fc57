import { commonPractice, type Source, source } from '../floor/source.js';

/**
 * Factor on the tributary load of a support by which a continuous track may load it more than its share; the exact factor of
 * equal spans is at most 1.25 (two spans) under full uniform load.
 * Source: three-moment equation (Clapeyron), two equal spans; used on site as a bound (common practice).
 */
export const tributaryFactor = { value: 1.25, source: commonPractice } as const;

/** Standard acceleration of free fall [m/s2]. Source: 3rd General Conference on Weights and Measures, 1901 (from memory). */
export const gravity = {
  value: 9.80665,
  source: source('General Conference on Weights and Measures, 3rd meeting (1901)', 'from memory') satisfies Source,
} as const;

/**
 * Modulus of elasticity of aluminium alloys [Pa].
 * Source: EN 1999-1-1, 3.2.5: 70 000 N/mm2 (from memory).
 */
export const aluminiumModulus = { value: 70e9, source: source('EN 1999-1-1', 'from memory', '3.2.5') } as const;

export const threeMomentSource: Source = source('three-moment equation (Clapeyron)', 'published');
export const runnerRuleSource: Source = source(
  'rule of the trade: runners at both edges and at most one pitch apart',
  'common practice',
);

/** Stand with every result on supports and what hangs over people. */
export const supportCautions: readonly string[] = [
  'Anchors and ceilings: a licensed structural engineer or the engineer of the owner decides; the factors of the anchor maker apply.',
];

/** Stand with every result on the closing of a curtain against light. */
export const lightCautions: readonly string[] = [
  'A seam or overlap holds back light only; the rating of the curtain at the irradiance of the beam and the approval of the laser safety officer decide.',
];

/** Stand with every result on ways that a curtain may close or narrow. */
export const wayCautions: readonly string[] = [
  'Ways out and fire behaviour are decided by the local code and the fire authority.',
];
