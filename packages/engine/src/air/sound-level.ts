import type { Outcome } from '../floor/index.js';
import { aboveZero, checked, finite } from './arguments.js';
import { backgroundTooLoud, emptyList, notBelowOne } from './messages.js';

/**
 * Sum of sound levels of sources that are not in step.
 *
 *     L = 10 lg sum 10^(Li/10)
 * @param levels [dB]
 * @returns      L [dB], or `air/too-few`, `air/not-finite`
 * Source: energy sum (derived).
 */
export const soundLevelSum = (levels: readonly number[]): Outcome<number> =>
  checked(
    [
      ...(levels.length === 0 ? [emptyList('levels', 1)] : []),
      ...levels.flatMap((level) => finite({ levels: [level, 'dB'] })),
    ],
    () => 10 * Math.log10(levels.reduce((sum, level) => sum + 10 ** (level / 10), 0)),
  );

/**
 * Level at another distance from a point source without walls.
 *
 *     L2 = L1 - 20 lg(r2 / r1)
 * @param level L1 [dB]
 * @param from  r1 [m]
 * @param to    r2 [m]
 * @returns     L2 [dB], or `air/not-finite`, `air/not-positive`
 * Source: spherical spreading (derived).
 */
export const soundLevelAt = (level: number, from: number, to: number): Outcome<number> =>
  checked(
    [...finite({ level: [level, 'dB'] }), ...aboveZero({ from: [from, 'm'], to: [to, 'm'] })],
    () => level - 20 * Math.log10(to / from),
  );

/**
 * Room constant.
 *
 *     R = S a / (1 - a)
 * @param surface    S of walls, floor and ceiling [m2]
 * @param absorption a, mean of the surfaces [-]
 * @returns          R [m2], or `air/not-positive`, `air/absorption`
 * Source: room equation, textbook (from memory).
 */
export const roomConstant = (surface: number, absorption: number): Outcome<number> =>
  checked(
    [
      ...aboveZero({ surface: [surface, 'm2'] }),
      ...(absorption > 0 && absorption < 1 ? [] : [notBelowOne('absorption', absorption)]),
    ],
    () => (surface * absorption) / (1 - absorption),
  );

/**
 * Level in a room from a source of known sound power.
 *
 *     Lp = Lw + 10 lg(D / (4 pi r^2) + 4 / R)
 * @param power       Lw [dB]
 * @param directivity D: 1 free, 2 on one surface, 4 in an edge, 8 in a corner [-]
 * @param distance    r [m]
 * @param constant    R [m2]
 * @returns           Lp [dB], or `air/not-finite`, `air/not-positive`
 * Source: room equation, textbook (from memory).
 */
export const roomSoundLevel = (
  power: number,
  directivity: number,
  distance: number,
  constant: number,
): Outcome<number> =>
  checked(
    [
      ...finite({ power: [power, 'dB'] }),
      ...aboveZero({ directivity: [directivity, '1'], distance: [distance, 'm'], constant: [constant, 'm2'] }),
    ],
    () => power + 10 * Math.log10(directivity / (4 * Math.PI * distance ** 2) + 4 / constant),
  );

/**
 * Level of a source alone, the background taken off.
 *
 *     L = 10 lg(10^(L1/10) - 10^(Lb/10))
 * @param together   L1, source and background [dB]
 * @param background Lb [dB]
 * @returns          L [dB], or `air/not-finite`, `air/background-too-loud` below 3 dB difference
 * Source: energy difference (derived).
 */
export function soundLevelWithout(together: number, background: number): Outcome<number> {
  const problems = finite({ together: [together, 'dB'], background: [background, 'dB'] });
  if (problems.length === 0 && together - background < 3) problems.push(backgroundTooLoud());
  return checked(problems, () => 10 * Math.log10(10 ** (together / 10) - 10 ** (background / 10)));
}
