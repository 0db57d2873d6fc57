/** A unit as it is printed: raised figures, nothing for pure numbers. */
export const unitText = (unit: string): string =>
  unit === '1' ? '' : unit.replace(/(?<=m)2\b/g, '²').replace(/(?<=m)3\b/g, '³');
