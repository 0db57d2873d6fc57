import { type Outcome, ok, type Problem, refuse } from '../floor/problem.js';
import { remembered } from '../floor/remembered.js';
import { needFinite, needPositive } from './arguments.js';
import { frameMessages } from './messages.js';
import type { BeamEnds, BeamPointLoad, SingleSpan } from './types.js';

/** Largest value in size along a beam and where it is. */
export interface Extreme {
  /** From the first end [m]. */
  readonly at: number;
  readonly value: number;
}

export interface SingleSpanResult {
  /** Upward reactions [N]. */
  readonly startReaction: number;
  readonly endReaction: number;
  /** Moments at the held ends, sagging positive, so that a held end is negative under load [N m]. */
  readonly startMoment: number;
  readonly endMoment: number;
  /** Slope at the first end, downward positive [rad]. */
  readonly startSlope: number;
  /** Largest deflection in size, downward positive [m]. */
  readonly deflection: Extreme;
  /** Largest moment in size, sagging positive [N m]. */
  readonly moment: Extreme;
}

export interface BeamState {
  /** Downward [m]. */
  readonly deflection: number;
  /** [rad] */
  readonly slope: number;
  /** Sagging [N m]. */
  readonly moment: number;
  /** Just right of the place, upward on the left part [N]. */
  readonly shear: number;
}

interface Start {
  readonly reaction: number;
  readonly moment: number;
  /** E I times the slope at the first end [N m2]. */
  readonly slope: number;
}

const sumOf = (points: readonly BeamPointLoad[], each: (a: number, load: number) => number): number =>
  points.reduce((sum, p) => sum + each(p.at, p.load), 0);

/** Reaction and moment at the first end; beam tables, by superposition. */
const startForces: Readonly<Record<BeamEnds, (s: SingleSpan) => { reaction: number; moment: number }>> = {
  simple: ({ uniform: q, span: l, points }) => ({
    reaction: (q * l) / 2 + sumOf(points, (a, p) => (p * (l - a)) / l),
    moment: 0,
  }),
  'fixed and simple': ({ uniform: q, span: l, points }) => ({
    reaction: (5 * q * l) / 8 + sumOf(points, (a, p) => (p * (l - a) * (3 * l * l - (l - a) ** 2)) / (2 * l ** 3)),
    moment: -((q * l * l) / 8 + sumOf(points, (a, p) => (p * a * (l - a) * (2 * l - a)) / (2 * l * l))),
  }),
  fixed: ({ uniform: q, span: l, points }) => ({
    reaction: (q * l) / 2 + sumOf(points, (a, p) => (p * (l - a) ** 2 * (2 * a + l)) / l ** 3),
    moment: -((q * l * l) / 12 + sumOf(points, (a, p) => (p * a * (l - a) ** 2) / l ** 2)),
  }),
  cantilever: ({ uniform: q, span: l, points }) => ({
    reaction: q * l + sumOf(points, (_, p) => p),
    moment: -((q * l * l) / 2 + sumOf(points, (a, p) => p * a)),
  }),
};

function startOf(s: SingleSpan): Start {
  const forces = startForces[s.ends](s);
  const l = s.span;
  const slope =
    s.ends === 'simple'
      ? (s.uniform * l ** 3) / 24 + sumOf(s.points, (a, p) => (p * (l - a) * (l * l - (l - a) ** 2)) / (6 * l))
      : 0;
  return { ...forces, slope };
}

function stateFrom(s: SingleSpan, start: Start, x: number): BeamState {
  const { uniform: q } = s;
  const ei = s.elasticity * s.secondMoment;
  let deflection = start.slope * x - (start.moment * x ** 2) / 2 - (start.reaction * x ** 3) / 6 + (q * x ** 4) / 24;
  let slope = start.slope - start.moment * x - (start.reaction * x ** 2) / 2 + (q * x ** 3) / 6;
  let moment = start.moment + start.reaction * x - (q * x ** 2) / 2;
  let shear = start.reaction - q * x;
  for (const { at, load } of s.points) {
    if (at > x) continue;
    const past = x - at;
    deflection += (load * past ** 3) / 6;
    slope += (load * past ** 2) / 2;
    moment -= load * past;
    shear -= load;
  }
  return { deflection: deflection / ei, slope: slope / ei, moment, shear };
}

/**
 * Where a function that is continuous on [from, to] and changes sign there is zero, to the last digits: false position with the
 * weight of an end halved when it stays (the Illinois rule), so that both ends close in.
 */
