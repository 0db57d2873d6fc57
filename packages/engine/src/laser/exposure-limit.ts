import { type CalculationStep, type CalculationValue, fromStep, step, val } from '../floor/calculation.js';
import { type Outcome, ok, type Problem, positive, refuse } from '../floor/problem.js';
import { factorSteps, t2Step } from './correction-factors.js';
import { areaOnlyForSkin, noLimitRow, sourceAngleNotUsable, wavelengthOutside } from './messages.js';
import { milliradians, nanometres, tidy } from './scale.js';
import {
  largeArea,
  largeAreaSource,
  limitRows,
  rangeSource,
  sourceAngles,
  tableJoin,
  timeRange,
  unsharedEdgesNm,
  wavelengthRangeNm,
} from './tables.js';
import type { Edition, ExposureLimit, FactorName, LimitRow, Organ, TestedRow } from './types.js';

export interface ExposureLimitArguments {
  readonly edition: Edition;
  readonly organ: Organ;
  /** [m] */
  readonly wavelength: number;
  /** [s] */
  readonly duration: number;
  /** Angular subtense of the apparent source [rad]; left out for a point source. */
  readonly sourceAngle?: number;
  /** Exposed area of skin [m2]; only above 1400 nm and beyond 10 s. */
  readonly exposedArea?: number;
}

/** What the rows are tested with, in their units. */
interface TableArguments {
  readonly edition: Edition;
  readonly nm: number;
  readonly time: number;
  readonly alpha: number;
}

interface WorkedRow {
  readonly row: LimitRow;
  readonly radiantExposure: number;
  readonly step: CalculationStep;
}

/**
 * Maximum permissible exposure of eye or skin for one pulse or one continuous exposure.
 *
 * Every row of the edition's tables that holds for wavelength and time is tested and the smallest is the limit (dual limits). IEC2014
 * reads a band as a <= x < b; where two rows of EU2006 meet, the stricter one holds. Exposures shorter than 1e-13 s keep the
 * irradiance of 1e-13 s; longer than 30 000 s count as 30 000 s; both are noted in the steps. Ultraviolet limits are daily totals:
 * add up the exposures of 24 hours.
 *
 * A limit is no line between safe and harmful. The appointed laser safety officer decides.
 * @param args edition, organ, wavelength 180 nm to below 1 mm [m], duration [s], angular subtense [rad], exposed area [m2]
 * @returns    limit as irradiance [W/m2] and radiant exposure [J/m2] with row, mechanism and factors, or
 *             `laser/wavelength-range`, `laser/duration`, `laser/source-angle`, `laser/exposed-area`, `laser/area-for-skin-only`
 * Source: IEC 60825-1:2014, Annex A (from memory); Directive 2006/25/EC, Annex II, Tables 2.2 to 2.6 (2.3 from memory).
 */
export function exposureLimit(args: ExposureLimitArguments): Outcome<ExposureLimit> {
  const problems = exposureLimitProblems(args);
  if (problems.length > 0) return refuse(problems);
  const duration = tidy(Math.min(args.duration, timeRange.longest));
  const table: TableArguments = {
    edition: args.edition,
    nm: nanometres(args.wavelength),
    time: Math.max(duration, timeRange.shortest),
    alpha: args.sourceAngle === undefined ? sourceAngles.smallest : milliradians(args.sourceAngle),
  };
  const rows = limitRows[args.edition][args.organ].filter((row) => rowHolds(row, args.organ, table));
  if (rows.length === 0) return refuse([noLimitRow(table.nm, table.time)]);
  const factors = factorsOf(rows, table);
  const worked = rows.map((row) => workedRow(row, table, factors));
  const area = largeAreaRow(args, table);
  return ok(assembled(args, duration, table, factors, area ? [...worked, area] : worked));
}

