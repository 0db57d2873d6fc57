import { type CalculationStep, fromStep, step, val } from '../floor/calculation.js';
import { type Outcome, ok, positive, refuse } from '../floor/problem.js';
import type { Source } from '../floor/source.js';
import { alphaMaxStep, t2Step } from './correction-factors.js';
import { exposureLimit } from './exposure-limit.js';
import { pulseLongerThanExposure, pulseLongerThanPeriod } from './messages.js';
import { milliradians, nanometres, tidy } from './scale.js';
import { apertureBands, directive26, groupingTimes, iecPulses, sourceAngles } from './tables.js';
import type { Edition, ExposureLimit, Organ, Worked } from './types.js';
import { lastOf, marked } from './working.js';

export interface PulseTrainArguments {
  readonly edition: Edition;
  readonly organ: Organ;
  /** [m] */
  readonly wavelength: number;
  /** Duration of one pulse [s]. */
  readonly pulse: number;
  /** [Hz] */
  readonly rate: number;
  /** Exposure [s]. */
  readonly duration: number;
  /** [rad] */
  readonly sourceAngle?: number;
}

export type PulseRule = 'single pulse' | 'average' | 'train';

export interface PulseTrainLimit extends Worked {
  readonly edition: Edition;
  /** Permitted radiant exposure of each pulse by each rule [J/m2]; `train` is null where the edition has no such rule. */
  readonly singlePulse: number;
  readonly average: number;
  readonly train: number | null;
  readonly governing: PulseRule;
  /** The smallest of the rules [J/m2]. */
  readonly perPulse: number;
  /** That times the rate [W/m2]. */
  readonly irradiance: number;
  /** Row behind the single pulse and behind the average. */
  readonly rows: readonly [string, string];
}

/**
 * Exposure limit for each pulse of a regular train: the smallest of three rules.
 *
 * 1. Each pulse stays below the limit of its own duration. 2. The sum stays below the limit of the whole exposure. 3. Heat adds up:
 * IEC2014 multiplies the single pulse by C5 (retina, 400 to 1400 nm, pulses up to 0.25 s); EU2006 by N^-0.25 (every thermal limit
 * from 315 nm on). Pulses closer than T_i (IEC) or T_min (EU) count as one pulse of that time. N is counted over the exposure, in
 * IEC2014 over T2 at most. The limit of ultraviolet light is a daily total: give the exposure of the whole day.
 *
 * Irregular trains and scanned beams are not covered. The appointed laser safety officer decides.
 * @param args edition, organ, wavelength [m], pulse duration [s], rate [Hz], exposure [s], angular subtense [rad]
 * @returns    limit per pulse [J/m2] with the rule that governs, or the problems of `exposureLimit`, `laser/rate`, `laser/pulse`,
 *             `laser/pulse-longer-than-period`, `laser/pulse-longer-than-exposure`
 * Source: IEC 60825-1:2014, clause 4.3 f and Annex A (from memory); Directive 2006/25/EC, Table 2.6 (read).
 */
export function pulseTrainLimit(args: PulseTrainArguments): Outcome<PulseTrainLimit> {
  const problems = [
    ...positive('laser/pulse', 'pulse', args.pulse, 's'),
    ...positive('laser/rate', 'rate', args.rate, 'Hz'),
  ];
  if (args.pulse * args.rate >= 1) problems.push(pulseLongerThanPeriod(args.pulse, 1 / args.rate));
  if (args.duration < args.pulse) problems.push(pulseLongerThanExposure(args.pulse, args.duration));
  if (problems.length > 0) return refuse(problems);
  const single = exposureLimit({ ...args, duration: args.pulse });
  if (!single.ok) return single;
  const whole = exposureLimit(args);
  if (!whole.ok) return whole;
  const train = trainRule(args, single.value);
  return ok(smallestRule(args, single.value, whole.value, train));
}

const hLimit = (steps: readonly CalculationStep[]): CalculationStep => steps.at(-2)!;
const trainSource = (edition: Edition): Source => (edition === 'IEC2014' ? iecPulses : directive26);

