/**
 * Limit deviations for lengths, class m [mm]: upper end of each range of nominal lengths, plus or minus.
 * Source: ISO 2768-1:1989, Table 1 (published, several reproductions agree).
 */
export const mediumDeviations: readonly (readonly [number, number])[] = [
  [6, 0.1],
  [30, 0.2],
  [120, 0.3],
  [400, 0.5],
  [1000, 0.8],
  [2000, 1.2],
  [4000, 2],
];

/** The deviation for a nominal length [mm]; null above 4000 mm and under 0.5 mm, where the standard gives none. */
export const mediumDeviation = (nominal: number): number | null =>
  nominal < 0.5 ? null : (mediumDeviations.find(([upTo]) => nominal <= upTo)?.[1] ?? null);
