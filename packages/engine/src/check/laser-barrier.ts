import type { Item, Rating } from '../catalogue/schema.js';
import type { Barrier, DesignLaser } from '../design/types.js';
import { type CalculationStep, type CalculationValue, fromStep, step, val } from '../floor/calculation.js';
import { type Finding, overLimit, verdictOf } from '../floor/finding.js';
import { distanceToSegment } from '../floor/geometry/polygon.js';
import { between2, distance3, plan } from '../floor/geometry/vec.js';
import { millimetreText, numberText, prefixedText } from '../floor/number-text.js';
import { type Outcome, ok } from '../floor/problem.js';
import { geometrySource, type Source, source } from '../floor/source.js';
import {
  barrierCautions,
  barrierTransmission,
  beamDiameterAt,
  emittedEnergy,
  emittedPower,
  filterSpotFactor,
  peakExposure,
  repeatedPulses,
  type ScaleMode,
  scaleModeOf,
  wavelengthInNanometres,
} from '../laser/index.js';
import { ruleNumber } from '../rules/schema.js';
import { type CheckContext, ruleUsed } from './context.js';
import { beamOf, doubtsAbout, judged, open, problemsText, type Subject } from './laser-finding.js';
import { limitStep } from './laser-limit.js';

type Regime = Rating['regime'];

const utilisationSource: Source = source('definition of utilisation', 'derived');

const regimes: Readonly<Record<ScaleMode, Regime>> = {
  D: 'continuous',
  I: 'long pulses',
  R: 'nanosecond pulses',
  M: 'ultrashort pulses',
};
/** Regime in which a pulse must be tested, as ratings of the catalogue name it. */
const pulseRegime = (duration: number): Regime => regimes[scaleModeOf(duration)];

const ratingsOf = (item: Item): readonly Rating[] =>
  item.kind === 'cloth' || item.kind === 'sheet' || item.kind === 'cover' ? item.ratings : [];

/** The rating that covers a source, or the reason why none does. */
type Cover = { readonly rating: Rating } | { readonly why: string };

/** Strictly inside the band, same regime, a stated time of at least the site's, and a stated limit. */
function coverFor(item: Item, laser: DesignLaser, regime: Regime, time: number): Cover {
  const nm = numberText(wavelengthInNanometres(laser.wavelength), 4);
  const ratings = ratingsOf(item);
  if (ratings.length === 0) return { why: `${item.name} has no laser rating.` };
  const sameRegime = ratings.filter((r) => r.regime === regime);
  if (sameRegime.length === 0)
    return { why: `${item.name} has no rating for ${regime === 'continuous' ? 'continuous light' : regime}.` };
  const edge = 1e-6;
  const inBand = sameRegime.filter(
    (r) => laser.wavelength > r.from * (1 + edge) && laser.wavelength < r.to * (1 - edge),
  );
  if (inBand.length === 0)
    return { why: `${nm} nm is outside, or at the edge of, the band for which ${item.name} is rated for ${regime}.` };
  const timed = inBand.filter((r) => r.time !== undefined);
  if (timed.length === 0) return { why: `The rating of ${item.name} states no time.` };
  const long = timed.filter((r) => r.time! >= time);
  if (long.length === 0)
    return {
      why: `${item.name} is rated for ${numberText(Math.max(...timed.map((r) => r.time!)))} s; the site asks for ${numberText(time)} s.`,
    };
  const limitOf = (r: Rating) => (regime === 'continuous' ? r.irradiance : r.radiantExposure);
  const stated = long.filter((r) => limitOf(r) !== undefined);
  if (stated.length === 0) return { why: `The rating of ${item.name} states no limit for ${regime}.` };
  return { rating: stated.reduce((a, b) => (limitOf(b)! > limitOf(a)! ? b : a)) };
}

/**
 * Shortest way of the light to a barrier: along the beam to the start of an open leg, then straight in plan. Along a leg this way only
 * grows (each metre of beam brings the barrier at most a metre nearer), so the starts of the open legs are enough. Null without an open leg.
 */
function shortestWay(laser: DesignLaser, barrier: Barrier): { readonly along: number; readonly across: number } | null {
  let along = 0;
  let best: { readonly along: number; readonly across: number } | null = null;
  for (const leg of laser.legs) {
    if (leg.carried === 'open') {
      const across = distanceToSegment(plan(leg.from), barrier.from, barrier.to);
      if (!best || along + across < best.along + best.across) best = { along, across };
    }
    along += distance3(leg.from, leg.to);
  }
  return best;
}

