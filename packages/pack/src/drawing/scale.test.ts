import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fittingScale, reductionScales } from './scale.js';

// Handbook of deliverables 1.5, worked example (computed there by hand): 9000 x 6000 mm in 330 x 177 mm gives 1:50.
test('a room of 9 m by 6 m fits an A3 sheet at 1:50', () => {
  expect(fittingScale(9000, 6000, 330, 177)).toBe(50);
});

test('the thing fits at the chosen scale and not at the next larger one', () => {
  const side = fc.double({ min: 10, max: 90_000, noNaN: true });
  fc.assert(
    fc.property(side, side, (width, height) => {
      const n = fittingScale(width, height, 300, 170);
      const fits = (scale: number) => width / scale <= 300 && height / scale <= 170;
      const larger = reductionScales[reductionScales.indexOf(n) - 1];
      return fits(n) && (larger === undefined || !fits(larger));
    }),
    { seed: 11 },
  );
});
