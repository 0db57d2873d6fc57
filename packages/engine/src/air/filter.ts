import { type Outcome, ok, refuse } from '../floor/index.js';
import { checked, shares, zeroOrMore } from './arguments.js';
import { emptyList, filterUnknown } from './messages.js';
import { filterTable } from './tables.js';
import type { FilterClass } from './types.js';

export interface FilterData {
  readonly filterClass: FilterClass;
  /** At the most penetrating size: an upper bound for 0.5 um and larger [-]. */
  readonly integralPenetration: number;
  /** At the worst allowed spot; null where the standard sets none [-]. */
  readonly localPenetration: number | null;
}

/**
 * Penetration of a filter by its class.
 * @param name class of EN 1822-1 (`H14`) or group of ISO 29463-1 (`45 H`, `ISO 45 H`)
 * @returns    penetrations at the most penetrating size [-], or `air/filter-class`
 * Source: EN 1822-1:2019; ISO 29463-1 (published).
 */
export function filterData(name: string): Outcome<FilterData> {
  const wanted = name
    .replace(/^ISO\s*/i, '')
    .replace(/\s+/g, '')
    .toUpperCase();
  const found = Object.entries(filterTable).find(
    ([key, row]) => key === wanted || row.iso29463?.replace(' ', '') === wanted,
  );
  if (!found) return refuse([filterUnknown(name)]);
  const [filterClass, { integral, local }] = found;
  return ok({ filterClass: filterClass as FilterClass, integralPenetration: integral, localPenetration: local });
}

/**
 * Highest concentration behind filters in series. An installed filter is usually limited by its seal: scan it.
 *
 *     C = C0 P1 P2 ...
 * @param upstream     C0 [1/m3]
 * @param penetrations of each filter [-]
 * @returns            C [1/m3], or `air/negative`, `air/not-a-share`, `air/too-few`
 * Source: product of penetrations (derived).
 */
export const behindFilters = (upstream: number, penetrations: readonly number[]): Outcome<number> =>
  checked(
    [
      ...zeroOrMore({ upstream: [upstream, '1/m3'] }),
      ...penetrations.flatMap((penetration) => shares({ penetration })),
      ...(penetrations.length === 0 ? [emptyList('penetrations', 1)] : []),
    ],
    () => penetrations.reduce((c, p) => c * p, upstream),
  );