/** Everything about one source and one barrier that both tests need. */
interface Pair {
  readonly context: CheckContext;
  readonly subject: Subject;
  readonly barrier: Barrier;
  readonly item: Item;
  readonly distance: number;
  readonly diameter: number;
  readonly nm: number;
  readonly time: number;
  readonly steps: readonly CalculationStep[];
}

interface Strength {
  readonly demand: number;
  readonly capacity: number;
  readonly unit: 'W/m2' | 'J/m2';
  readonly steps: readonly CalculationStep[];
  readonly rating: Rating;
}

/** Findings of one source on one barrier: whether it withstands the beam, and what passes through. */
export function barrierFindings(context: CheckContext, subject: Subject, barrier: Barrier): Finding[] {
  const { laser } = subject;
  const item = barrier.item === null ? undefined : context.catalogue.byId.get(barrier.item);
  const rule = ruleUsed(context.rules, 'laser.barrier-time');
  const base = {
    id: `barrier-irradiance/${barrier.id}/${laser.id}`,
    subject: barrier.id,
    requirement: 'Exposure of the barrier within its rating',
    rule,
    cautions: barrierCautions,
    at: between2(barrier.from, barrier.to, 0.5),
    required: item !== undefined && ratingsOf(item).length > 0,
  };
  const who = `${barrier.name}, ${laser.name}`;
  if (!item) return [open(base, `${who}: the side is open; nothing stops light there.`)];
  const pair = pairOf(context, subject, barrier, item);
  if (!pair.ok) return [open(base, `${who}: ${problemsText(pair)}`)];
  if (!pair.value)
    return [
      open(
        { ...base, required: false },
        `${who}: no leg of the beam is open; faults of tube or fibre are not computed.`,
      ),
    ];
  const strengths = strengthsOf(pair.value);
  if ('why' in strengths) return [open(base, `${who}: ${strengths.why}`)];
  const worst = strengths.reduce((a, b) => (b.demand / b.capacity > a.demand / a.capacity ? b : a));
  const ratio = worst.demand / worst.capacity;
  const doubts = doubtsAbout(subject);
  const verdict = verdictOf(ratio);
  const doubtful = verdict === 'meets' && doubts.length > 0;
  const doubtText = doubtful ? ` Not covered: ${doubts.join('; ')}.` : '';
  const finding = judged(base, {
    verdict: doubtful ? 'attention' : verdict,
    message: `${who}: at ${millimetreText(pair.value.distance)} the beam is ${prefixedText(pair.value.diameter, 'm')} wide (1/e) and loads the barrier with ${prefixedText(worst.demand, worst.unit)}; ${item.name} withstands ${prefixedText(worst.capacity, worst.unit)} for ${numberText(worst.rating.time!)} s.${doubtText}`,
    demand: worst.demand,
    capacity: worst.capacity,
    unit: worst.unit,
    utilisation: ratio,
    steps: [...pair.value.steps, ...strengths.flatMap((s) => s.steps)],
    assumptions: assumptionsOf(pair.value, doubts),
  });
  return [finding, transmissionFinding(pair.value, strengths, who)];
}

const assumptionsOf = (pair: Pair, doubts: readonly string[]): string[] => [
  'The beam may be thrown in any direction in plan, from the start of any open leg, with its full power: this covers every foreseeable tilt and single mirror-like reflection.',
  'Whether the free line is blocked by something else on the way is not computed.',
  'The beam strikes the barrier square on and keeps its divergence.',
  ...(pair.subject.laser.profile === 'top-hat' ? ['The top-hat beam is treated as Gaussian of the same width.'] : []),
  ...doubts.map((d) => `Not covered: ${d}.`),
];

function pairOf(context: CheckContext, subject: Subject, barrier: Barrier, item: Item): Outcome<Pair | null> {
  const way = shortestWay(subject.laser, barrier);
  if (!way) return ok(null);
  const beam = beamOf(subject.laser);
  if (!beam.ok) return beam;
  const distance = way.along + way.across;
  const at = beamDiameterAt({ ...beam.value, distance });
  if (!at.ok) return at;
  const r = step(
    'r',
    'shortest way of the light to the barrier',
    's_leg + d_plan',
    {
      s_leg: val(way.along, 'm', 'way along the beam to the start of the leg'),
      d_plan: val(way.across, 'm', 'plan distance from there to the barrier'),
    },
    distance,
    'm',
    geometrySource,
  );
  return ok({
    context,
    subject,
    barrier,
    item,
    distance,
    diameter: at.value.diameter,
    nm: wavelengthInNanometres(subject.laser.wavelength),
    time: ruleNumber(context.rules, 'laser.barrier-time'),
    steps: [...beam.value.steps, r, ...at.value.steps],
  });
}

