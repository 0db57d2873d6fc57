import { type Outcome, ok, refuse } from '../floor/problem.js';
import { tooFewSupports } from './messages.js';
import { type BeamQuestion, type BeamReactions, hangingSupportLoads, supportLoads } from './support-loads.js';
import { type PointLoad, type StretchLoad, samePlace } from './types.js';

/** What hangs on one stretch of track: drawn along all of it, or pushed together at either end. */
export interface HangingStretch {
  readonly from: number;
  readonly to: number;
  /** Weight of cloth, hem and runners of the stretch [N]. */
  readonly weight: number;
  /** Track that it takes pushed together [m]. */
  readonly stack: number;
}

export interface WorstLoadQuestion {
  readonly length: number;
  /** The track runs back into itself. */
  readonly closed: boolean;
  /** In rising order along the track. */
  readonly supports: readonly number[];
  /** Joints of track pieces: computed stiff and as hinges. */
  readonly joints: readonly number[];
  /** Weight of the bare track [N/m]. */
  readonly trackLoad: number;
  readonly stretches: readonly HangingStretch[];
  /** Pull of a person at the worst place [N]. */
  readonly pull: number;
  /** Rods and chains: supports that cannot push the track down. */
  readonly pullOnly: boolean;
}

/** The support that carries most, in the state and with the pull that load it most. */
export interface WorstLoad {
  readonly support: number;
  readonly reaction: number;
  /** `drawn`, or the stretch and end at which the curtain is pushed together. */
  readonly state: 'drawn' | { readonly stretch: number; readonly end: 'from' | 'to' };
  readonly pullAt: number;
  readonly joints: 'stiff' | 'hinges';
  /** The parts of the reaction: simple spans, and moments over this and the neighbouring supports with their distances. */
  readonly simple: number;
  readonly moment: number;
  readonly before: { readonly span: number; readonly moment: number } | null;
  readonly after: { readonly span: number; readonly moment: number } | null;
}

type State = WorstLoad['state'];

/**
 * Supports kept beyond each end when a closed track is unrolled. A moment falls to 2 - sqrt(3), about 0.27, of itself over each
 * span (three-moment equation, equal spans), so that what is cut off changes nothing at the 0.2 % level.
 */
const keptBeyond = 5;

/** Start and length of the straight beam that stands for the track; for a closed one it laps over itself at both ends. */
function beamRange({ length, closed, supports }: WorstLoadQuestion): {
  readonly from: number;
  readonly to: number;
  readonly before: number;
} {
  if (!closed) return { from: 0, to: length, before: 0 };
  const before = Math.min(keptBeyond, supports.length);
  return { from: supports[supports.length - before]! - length, to: supports[before - 1]! + length, before };
}

function unrolled(question: WorstLoadQuestion, state: State, hinged: boolean): Omit<BeamQuestion, 'points'> {
  const { length, closed, trackLoad, stretches } = question;
  const loads: StretchLoad[] = [{ from: 0, to: length, load: trackLoad }];
  stretches.forEach((s, i) => {
    const pushed = state !== 'drawn' && state.stretch === i ? state.end : null;
    const taken = pushed ? Math.min(s.stack, s.to - s.from) : s.to - s.from;
    const from = pushed === 'to' ? s.to - taken : s.from;
    loads.push({ from, to: from + taken, load: s.weight / taken });
  });
  const { from, to } = beamRange(question);
  const times = closed ? [-2, -1, 0, 1] : [0];
  const shifts = times.map((t) => t * length - from);
  const end = to - from;
  const placed = (places: readonly number[]) =>
    shifts.flatMap((shift) => places.map((p) => p + shift)).filter((p) => p > -samePlace && p < end + samePlace);
  return {
    length: end,
    supports: placed(question.supports),
    hinges: hinged ? placed(question.joints) : [],
    uniform: shifts
      .flatMap((shift) =>
        loads.map((l) => ({ load: l.load, from: Math.max(0, l.from + shift), to: Math.min(end, l.to + shift) })),
      )
      .filter((l) => l.to > l.from),
  };
}

/** Parts of a span at which the pull is tried; the influence of a load on a support peaks at it or close by. */
const parts = 4;

