import type { BarModel } from './bar-model.js';
import type { Pattern } from './bar-relaxation.js';

/**
 * Ways to cut one bar that hold the longest piece still wanted and into which no further wanted piece fits. Some best plan
 * uses only such bars: a piece moved into a bar with room costs nothing.
 * @param most stop after this many; then `all` is false
 */
export function fullPatterns(
  model: BarModel,
  demand: readonly number[],
  available: readonly number[],
  most: number,
): { readonly patterns: readonly Pattern[]; readonly all: boolean } {
  const first = demand.findIndex((d) => d > 0);
  const patterns: Pattern[] = [];
  let all = true;
  const counts = model.sizes.map(() => 0);
  model.stock.forEach((stock, s) => {
    if (available[s]! < 1 || stock.size < model.sizes[first]!) return;
    const extend = (i: number, room: number, smallestLeft: number): void => {
      if (patterns.length >= most) {
        all = false;
        return;
      }
      if (i === counts.length) {
        if (room < smallestLeft) patterns.push({ stock: s, counts: [...counts] });
        return;
      }
      const fit = Math.min(demand[i]!, Math.floor(room / model.sizes[i]!));
      const least = i === first ? 1 : 0;
      for (let n = fit; n >= least; n--) {
        counts[i] = n;
        extend(i + 1, room - n * model.sizes[i]!, n < demand[i]! ? model.sizes[i]! : smallestLeft);
      }
      counts[i] = 0;
    };
    extend(first, stock.size, Number.POSITIVE_INFINITY);
  });
  return { patterns, all };
}