/** Tests that the emission asks for: mean power against a continuous rating, and each pulse against one of its regime. */
function strengthsOf(pair: Pair): readonly Strength[] | { readonly why: string } {
  const { emission, meanPower } = pair.subject.laser;
  if (emission.kind === 'irregular pulses') return { why: 'irregular pulses are not computed.' };
  if (emission.kind === 'scanned') return { why: 'scanned beams are not computed.' };
  const pulsed = emission.kind === 'pulsed' && pulseRegime(emission.duration) !== 'continuous';
  const pulse = pulsed ? pulseStrength(pair, emission) : null;
  if (pulse && 'why' in pulse) return pulse;
  // Light in pulses longer than a quarter of a second loads the barrier with its power while it lasts.
  const watts = emission.kind === 'pulsed' && !pulsed ? emission.energy / emission.duration : meanPower;
  const mean = meanStrength(pair, watts!);
  if ('why' in mean) return mean;
  return pulse ? [pulse, mean] : [mean];
}

/** Ratio of spot factors of the beam and of the spot in the test; never below 1. */
function spotRatio(pair: Pair, exposure: number, watts: number, spot: number | undefined) {
  const factorAt = (diameter: number) =>
    filterSpotFactor({ irradiance: exposure, nm: pair.nm, diameter, power: watts });
  const beam = factorAt(pair.diameter);
  const test = factorAt(spot ?? 1e-3);
  if (!beam.ok || !test.ok) throw new Error('diameters were checked before');
  const [b, t] = [
    { ...beam.value, symbol: 'F_beam' },
    { ...test.value, symbol: 'F_test' },
  ];
  const named = {
    ...t,
    name: `spot-size factor of the test${spot === undefined ? ', no spot stated: taken as 1 mm' : ''}`,
  };
  const ratio = step(
    'F',
    'spot-size factor against the test',
    'max(1, F_beam / F_test)',
    { F_beam: fromStep(b), F_test: fromStep(named) },
    Math.max(1, b.result / t.result),
    '1',
    b.source,
  );
  return { ratio, steps: [b, named, ratio] };
}

function meanStrength(pair: Pair, watts: number): Strength | { readonly why: string } {
  const cover = coverFor(pair.item, pair.subject.laser, 'continuous', pair.time);
  if ('why' in cover) return cover;
  const exposure = peakExposure(emittedPower(watts), pair.diameter);
  if (!exposure.ok) return { why: problemsText(exposure) };
  const e = exposure.value.steps[0]!;
  const spot = spotRatio(pair, exposure.value.exposure, watts, cover.rating.spot);
  const demand = exposure.value.exposure * spot.ratio.result;
  const loaded = step(
    'E_F',
    'irradiance with the spot-size factor',
    'E * F',
    { E: fromStep(e), F: fromStep(spot.ratio) },
    demand,
    'W/m2',
    spot.ratio.source,
  );
  const capacity = cover.rating.irradiance!;
  const steps = [e, ...spot.steps, loaded, utilisation('u_E', loaded, ratingValue(pair, capacity, 'W/m2'), capacity)];
  return { demand, capacity, unit: 'W/m2', steps, rating: cover.rating };
}

