/** Amounts closer than this count as equal: prices and lengths are decimal numbers added as binary ones. */
const same = 1e-9;

/** Below zero when `a` comes before `b`: the first entry that differs decides. */
export function compareRank(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length; i++) {
    const difference = a[i]! - b[i]!;
    if (Math.abs(difference) > same) return difference;
  }
  return 0;
}