function zeroBetween(f: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  let [atLow, atHigh] = [f(low), f(high)];
  let stayed: 'low' | 'high' | null = null;
  for (let i = 0; i < 100 && high - low > 1e-15 * (Math.abs(low) + Math.abs(high)); i++) {
    const x = (low * atHigh - high * atLow) / (atHigh - atLow);
    const atX = f(x);
    if (atX === 0) return x;
    if (atX < 0 === atLow < 0) {
      if (stayed === 'high') atHigh /= 2;
      [low, atLow, stayed] = [x, atX, 'high'];
    } else {
      if (stayed === 'low') atLow /= 2;
      [high, atHigh, stayed] = [x, atX, 'low'];
    }
  }
  return (low + high) / 2;
}

function zeros(f: (x: number) => number, places: readonly number[]): number[] {
  return places.slice(1).flatMap((to, i) => {
    const from = places[i]!;
    return f(from) * f(to) < 0 ? [zeroBetween(f, from, to)] : [];
  });
}

const largest = (places: readonly number[], f: (x: number) => number): Extreme =>
  places.map((at) => ({ at, value: f(at) })).reduce((best, e) => (Math.abs(e.value) > Math.abs(best.value) ? e : best));

const ascending = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b);

function extremes(s: SingleSpan, start: Start): { readonly deflection: Extreme; readonly moment: Extreme } {
  const state = (x: number) => stateFrom(s, start, x);
  const ends = ascending([...new Set([0, ...s.points.map((p) => p.at), s.span])]);
  // The shear jumps at point loads and falls straight between them. Split where it is zero, the moment has at most one
  // zero in each stretch; split there too, the slope has at most one.
  const tops = ends.slice(0, -1).flatMap((from, i) => {
    const x = from + state(from).shear / s.uniform;
    return x > from && x < ends[i + 1]! ? [x] : [];
  });
  const steady = ascending([...ends, ...tops]);
  const stretches = ascending([...steady, ...zeros((x) => state(x).moment, steady)]);
  return {
    deflection: largest([...stretches, ...zeros((x) => state(x).slope, stretches)], (x) => state(x).deflection),
    moment: largest(steady, (x) => state(x).moment),
  };
}

export function singleSpanProblems(s: SingleSpan): Problem[] {
  const problems = [
    ...needPositive({
      span: [s.span, 'm'],
      elasticity: [s.elasticity, 'Pa'],
      secondMoment: [s.secondMoment, 'm4'],
    }),
    ...needFinite({ uniform: s.uniform }),
  ];
  s.points.forEach((p, i) => {
    problems.push(...needFinite({ load: p.load }));
    if (!(p.at >= 0 && p.at <= s.span)) problems.push(frameMessages.loadPlace(i, p.at, s.span));
  });
  return problems;
}

function solved(s: SingleSpan): Outcome<SingleSpanResult> {
  const problems = singleSpanProblems(s);
  if (problems.length > 0) return refuse(problems);
  const start = startOf(s);
  const total = s.uniform * s.span + sumOf(s.points, (_, p) => p);
  const end = stateFrom(s, start, s.span);
  return ok({
    startReaction: start.reaction,
    endReaction: s.ends === 'cantilever' ? 0 : total - start.reaction,
    startMoment: start.moment,
    endMoment: s.ends === 'fixed' ? end.moment : 0,
    startSlope: start.slope / (s.elasticity * s.secondMoment),
    ...extremes(s, start),
  });
}

/**
 * Reactions, largest deflection and largest moment of one span under uniform and point loads.
 *
 *     E I d(x) = E I s0 x - M0 x^2/2 - R0 x^3/6 + q x^4/24 + sum P <x - a>^3/6     (downward positive)
 *     M(x) = M0 + R0 x - q x^2/2 - sum P <x - a>                                   (sagging positive)
 * with s0, M0, R0 from beam tables, exact at every x; largest values at zero slope and zero shear. Bending only: shear
 * adds about 1 to 4 % for spans above 15 depths. Small deflections, constant section, loads in the plane of a principal
 * axis. A structure overhead can hurt: a qualified engineer decides.
 * @param s span with its loads [m, N, N/m, Pa, m4]
 * @returns results, or `frame/not-positive`, `frame/not-a-number`, `frame/load-off-span`
 * Source: Roark's Formulas for Stress and Strain, beam tables (from memory).
 */
export const singleSpan = remembered(solved, (s) => s, 4000);

/**
 * Deflection, slope, moment and shear of one span at a place.
 * @param s span with its loads [m, N, N/m, Pa, m4]
 * @param x distance from the first end [m]
 * @returns state, or the problems of `singleSpan`, or `frame/place-off-span`
 * Source: Roark's Formulas for Stress and Strain, beam tables (from memory).
 */
export function singleSpanAt(s: SingleSpan, x: number): Outcome<BeamState> {
  const problems = singleSpanProblems(s);
  if (!(x >= 0 && x <= s.span)) problems.push(frameMessages.placeOffSpan(x, s.span));
  return problems.length > 0 ? refuse(problems) : ok(stateFrom(s, startOf(s), x));
}
