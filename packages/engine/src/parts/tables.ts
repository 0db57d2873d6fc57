/** Spares are never fewer than this when there are any. Source: handbook of deliverables 2.2 (common practice). */
export const leastSpare = 2;

/** Unit codes of UN/ECE Recommendation 20 (published). */
export const unitCodes = { piece: 'H87', metre: 'MTR', squareMetre: 'MTK' } as const;
export type UnitCode = (typeof unitCodes)[keyof typeof unitCodes];