function exposureLimitProblems(args: ExposureLimitArguments): Problem[] {
  const nm = nanometres(args.wavelength);
  const problems = positive('laser/duration', 'duration', args.duration, 's');
  if (!(nm >= wavelengthRangeNm.from && nm < wavelengthRangeNm.to)) problems.push(wavelengthOutside(nm));
  const { sourceAngle, exposedArea } = args;
  if (sourceAngle !== undefined && !(sourceAngle > 0 && sourceAngle < 3.2))
    problems.push(sourceAngleNotUsable(sourceAngle));
  if (exposedArea !== undefined) {
    problems.push(...positive('laser/exposed-area', 'exposedArea', exposedArea, 'm2'));
    if (args.organ === 'eye') problems.push(areaOnlyForSkin());
  }
  return problems;
}

function rowHolds(row: LimitRow, organ: Organ, { edition, nm, time, alpha }: TableArguments): boolean {
  const shared = edition === 'EU2006';
  const inBand = nm >= row.from && (nm < row.to || (shared && nm === row.to && !unsharedEdgesNm.includes(row.to)));
  const lastTime = row.timeTo === timeRange.longest;
  const sharedTime = shared && !(organ === 'eye' && row.timeTo === tableJoin);
  const inTime = time >= row.timeFrom && (time < row.timeTo || ((sharedTime || lastTime) && time === row.timeTo));
  return inBand && inTime && conditionHolds(row, alpha, time);
}

function conditionHolds({ when }: LimitRow, alpha: number, time: number): boolean {
  if (when === undefined) return true;
  const point = alpha <= sourceAngles.smallest;
  if (when === 'point') return point;
  const before = time <= t2Step(alpha).result;
  return !point && (when === 'to T2' ? before : !before);
}

/** Steps of all factors that the rows need, each once. */
function factorsOf(rows: readonly LimitRow[], table: TableArguments): ReadonlyMap<string, CalculationStep> {
  const names = new Set<FactorName>(rows.flatMap(({ law }) => [...(law.factors ?? []), ...(law.smallerOf ?? [])]));
  return new Map([...names].flatMap((name) => factorSteps(name, table)).map((s) => [s.symbol, s]));
}

function workedRow(row: LimitRow, { time }: TableArguments, factors: ReadonlyMap<string, CalculationStep>): WorkedRow {
  const { coefficient, timePower, factors: names = [], smallerOf, cap } = row.law;
  const factor = (name: string): CalculationStep => factors.get(name)!;
  const terms: string[] = coefficient === 1 && (names.length > 0 || smallerOf) ? [] : [String(coefficient)];
  let result = coefficient;
  const values: Record<string, CalculationValue> = {};
  if (timePower !== undefined) {
    values.t = val(time, 's', 'time of the limit');
    terms.push(`t^${timePower}`);
    result *= time ** timePower;
  }
  for (const name of names) {
    values[name] = fromStep(factor(name));
    terms.push(name === 'T2' ? 'T2^(-0.25)' : name);
    result *= name === 'T2' ? factor(name).result ** -0.25 : factor(name).result;
  }
  if (smallerOf) {
    for (const name of smallerOf) values[name] = fromStep(factor(name));
    terms.push(`min(${smallerOf.join(', ')})`);
    result *= Math.min(...smallerOf.map((name) => factor(name).result));
  }
  let expression = terms.join(' * ');
  if (cap !== undefined) {
    expression = `min(${expression}, ${cap})`;
    result = Math.min(result, cap);
  }
  const symbol = `${row.quantity}_${row.id}`;
  const unit = row.quantity === 'H' ? 'J/m2' : 'W/m2';
  const name = `row ${row.id}, ${row.mechanism}`;
  return {
    row,
    radiantExposure: row.quantity === 'H' ? result : result * time,
    step: step(symbol, name, expression, values, result, unit, row.source),
  };
}

