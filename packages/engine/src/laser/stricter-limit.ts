import { fromStep, step } from '../floor/calculation.js';
import { type Outcome, ok } from '../floor/problem.js';
import { source } from '../floor/source.js';
import { type ExposureLimitArguments, exposureLimit } from './exposure-limit.js';
import { type Edition, type EditionChoice, type ExposureLimit, editions, type Worked } from './types.js';
import { lastOf, marked } from './working.js';

export interface LimitByChoice extends Worked {
  /** The limit that holds: of the one edition asked for, or the lower of both. */
  readonly governing: ExposureLimit;
  /** Every edition that was tested. */
  readonly tested: readonly ExposureLimit[];
  /** Symbol of the last step: `E_limit`. */
  readonly irradiance: number;
}

const both = source('site rule: stricter of both editions', 'derived');

/**
 * Exposure limit by the site's choice of edition; with `stricter of both` both are computed, shown and the lower one holds.
 * @param choice edition, or both [-]
 * @param args   as for `exposureLimit`, without the edition
 * @returns      governing limit [W/m2], all tested limits and the steps, or the problems of `exposureLimit`
 * Source: editions as named in each step.
 */
export function limitByChoice(
  choice: EditionChoice,
  args: Omit<ExposureLimitArguments, 'edition'>,
): Outcome<LimitByChoice> {
  if (choice !== 'stricter of both') {
    const one = exposureLimit({ ...args, edition: choice });
    if (!one.ok) return one;
    const { irradiance, steps } = one.value;
    return ok({ governing: one.value, tested: [one.value], irradiance, steps });
  }
  const tested: ExposureLimit[] = [];
  for (const edition of editions) {
    const limit = exposureLimit({ ...args, edition });
    if (!limit.ok) return limit;
    tested.push(limit.value);
  }
  return ok(stricterOf(tested));
}

const shortName: Readonly<Record<Edition, string>> = { IEC2014: 'IEC', EU2006: 'EU' };

function stricterOf(tested: readonly ExposureLimit[]): LimitByChoice {
  const governing = tested.reduce((a, b) => (b.irradiance < a.irradiance ? b : a));
  const steps = tested.flatMap((limit) => marked(limit.steps, shortName[limit.edition]));
  const ends = tested.map((limit) => lastOf(marked(limit.steps, shortName[limit.edition])));
  const stricter = step(
    'E_limit',
    `stricter limit: ${governing.edition}`,
    `min(${ends.map((s) => s.symbol).join(', ')})`,
    Object.fromEntries(ends.map((s) => [s.symbol, fromStep(s)])),
    governing.irradiance,
    'W/m2',
    both,
  );
  return { governing, tested, irradiance: governing.irradiance, steps: [...steps, stricter] };
}
