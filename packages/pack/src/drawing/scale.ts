/**
 * Reduction scales by their denominators.
 * Source: ISO 5455 (list from memory).
 */
export const reductionScales: readonly number[] = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

/**
 * The smallest denominator at which a thing fits.
 *
 *     width/n <= space width  and  height/n <= space height
 * @param width       of the thing, full size [mm]
 * @param height      of the thing, full size [mm]
 * @param spaceWidth  on paper, margins for dimensions taken off [mm]
 * @param spaceHeight on paper, margins for dimensions taken off [mm]
 * @returns           denominator n of 1:n, the largest of the list when nothing fits [-]
 * Source: choice rule of the handbook of deliverables 1.5 (computed).
 */
export function fittingScale(width: number, height: number, spaceWidth: number, spaceHeight: number): number {
  const fits = (n: number) => width / n <= spaceWidth && height / n <= spaceHeight;
  return reductionScales.find(fits) ?? reductionScales[reductionScales.length - 1]!;
}
