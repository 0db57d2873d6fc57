import type { PartGroup } from '../design/types.js';

/** Spares are never fewer than this when there are any. Source: handbook of deliverables 2.2 (common practice). */
export const leastSpare = 2;

/** Unit codes of UN/ECE Recommendation 20 (published). */
export const unitCodes = { piece: 'H87', metre: 'MTR', squareMetre: 'MTK' } as const;
export type UnitCode = (typeof unitCodes)[keyof typeof unitCodes];

/** Groups in the order of the parts list: as a frame is built, then what hangs, then devices. */
export const partGroups: readonly PartGroup[] = [
  'profiles',
  'joints',
  'feet',
  'fasteners',
  'strips',
  'panels',
  'fan filter units',
  'lights',
  'track',
  'track supports',
  'runners',
  'curtains',
  'covers',
  'signs',
  'sensors',
  'interlocks',
];