/** Extra row for large areas of skin in the far infrared; applied in both editions because it is the stricter. */
function largeAreaRow({ organ, exposedArea }: ExposureLimitArguments, { nm, time }: TableArguments): WorkedRow | null {
  const { fromNm, fromTime, numerator, highest, lowest } = largeArea;
  if (organ !== 'skin' || exposedArea === undefined || nm < fromNm || time <= fromTime) return null;
  const irradiance = Math.max(lowest, Math.min(highest, numerator / exposedArea));
  const row: LimitRow = {
    id: 'S09',
    mechanism: 'cornea, lens or skin',
    from: fromNm,
    to: wavelengthRangeNm.to,
    timeFrom: fromTime,
    timeTo: timeRange.longest,
    quantity: 'E',
    law: { coefficient: irradiance },
    source: largeAreaSource,
  };
  const values = { A: val(exposedArea, 'm2', 'exposed area of skin') };
  const expression = 'max(100, min(1000, 10 / A))';
  return {
    row,
    radiantExposure: irradiance * time,
    step: step('E_S09', 'row S09, large area of skin', expression, values, irradiance, 'W/m2', largeAreaSource),
  };
}

function assembled(
  args: ExposureLimitArguments,
  duration: number,
  table: TableArguments,
  factors: ReadonlyMap<string, CalculationStep>,
  worked: readonly WorkedRow[],
): ExposureLimit {
  const share = duration / table.time;
  const least = worked.reduce((a, b) => (b.radiantExposure < a.radiantExposure ? b : a));
  const radiantExposure = least.radiantExposure * share;
  const irradiance = radiantExposure / duration;
  const closing = closingSteps(args, duration, table, worked, radiantExposure);
  const rows: TestedRow[] = worked.map(({ row, radiantExposure: h }) => ({
    row: row.id,
    mechanism: row.mechanism,
    radiantExposure: h * share,
    irradiance: h / table.time,
    source: row.source,
  }));
  return {
    edition: args.edition,
    organ: args.organ,
    wavelength: args.wavelength,
    duration,
    irradiance,
    radiantExposure,
    row: least.row.id,
    mechanism: least.row.mechanism,
    rows,
    factors: Object.fromEntries([...factors.values()].map((s) => [s.symbol, s.result])),
    steps: [...factors.values(), ...worked.map((w) => w.step), ...closing],
  };
}

/** The smallest row as radiant exposure, then as irradiance. */
function closingSteps(
  { edition, organ, duration: asked }: ExposureLimitArguments,
  duration: number,
  { time }: TableArguments,
  worked: readonly WorkedRow[],
  radiantExposure: number,
): CalculationStep[] {
  const usesTime = worked.some((w) => w.row.quantity === 'E');
  const terms = worked.map(({ row, step: s }) => (row.quantity === 'H' ? s.symbol : `${s.symbol} * t`));
  const least = terms.length === 1 ? terms[0]! : `min(${terms.join(', ')})`;
  const values: Record<string, CalculationValue> = Object.fromEntries(
    worked.map(({ step: s }) => [s.symbol, fromStep(s)] as const),
  );
  if (usesTime) values.t = val(time, 's', 'time of the limit');
  const shorter = duration < timeRange.shortest;
  if (shorter) values.tau = val(duration, 's', 'exposure');
  const note = shorter
    ? 'shorter than 1e-13 s: the irradiance of the limit at 1e-13 s holds'
    : asked > timeRange.longest
      ? 'longer than 30 000 s: counted as 30 000 s'
      : undefined;
  const source = worked.length === 1 && !note ? worked[0]!.row.source : rangeSource;
  const h = step(
    'H_limit',
    `exposure limit of the ${organ}, ${edition}, as radiant exposure`,
    shorter ? `${least} * tau / 1e-13` : least,
    values,
    radiantExposure,
    'J/m2',
    source,
    note,
  );
  const e = step(
    'E_limit',
    `exposure limit of the ${organ}, ${edition}, as irradiance`,
    'H_limit / t',
    { H_limit: fromStep(h), t: val(duration, 's', 'exposure') },
    radiantExposure / duration,
    'W/m2',
    rangeSource,
  );
  return [h, e];
}
