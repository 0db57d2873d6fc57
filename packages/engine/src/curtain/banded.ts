/**
 * Solves a square system whose entries lie within `reach` of the diagonal, with row exchanges inside that reach.
 * Rows are changed in place. Returns null when the system is singular to working accuracy.
 *
 * Source: Gaussian elimination with partial pivoting (textbook numerics).
 */
export function solveBanded(rows: number[][], right: number[], reach: number): number[] | null {
  const n = rows.length;
  const scale = Math.max(1, ...rows.map((row) => Math.max(...row.map(Math.abs))));
  for (let i = 0; i < n; i++) {
    let pivot = i;
    for (let r = i + 1; r <= Math.min(n - 1, i + reach); r++)
      if (Math.abs(rows[r]![i]!) > Math.abs(rows[pivot]![i]!)) pivot = r;
    if (Math.abs(rows[pivot]![i]!) < 1e-12 * scale) return null;
    [rows[i], rows[pivot]] = [rows[pivot]!, rows[i]!];
    [right[i], right[pivot]] = [right[pivot]!, right[i]!];
    for (let r = i + 1; r <= Math.min(n - 1, i + reach); r++) {
      const factor = rows[r]![i]! / rows[i]![i]!;
      if (factor === 0) continue;
      for (let c = i; c <= Math.min(n - 1, i + 2 * reach); c++) rows[r]![c]! -= factor * rows[i]![c]!;
      right[r]! -= factor * right[i]!;
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) {
    let sum = right[i]!;
    for (let c = i + 1; c <= Math.min(n - 1, i + 2 * reach); c++) sum -= rows[i]![c]! * x[c]!;
    x[i] = sum / rows[i]![i]!;
  }
  return x;
}
