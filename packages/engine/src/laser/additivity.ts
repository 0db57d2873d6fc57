import { type CalculationStep, fromStep, step, val } from '../floor/calculation.js';
import { type Outcome, ok, positive, refuse } from '../floor/problem.js';
import { source } from '../floor/source.js';
import { exposureLimit } from './exposure-limit.js';
import { noBeams } from './messages.js';
import { nanometres } from './scale.js';
import type { Edition, ExposureLimit, Organ, TestedRow, Worked } from './types.js';
import { marked } from './working.js';

const additive = source('IEC 60825-1:2014, Table 1 (additivity)', 'from memory');

export interface ExposedTo {
  /** [m] */
  readonly wavelength: number;
  /** [W/m2] */
  readonly irradiance: number;
  /** [rad] */
  readonly sourceAngle?: number;
}

/** Beams that act on the same tissue in the same way. */
export interface AdditiveGroup {
  readonly group: string;
  /** Sum of irradiance over limit; above 1 is over the limit. */
  readonly ratio: number;
}

export interface SumOfExposures extends Worked {
  readonly groups: readonly AdditiveGroup[];
  /** The largest of the groups. */
  readonly ratio: number;
  readonly exceeds: boolean;
}

/** Groups of bands whose exposures add; the table of IEC 60825-1 reads as these classes. */
function bandOf(organ: Organ, nm: number): string {
  if (nm < 315) return '180 to 315 nm';
  if (organ === 'skin') return '315 nm to 1 mm';
  return nm >= 400 && nm < 1400 ? 'retina' : 'cornea and lens, 315 to 400 nm and 1400 nm to 1 mm';
}

interface Share {
  readonly group: string;
  readonly symbol: string;
  readonly beam: ExposedTo;
  readonly limit: number;
}

/** What one beam adds to each group; heat and photochemistry of the retina are summed apart. */
function sharesOf(beam: ExposedTo, limit: ExposureLimit, index: number): Share[] {
  const band = bandOf(limit.organ, nanometres(beam.wavelength));
  const share = (group: string, rows: readonly TestedRow[], tail: string): Share[] =>
    rows.length === 0
      ? []
      : [{ group, symbol: `MPE_${index}${tail}`, beam, limit: Math.min(...rows.map((r) => r.irradiance)) }];
  if (band !== 'retina') return share(band, limit.rows, '');
  return [
    ...share(
      'retina, heat',
      limit.rows.filter((r) => r.mechanism !== 'photochemical'),
      '_heat',
    ),
    ...share(
      'retina, photochemistry',
      limit.rows.filter((r) => r.mechanism === 'photochemical'),
      '_blue',
    ),
  ];
}

/**
 * Several wavelengths at once: the sum of irradiance over limit, for each group that acts on the same tissue in the same way.
 *
 *     sum(E_i / MPE_i) <= 1 over the same exposure
 * Heat and photochemistry of the retina are summed apart; groups that do not add are judged apart and the largest sum counts.
 * @param args edition, organ, exposure [s], beams with wavelength [m], irradiance [W/m2] and angular subtense [rad]
 * @returns    sums [-], or the problems of `exposureLimit`, `laser/no-beams`, `laser/exposure`
 * Source: IEC 60825-1:2014, Table 1 (from memory).
 */
export function sumOfExposures(args: {
  readonly edition: Edition;
  readonly organ: Organ;
  readonly duration: number;
  readonly beams: readonly ExposedTo[];
}): Outcome<SumOfExposures> {
  const { edition, organ, duration, beams } = args;
  if (beams.length === 0) return refuse([noBeams()]);
  const steps: CalculationStep[] = [];
  const shares: Share[] = [];
  for (const [i, beam] of beams.entries()) {
    const problems = positive('laser/exposure', 'irradiance', beam.irradiance, 'W/m2');
    if (problems.length > 0) return refuse(problems);
    const angle = beam.sourceAngle === undefined ? {} : { sourceAngle: beam.sourceAngle };
    const limit = exposureLimit({ edition, organ, duration, wavelength: beam.wavelength, ...angle });
    if (!limit.ok) return limit;
    steps.push(...marked(limit.value.steps, String(i + 1)));
    shares.push(...sharesOf(beam, limit.value, i + 1));
  }
  const names = [...new Set(shares.map((s) => s.group))];
  const sums = names.map((group, i) =>
    sumStep(
      group,
      i + 1,
      shares.filter((s) => s.group === group),
    ),
  );
  const ratio = Math.max(...sums.map((s) => s.result));
  const largest = step(
    'sum_ratio',
    'largest sum',
    `max(${sums.map((s) => s.symbol).join(', ')})`,
    Object.fromEntries(sums.map((s) => [s.symbol, fromStep(s)])),
    ratio,
    '1',
    additive,
  );
  const groups = names.map((group, i) => ({ group, ratio: sums[i]!.result }));
  return ok({ groups, ratio, exceeds: ratio > 1, steps: [...steps, ...sums, largest] });
}

function sumStep(group: string, index: number, shares: readonly Share[]): CalculationStep {
  const beamSymbol = (s: Share) => s.symbol.replace('MPE', 'E');
  const values = Object.fromEntries(
    shares.flatMap((s) => [
      [beamSymbol(s), val(s.beam.irradiance, 'W/m2', `irradiance at ${nanometres(s.beam.wavelength)} nm`)],
      [s.symbol, val(s.limit, 'W/m2', `limit at ${nanometres(s.beam.wavelength)} nm for this group`)],
    ]),
  );
  const expression = shares.map((s) => `${beamSymbol(s)} / ${s.symbol}`).join(' + ');
  const result = shares.reduce((sum, s) => sum + s.beam.irradiance / s.limit, 0);
  return step(`S_${index}`, `sum for ${group}`, expression, values, result, '1', additive);
}