function smallestRule(
  { edition, rate, duration }: PulseTrainArguments,
  single: ExposureLimit,
  whole: ExposureLimit,
  train: readonly CalculationStep[],
): PulseTrainLimit {
  const origin = trainSource(edition);
  const singleSteps = marked(single.steps, 'pulse');
  const wholeSteps = marked(whole.steps, 'T');
  const one = hLimit(singleSteps);
  const all = hLimit(wholeSteps);
  const count = Math.max(1, Math.round(rate * duration));
  const counted = step(
    'n',
    'pulses in the exposure',
    'max(1, round(f * T))',
    { f: val(rate, 'Hz', 'repetition rate'), T: val(duration, 's', 'exposure') },
    count,
    '1',
    origin,
  );
  const mean = step(
    'H_average',
    'rule 2, share of each pulse in the limit of the whole exposure',
    `${all.symbol} / n`,
    { [all.symbol]: fromStep(all), n: fromStep(counted) },
    whole.radiantExposure / count,
    'J/m2',
    origin,
  );
  const third = train.at(-1) ?? null;
  const rules = [one, mean, ...(third ? [third] : [])];
  const names: readonly PulseRule[] = ['single pulse', 'average', 'train'];
  const perPulse = Math.min(...rules.map((r) => r.result));
  const smallest = step(
    'H_permitted',
    'limit of each pulse: the smallest of the rules',
    `min(${rules.map((r) => r.symbol).join(', ')})`,
    Object.fromEntries(rules.map((r) => [r.symbol, fromStep(r)])),
    perPulse,
    'J/m2',
    origin,
  );
  const mpe = step(
    'E_permitted',
    'the same as mean irradiance',
    'H_permitted * f',
    { H_permitted: fromStep(smallest), f: val(rate, 'Hz', 'repetition rate') },
    perPulse * rate,
    'W/m2',
    origin,
  );
  return {
    edition,
    singlePulse: single.radiantExposure,
    average: mean.result,
    train: third?.result ?? null,
    governing: names[rules.findIndex((r) => r.result === perPulse)]!,
    perPulse,
    irradiance: perPulse * rate,
    rows: [single.row, whole.row],
    steps: [...singleSteps, ...wholeSteps, counted, mean, ...train, smallest, mpe],
  };
}

/** Steps of rule 3, its result last; none where the rule does not exist. */
function trainRule(args: PulseTrainArguments, single: ExposureLimit): CalculationStep[] {
  const nm = nanometres(args.wavelength);
  const retinal = args.organ === 'eye' && nm >= apertureBands.pupilFrom && nm < apertureBands.pupilTo;
  const exists = args.edition === 'IEC2014' ? retinal && args.pulse <= 0.25 : nm >= 315;
  if (!exists) return [];
  const group = groupingTimes.find((g) => nm >= g.from && nm < g.to)?.[args.edition] ?? null;
  const counting = args.edition === 'IEC2014' ? countingTime(args) : args.duration;
  return group !== null && tidy(args.rate * group) > 1
    ? groupedRule(args, Math.min(group, args.duration), counting)
    : separateRule(args, single, counting, group);
}

const alphaOf = ({ sourceAngle }: PulseTrainArguments): number =>
  sourceAngle === undefined ? sourceAngles.smallest : milliradians(sourceAngle);
/** IEC2014 counts pulses over T2 at most. */
const countingTime = (args: PulseTrainArguments): number => Math.min(args.duration, t2Step(alphaOf(args)).result);

const fourthRoot = 'N^(-0.25)';

/** C5 of IEC2014 as formula and value. Source: IEC 60825-1:2014, clause 4.3 f (from memory). */
function c5(args: PulseTrainArguments, effectivePulse: number, group: number, count: number) {
  const alpha = alphaOf(args);
  const root = count ** -0.25;
  if (alpha > sourceAngles.largest) return { text: '1', value: 1 };
  if (effectivePulse <= group)
    return args.duration <= 0.25 || count <= 600
      ? { text: '1', value: 1 }
      : { text: `max(5 * ${fourthRoot}, 0.4)`, value: Math.max(5 * root, 0.4) };
  if (alpha <= 5) return { text: '1', value: 1 };
  const larger = alpha > alphaMaxStep(args.edition, effectivePulse).result;
  const [most, floor] = larger ? [625, 0.2] : [40, 0.4];
  return count <= most ? { text: fourthRoot, value: root } : { text: String(floor), value: floor };
}

function factorStep(args: PulseTrainArguments, effectivePulse: number, group: number, counted: CalculationStep) {
  const eu = args.edition === 'EU2006';
  const { text, value } = eu
    ? { text: fourthRoot, value: counted.result ** -0.25 }
    : c5(args, effectivePulse, group, counted.result);
  const symbol = eu ? 'C_P' : 'C5';
  const values = text.includes('N') ? { N: fromStep(counted) } : {};
  const name = eu ? 'factor for a train of N pulses' : 'factor for repeated pulses, C5';
  return step(symbol, name, text, values, value, '1', trainSource(args.edition));
}

