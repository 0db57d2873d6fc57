import { type Source, source } from '../floor/source.js';

/** Standard acceleration of free fall [m/s2]. Source: ISO 80000-3 (from memory). */
export const standardGravity = 9.80665;
export const gravitySource: Source = source('ISO 80000-3', 'from memory', 'standard acceleration of free fall');

/** Constants of aluminium alloys for design. Source: EN 1999-1-1:2007, clause 3.2.5 (from memory). */
export const aluminium = {
  elasticity: 70e9,
  shearModulus: 27e9,
  poisson: 0.3,
  expansion: 23e-6,
  density: 2700,
  source: source('EN 1999-1-1:2007', 'from memory', 'clause 3.2.5'),
} as const;

/** Buckling curves of members. Source: EN 1999-1-1:2007, Table 6.6 (from memory). */
export const bucklingClasses = {
  /** T6, T66 and other heat-treated tempers. */
  A: { imperfection: 0.2, limitSlenderness: 0.1 },
  /** T5 and alloys that are not heat-treated. */
  B: { imperfection: 0.32, limitSlenderness: 0 },
} as const;
export type BucklingClass = keyof typeof bucklingClasses;

/** Partial factors. Source: EN 1999-1-1:2007, clause 6.1.3 (from memory). */
export const partialFactors = {
  members: 1.1,
  netSection: 1.25,
  source: source('EN 1999-1-1:2007', 'from memory', 'clause 6.1.3'),
} as const;

/** Slenderness L/i of a member in compression above which a person should look. Source: common practice. */
export const slendernessToCheck = 200;

/** Share of the torque that becomes preload: T = K d F. Source: Shigley, Mechanical Engineering Design (from memory). */
export const nutFactors = {
  asReceived: 0.2,
  lubricated: 0.15,
  scatter: 0.3,
  source: source('Shigley, Mechanical Engineering Design', 'from memory', 'torque equation'),
} as const;

export type HollowFinish = 'hot finished' | 'cold formed';

/** Corner radii as multiples of the wall. Source: EN 10210-2 and EN 10219-2, sectional properties (from memory). */
export const cornerRadii: Readonly<
  Record<HollowFinish, readonly { readonly upTo: number; readonly outer: number; readonly inner: number }[]>
> = {
  'hot finished': [{ upTo: Number.POSITIVE_INFINITY, outer: 1.5, inner: 1 }],
  'cold formed': [
    { upTo: 6e-3, outer: 2, inner: 1 },
    { upTo: 10e-3, outer: 2.5, inner: 1.5 },
    { upTo: Number.POSITIVE_INFINITY, outer: 3, inner: 2 },
  ],
};

export const frameSources = {
  green: source("Green's theorem on the outline", 'derived'),
  beamTables: source("Roark's Formulas for Stress and Strain", 'from memory', 'beam tables (Table 8.1)'),
  bending: source('Bernoulli beam theory', 'derived', 'stress = M / W'),
  rigidBody: source('statics of a rigid body', 'derived'),
  planeFit: source('statics of a rigid frame on equal springs', 'derived'),
  feetMissing: source('total mass over n-1 casters', 'common practice'),
  buckling: source('EN 1999-1-1:2007', 'from memory', 'clause 6.3.1'),
  euler: source('Euler load', 'derived', 'Ncr = pi^2 E I / L^2'),
  vonMises: source('von Mises criterion', 'derived'),
  slip: source('friction of a clamped joint, R = n mu F', 'derived'),
  hollow: source('EN 10210-2 and EN 10219-2', 'from memory', 'annex on sectional properties'),
  bredt: source("Bredt's formulas for closed thin walls", 'derived'),
  openWalls: source("Roark's Formulas for Stress and Strain", 'from memory', 'torsion of open thin walls'),
  rectangleTorsion: source(
    'Timoshenko and Goodier, Theory of Elasticity',
    'from memory',
    'torsion of rectangular bars',
  ),
  triangleTorsion: source('Pilkey, Analysis and Design of Elastic Beams (2002)', 'published', 'Example 5.6'),
  ellipseTorsion: source("Roark's Formulas for Stress and Strain", 'from memory', 'torsion table'),
  thermal: source('linear expansion', 'derived', 'alpha L dT'),
  vibration: source('single-degree-of-freedom base excitation', 'derived'),
  tolerances: source('stack of tolerances', 'derived', 'worst case and root of squares'),
} as const;