function pullPlaces(question: WorstLoadQuestion): number[] {
  const { length, closed, supports, joints } = question;
  const sorted = supports;
  const stops = [...sorted, ...(closed ? [sorted[0]! + length] : [])];
  const inSpans = stops.slice(1).flatMap((to, i) => {
    const from = stops[i]!;
    return Array.from({ length: parts }, (_, k) => from + ((to - from) * k) / parts);
  });
  const all = [...inSpans, sorted.at(-1)!, ...joints, ...(closed ? [] : [0, length])];
  return all.map((p) => p - beamRange(question).from);
}

/**
 * The largest load on a support of a curtain track: curtain drawn or pushed together at either end of each stretch, a person
 * pulling at the worst place, joints stiff or as hinges.
 *
 * Own weight and pull are added (superposition); the governing case is computed once more as a whole.
 * @param question track, supports, weights [N], places [m]
 * @returns the governing support and case, or the problems of `supportLoads`; a hinged case that would be a mechanism is left
 *          out, since such a joint cannot be loose without the track falling
 * Source: handbook of layout, 3.5 (common practice for the states and the pull).
 *
 * Anchors and ceilings are decided by a licensed structural engineer or the owner's engineer.
 */
export function worstSupportLoad(question: WorstLoadQuestion): Outcome<WorstLoad> {
  const { stretches, pull, pullOnly, closed, length } = question;
  const supports = question.supports;
  if (supports.length < 2) return refuse([tooFewSupports(supports.length)]);
  const solve = pullOnly ? hangingSupportLoads : supportLoads;
  const states: State[] = ['drawn'];
  for (const stretch of stretches.keys()) for (const end of ['from', 'to'] as const) states.push({ stretch, end });
  const { from, before } = beamRange(question);
  const read = supports.map((_, i) => i + before);
  let worst: { reaction: number; support: number; state: State; pullAt: number; hinged: boolean } | null = null;
  for (const hinged of question.joints.length > 0 ? [false, true] : [false]) {
    const own = states.map((state) => ({ state, found: solve({ ...unrolled(question, state, hinged), points: [] }) }));
    const failed = own.find((o) => !o.found.ok);
    if (failed && !failed.found.ok) {
      if (hinged && failed.found.problems.every((p) => p.code === 'curtain/mechanism')) continue;
      return failed.found;
    }
    const bare = { ...unrolled(question, 'drawn', hinged), uniform: [] };
    const pulled = pullPlaces(question).map((at) => ({
      at,
      found: supportLoads({ ...bare, points: [{ at, load: pull }] }),
    }));
    for (const i of read) {
      const atSupport = (found: Outcome<BeamReactions>) =>
        found.ok ? found.value.reactions[i]! : Number.NEGATIVE_INFINITY;
      const state = own.reduce((a, b) => (atSupport(b.found) > atSupport(a.found) + samePlace ? b : a));
      const place = pulled.reduce((a, b) => (atSupport(b.found) > atSupport(a.found) + samePlace ? b : a));
      const reaction = atSupport(state.found) + atSupport(place.found);
      if (!worst || reaction > worst.reaction + samePlace)
        worst = { reaction, support: i, state: state.state, pullAt: place.at, hinged };
    }
  }
  const { support, state, pullAt, hinged } = worst!;
  const points: PointLoad[] = [{ at: pullAt, load: pull }];
  const found = solve({ ...unrolled(question, state, hinged), points });
  if (!found.ok) return found;
  return ok({
    ...partsOf(found.value, support, unrolled(question, state, hinged).supports),
    support: support - before,
    state,
    pullAt: closed ? (pullAt + from + length) % length : pullAt,
    joints: hinged ? 'hinges' : 'stiff',
  });
}

function partsOf(found: BeamReactions, support: number, places: readonly number[]) {
  const order = found.carrying;
  const k = order.indexOf(support);
  const neighbour = (n: number | undefined) =>
    n === undefined ? null : { span: Math.abs(places[n]! - places[support]!), moment: found.moments[n]! };
  return {
    reaction: found.reactions[support]!,
    simple: found.simple[support]!,
    moment: found.moments[support]!,
    before: neighbour(order[k - 1]),
    after: neighbour(order[k + 1]),
  };
}
