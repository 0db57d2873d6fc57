import type { Dimension } from '../floor/units.js';

/** What a rule's value must be: a quantity, a pure number, one of some words, or yes/no. */
export type RuleShape =
  | { readonly dimension: Dimension }
  | { readonly number: true }
  | { readonly choice: readonly string[] }
  | { readonly yesNo: true };

export interface KnownRule {
  readonly shape: RuleShape;
  /** What the value may be, in SI; where nothing is said, zero or more. A value at which a formula has no sense is refused when it is read. */
  readonly limits?: RuleLimits;
  /** What it asks, as it stands on sheets. */
  readonly meaning: string;
}

const withLimits = (shape: RuleShape, meaning: string, limits?: RuleLimits): KnownRule =>
  limits === undefined ? { shape, meaning } : { shape, meaning, limits };
const of = (dimension: Dimension, meaning: string, limits?: RuleLimits): KnownRule =>
  withLimits({ dimension }, meaning, limits);
const numeric = (meaning: string, limits?: RuleLimits): KnownRule => withLimits({ number: true }, meaning, limits);

export interface RuleLimits {
  readonly above?: number;
  readonly least?: number;
  readonly most?: number;
}

/** What is divided by, or what nothing can be without. */
const some: RuleLimits = { above: 0 };
/** A share of something that is there. */
const share: RuleLimits = { above: 0, most: 1 };

/** Every rule that the engine asks for. A profile must give each; the value's source stands beside it in the profile. */
export const knownRules = {
  'laser.edition': {
    shape: { choice: ['IEC2014', 'EU2006', 'stricter of both'] },
    meaning: 'edition of the exposure limits',
  },
  'laser.exposure-visible': of('time', 'exposure duration assumed for visible light in the room', some),
  'laser.exposure-infrared': of('time', 'exposure duration assumed for infrared light in the room', some),
  'laser.exposure-ultraviolet': of('time', 'exposure duration assumed for ultraviolet light in the room', some),
  'laser.barrier-time': of('time', 'time that a barrier must withstand until someone reacts', some),
  'laser.diffuse-reflectance': of('ratio', 'reflectance assumed for diffuse reflection', share),
  'laser.foreseeable-tilt': of('angle', 'largest foreseeable tilt of a beam out of its path'),
  'laser.eye-height-seated': of('length', 'eye height of a seated person', some),
  'laser.eye-height-standing': of('length', 'eye height of a standing person', some),
  'air.unidirectional-velocity': of(
    'velocity',
    'mean velocity of the clean air under filters for ISO class 5 and cleaner',
    some,
  ),
  'air.unidirectional-from-class': numeric('classes up to this number are planned with unidirectional flow'),
  'air.limit-share': of('ratio', 'share of the class limit that a design may use', share),
  'air.background': of('concentration', 'background concentration at 0.5 um when nobody measured', some),
  'air.induced-leak': of('ratio', 'share of the supply that is drawn in as leakage at over-pressure', { most: 1 }),
  'air.gap-velocity': of('velocity', 'least outward velocity in the gaps of an enclosure', some),
  'air.discharge-coefficient': numeric('discharge coefficient of gaps', share),
  'air.coverage': of('ratio', 'share of the clean area that must lie under filter faces for unidirectional flow', {
    most: 1,
  }),
  'air.noise-limit': of('sound level', 'level at the work, A-weighted', some),
  'air.temperature-rise': of('temperature difference', 'rise of the supply air across an enclosure', some),
  'air.recovery': of('time', 'longest time from a hundred times the limit to the limit', some),
  'air.gap-share-of-table-travel': numeric('clear distance to the table as a multiple of the table travel'),
  'frame.gap-to-table': of('length', 'least clear distance of everything on the frame to the table'),
  'frame.roof-deflection': numeric('roof beam under fan filter units: span divided by deflection, at least', some),
  'frame.roof-deflection-most': of('length', 'roof beam under fan filter units: largest deflection', some),
  'frame.track-deflection': numeric('beam that carries track or a door: span divided by deflection, at least', some),
  'frame.strength-factor': numeric('factor on proof strength under characteristic loads', { least: 1 }),
  'frame.push-force': of('force', 'horizontal push for tipping', some),
  'frame.push-height': of('length', 'height of the push', some),
  'frame.push-factor': numeric('factor against tipping under the push', { least: 1 }),
  'frame.tilt': of('angle', 'tilt that a frame on casters must stand', { above: 0, most: Math.PI / 4 }),
  'frame.post-spacing': of('length', 'largest distance between posts', { least: 0.3 }),
  'frame.feet-carrying': numeric('feet missing when the load is shared: 1 means that n-1 feet carry all'),
  'frame.unit-filter-loading': of('mass', 'mass that dust adds to a fan filter unit'),
  'curtain.fullness-low': of('ratio', 'least extra width of a curtain over its track', { most: 1 }),
  'curtain.fullness-high': of('ratio', 'largest extra width of a curtain over its track', { above: 0, most: 2 }),
  'curtain.end-distance': of('length', 'largest distance from the end of a track to its first support', some),
  'curtain.joint-distance': of('length', 'largest distance from a joint of track pieces to a support', some),
  'curtain.hem-gap': of('length', 'open height under a curtain'),
  'curtain.hem-gap-most': of('length', 'largest open height under a laser barrier', some),
  'curtain.overlap': of('length', 'overlap of panels at an opening'),
  'curtain.pull': of('force', 'pull of a person on a track between two supports'),
  'curtain.to-table': of('length', 'least distance of a curtain to a table edge'),
  'way.clear-width': of('length', 'clear width of a way that people use', some),
  'way.exit-width': of('length', 'clear width of a way to an exit', some),
  'way.service-width': of('length', 'clear width of a strip for service only', some),
  'way.headroom': of('length', 'clear height over a way', some),
  'way.door-clear-width': of('length', 'clear width of an exit door', some),
  'fire.sprinkler-plane': of('length', 'free height under the deflector of a sprinkler'),
  'fire.sprinkler-obstruction-width': of('length', 'width from which a fixed roof needs sprinklers under it'),
  'electric.board-depth-low': of('length', 'clear depth before a board up to 150 V to ground'),
  'electric.board-depth': of('length', 'clear depth before a board above 150 V to ground'),
  'electric.board-width': of('length', 'clear width before a board'),
  'electric.board-height': of('length', 'clear height before a board'),
  'cutting.kerf': of('length', 'width of the saw cut'),
  'cutting.trim': of('length', 'trimmed from each end of a bar'),
  'cutting.useful-offcut': of('length', 'shortest off-cut that is worth keeping'),
  'parts.fastener-spare': of('ratio', 'spare fasteners', { most: 1 }),
  'parts.runner-spare': of('ratio', 'spare runners', { most: 1 }),
} as const satisfies Readonly<Record<string, KnownRule>>;

export type RuleId = keyof typeof knownRules;
export const ruleIds = Object.keys(knownRules) as readonly RuleId[];