function pulseStrength(
  pair: Pair,
  emission: { readonly energy: number; readonly duration: number; readonly rate: number },
): Strength | { readonly why: string } {
  const regime = pulseRegime(emission.duration);
  const cover = coverFor(pair.item, pair.subject.laser, regime, pair.time);
  if ('why' in cover) return cover;
  const exposure = peakExposure(emittedEnergy(emission.energy), pair.diameter);
  if (!exposure.ok) return { why: problemsText(exposure) };
  const repeated = repeatedPulses({ pulse: emission.duration, rate: emission.rate, countTime: pair.time }, pair.nm);
  if (!repeated.ok) return { why: problemsText(repeated) };
  const h = exposure.value.steps[0]!;
  const { factor, summed, steps: counted } = repeated.value;
  const [n, m] = counted;
  const demand = exposure.value.exposure * summed * factor;
  const loaded = step(
    'H_N',
    'radiant exposure of a pulse, repeated pulses counted',
    `H${m ? ' * m' : ''}${n ? ' * N^0.25' : ''}`,
    { H: fromStep(h), ...(n ? { N: fromStep(n) } : {}), ...(m ? { m: fromStep(m) } : {}) },
    demand,
    'J/m2',
    source('DGUV Information 203-042, sections 5.3 and 5.4', 'read'),
    'the count of pulses in the rating is not known, so all of them are counted',
  );
  const capacity = cover.rating.radiantExposure!;
  const steps = [h, ...counted, loaded, utilisation('u_H', loaded, ratingValue(pair, capacity, 'J/m2'), capacity)];
  return { demand, capacity, unit: 'J/m2', steps, rating: cover.rating };
}

const ratingValue = (pair: Pair, value: number, unit: string): CalculationValue =>
  val(value, unit, `rating of ${pair.item.name}`, `catalogue ${pair.item.id}`);

const utilisation = (symbol: string, demand: CalculationStep, rating: CalculationValue, capacity: number) =>
  step(
    symbol,
    'utilisation of the rating',
    `${demand.symbol} / R`,
    { [demand.symbol]: fromStep(demand), R: rating },
    demand.result / capacity,
    '1',
    utilisationSource,
  );

/** Light behind the barrier against the limits of eye and skin for the site's duration, while the barrier holds. */
function transmissionFinding(pair: Pair, strengths: readonly Strength[], who: string): Finding {
  const { subject, barrier } = pair;
  const base = {
    id: `barrier-transmission/${barrier.id}/${subject.laser.id}`,
    subject: barrier.id,
    requirement: 'Light behind the barrier below the exposure limit',
    cautions: barrierCautions,
    at: between2(barrier.from, barrier.to, 0.5),
    required: true,
  };
  const densities = strengths.flatMap((s) => s.rating.opticalDensity ?? []);
  if (densities.length < strengths.length) return open(base, `${who}: the rating states no optical density.`);
  const limits = [subject.limits.eye, subject.limits.skin];
  const known = limits.flatMap((l) => (l?.ok ? [l.value] : []));
  if (known.length < limits.length) return open(base, `${who}: the exposure limit is not computed.`);
  const limit = known.reduce((a, b) => (b.limit < a.limit ? b : a));
  const exposure = peakExposure(limit.emitted, pair.diameter);
  if (!exposure.ok) return open(base, problemsText(exposure));
  const density = Math.min(...densities);
  const through = barrierTransmission({
    irradiance: exposure.value.exposure,
    opticalDensity: density,
    limit: limit.limit,
  });
  if (!through.ok) return open(base, problemsText(through));
  const ratio = through.value.transmitted / limit.limit;
  const front = exposure.value.steps[0]!;
  const behind = step(
    'X_t',
    'exposure behind the barrier',
    `${front.symbol} * 10^(-OD)`,
    { [front.symbol]: fromStep(front), OD: val(density, '1', 'optical density', `catalogue ${pair.item.id}`) },
    through.value.transmitted,
    limit.unit,
    source('definition of optical density', 'derived'),
  );
  const last = limitStep(limit);
  const u = step(
    'u',
    'exposure behind the barrier over the limit',
    `X_t / ${last.symbol}`,
    { X_t: fromStep(behind), [last.symbol]: fromStep(last) },
    ratio,
    '1',
    utilisationSource,
  );
  const doubts = doubtsAbout(subject);
  const doubtful = !overLimit(ratio) && doubts.length > 0;
  return judged(
    { ...base, source: limit.source },
    {
      verdict: doubtful ? 'attention' : verdictOf(ratio),
      message: `${who}: behind optical density ${numberText(density)} stand ${prefixedText(through.value.transmitted, limit.unit)}; the limit is ${prefixedText(limit.limit, limit.unit)} (${limit.words}). This holds only while the barrier withstands the beam and hangs closed.`,
      demand: through.value.transmitted,
      capacity: limit.limit,
      unit: limit.unit,
      utilisation: ratio,
      steps: [...pair.steps, ...limit.steps, front, behind, u],
      assumptions: assumptionsOf(pair, doubts),
    },
  );
}
