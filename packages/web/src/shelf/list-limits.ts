/** What may stand between the cells of a text. */
export const separators = [',', ';', '\t', '|'] as const;
export type Separator = (typeof separators)[number];

/** Largest price list that is read [bytes]. */
export const largestList = 10 * 1024 * 1024;