function separateRule(
  args: PulseTrainArguments,
  single: ExposureLimit,
  counting: number,
  group: number | null,
): CalculationStep[] {
  const origin = trainSource(args.edition);
  const counted = step(
    'N',
    'pulses that add up',
    'max(1, f * T_N)',
    { f: val(args.rate, 'Hz', 'repetition rate'), T_N: val(counting, 's', 'time over which pulses are counted') },
    Math.max(1, args.rate * counting),
    '1',
    origin,
  );
  const factor = factorStep(args, args.pulse, group ?? 0, counted);
  const one = hLimit(marked(single.steps, 'pulse'));
  const train = step(
    'H_train',
    'rule 3, train of pulses',
    `${factor.symbol} * ${one.symbol}`,
    { [factor.symbol]: fromStep(factor), [one.symbol]: fromStep(one) },
    factor.result * single.radiantExposure,
    'J/m2',
    origin,
  );
  return [counted, factor, train];
}

/** Pulses closer than the grouping time: all that fall into it count as one pulse of that time. */
function groupedRule(args: PulseTrainArguments, group: number, counting: number): CalculationStep[] {
  const origin = trainSource(args.edition);
  const outcome = exposureLimit({ ...args, duration: group });
  if (!outcome.ok) throw new Error('the limit of a group of pulses exists where that of one pulse does');
  const steps = marked(outcome.value.steps, 'group');
  const whole = hLimit(steps);
  const t = val(group, 's', 'time within which pulses count as one');
  const inGroup = step(
    'm',
    'pulses in a group',
    'f * T_g',
    { f: val(args.rate, 'Hz', 'repetition rate'), T_g: t },
    args.rate * group,
    '1',
    origin,
  );
  const counted = step(
    'N',
    'groups that add up',
    'max(1, T_N / T_g)',
    { T_N: val(counting, 's', 'time over which groups are counted'), T_g: t },
    Math.max(1, counting / group),
    '1',
    origin,
  );
  const factor = factorStep(args, group, group, counted);
  const train = step(
    'H_train',
    'rule 3, share of each pulse in its group',
    `${factor.symbol} * ${whole.symbol} / m`,
    { [factor.symbol]: fromStep(factor), [whole.symbol]: fromStep(whole), m: fromStep(inGroup) },
    (factor.result * outcome.value.radiantExposure) / inGroup.result,
    'J/m2',
    origin,
  );
  return [...steps, inGroup, counted, factor, train];
}

export interface PulseTrainByChoice extends Worked {
  readonly governing: PulseTrainLimit;
  readonly tested: readonly PulseTrainLimit[];
}

/**
 * Limit of each pulse by the site's choice of edition; with both, the lower holds.
 * @param chosen editions to test, at least one [-]
 * @param args   as for `pulseTrainLimit`, without the edition
 * @returns      governing limit [J/m2] and all steps, or the problems of `pulseTrainLimit`
 * Source: editions as named in each step.
 */
export function pulseTrainLimitByChoice(
  chosen: readonly Edition[],
  args: Omit<PulseTrainArguments, 'edition'>,
): Outcome<PulseTrainByChoice> {
  const tested: PulseTrainLimit[] = [];
  for (const edition of chosen) {
    const limit = pulseTrainLimit({ ...args, edition });
    if (!limit.ok) return limit;
    tested.push(limit.value);
  }
  const governing = tested.reduce((a, b) => (b.perPulse < a.perPulse ? b : a));
  if (tested.length === 1) return ok({ governing, tested, steps: governing.steps });
  const parts = tested.map((t) => marked(t.steps, t.edition === 'IEC2014' ? 'IEC' : 'EU'));
  const ends = parts.map((steps) => hLimit(steps));
  const stricter = step(
    'H_stricter',
    `stricter limit of each pulse: ${governing.edition}`,
    `min(${ends.map((s) => s.symbol).join(', ')})`,
    Object.fromEntries(ends.map((s) => [s.symbol, fromStep(s)])),
    governing.perPulse,
    'J/m2',
    lastOf(governing.steps).source,
  );
  return ok({ governing, tested, steps: [...parts.flat(), stricter] });
}
