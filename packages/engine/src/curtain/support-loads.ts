import { argumentProblem, type Outcome, ok, type Problem, positive, refuse } from '../floor/problem.js';
import { solveBanded } from './banded.js';
import { badInterval, liftsOff, mechanism, notInside, tooFewSupports } from './messages.js';
import { type PointLoad, type StretchLoad, samePlace } from './types.js';

export interface BeamQuestion {
  readonly length: number;
  readonly supports: readonly number[];
  readonly uniform: readonly StretchLoad[];
  readonly points: readonly PointLoad[];
  /** Joints that carry no moment; none when left out. */
  readonly hinges?: readonly number[];
}

export interface BeamReactions {
  /** Upward positive, in the order of the supports [N]. */
  readonly reactions: readonly number[];
  /** Bending moment over each support, sagging positive [N m]. */
  readonly moments: readonly number[];
  /** Share of each reaction that the neighbouring spans would give as simple beams, overhangs included [N]. */
  readonly simple: readonly number[];
  /** Numbers of the supports that carry, along the track: all, or those that were not left out because they would have to push. */
  readonly carrying: readonly number[];
}

/** Loads of one span, places from its left support [m]. */
interface SpanLoads {
  readonly length: number;
  readonly uniform: readonly StretchLoad[];
  readonly points: readonly PointLoad[];
}

/** The parts of the loads that lie in [from, to); the last span takes loads at its right end too. */
function loadsIn(question: BeamQuestion, from: number, to: number, closed: boolean): SpanLoads {
  return {
    length: to - from,
    uniform: question.uniform
      .map((u) => ({ from: Math.max(u.from, from) - from, to: Math.min(u.to, to) - from, load: u.load }))
      .filter((u) => u.to > u.from),
    points: question.points
      .filter((p) => p.at >= from && (p.at < to || (closed && p.at <= to)))
      .map((p) => ({ at: p.at - from, load: p.load })),
  };
}

const total = (loads: SpanLoads): number =>
  loads.uniform.reduce((sum, u) => sum + u.load * (u.to - u.from), 0) +
  loads.points.reduce((sum, p) => sum + p.load, 0);

/** Moment of all loads about the left end [N m]. */
const momentAboutLeft = (loads: SpanLoads): number =>
  loads.uniform.reduce((sum, u) => sum + (u.load * (u.to ** 2 - u.from ** 2)) / 2, 0) +
  loads.points.reduce((sum, p) => sum + p.load * p.at, 0);

/** 6 E I times the end slopes of the span as a simple beam: P b (l2 - b2)/l from a single load, integrated for stretches. */
function endSlopes({ length: l, uniform, points }: SpanLoads): { readonly left: number; readonly right: number } {
  const integral = (from: number, to: number) =>
    (to ** 2 * l ** 2) / 2 - to ** 4 / 4 - ((from ** 2 * l ** 2) / 2 - from ** 4 / 4);
  let left = 0;
  let right = 0;
  for (const { at: a, load } of points) {
    const b = l - a;
    left += (load * b * (l ** 2 - b ** 2)) / l;
    right += (load * a * (l ** 2 - a ** 2)) / l;
  }
  for (const u of uniform) {
    left += (u.load * integral(l - u.to, l - u.from)) / l;
    right += (u.load * integral(u.from, u.to)) / l;
  }
  return { left, right };
}

/** Moment at `x` of the span as a simple beam [N m]. */
function simpleMoment(loads: SpanLoads, x: number): number {
  const leftReaction = total(loads) - momentAboutLeft(loads) / loads.length;
  let moment = leftReaction * x;
  for (const p of loads.points) if (p.at < x) moment -= p.load * (x - p.at);
  for (const u of loads.uniform) {
    const end = Math.min(u.to, x);
    if (end > u.from) moment -= u.load * (end - u.from) * (x - (u.from + end) / 2);
  }
  return moment;
}

function beamProblems({ length, supports, uniform, points, hinges = [] }: BeamQuestion): Problem[] {
  const inside = (p: number) => p >= -samePlace && p <= length + samePlace;
  const outside = (name: string, places: readonly number[]) =>
    places.filter((p) => !inside(p)).map((p) => notInside(name, p, length));
  const problems = [
    ...positive('curtain/length', 'length', length, 'm'),
    ...outside('supports', supports),
    ...outside(
      'points',
      points.map((p) => p.at),
    ),
    ...outside(
      'uniform',
      uniform.flatMap((u) => [u.from, u.to]),
    ),
    ...outside('hinges', hinges),
  ];
  if (uniform.some((u) => !(u.from <= u.to))) problems.push(badInterval('uniform'));
  if ([...uniform, ...points].some((l) => !Number.isFinite(l.load)))
    problems.push(argumentProblem('curtain/load', 'load', 'A load is no number.', 'Give each load in N or N/m.'));
  const distinct = supports.filter((p, i) => supports.findIndex((q) => Math.abs(p - q) <= samePlace) === i);
  if (distinct.length < 2 || distinct.length < supports.length) problems.push(tooFewSupports(distinct.length));
  return problems;
}

/**
 * Reactions of a track as a beam over rigid supports that can pull and push, with overhanging ends.
 *
 *     M0 a + 2 M1 (a + b) + M2 b = -6 E I (end slopes of both spans as simple beams at the middle support)
 *     R = reactions of the neighbouring spans as simple beams + (M0 - M1)/a + (M2 - M1)/b
 * Constant bending stiffness; the moment over an outer support is that of its overhang. A hinge adds one equation (no moment
 * there) and one unknown (the kink). Bends count as straight: the track is unrolled.
 * @param question places along the track [m], loads downward positive [N/m], [N]
 * @returns reactions [N] and moments [N m]; or `curtain/length`, `curtain/outside-track`, `curtain/interval`, `curtain/load`,
 *          `curtain/too-few-supports`, `curtain/mechanism`
 * Source: three-moment equation (Clapeyron); agrees with textbook coefficients for equal spans.
 *
 * Anchors and ceilings are decided by a licensed structural engineer or the owner's engineer.
 */
export function supportLoads(question: BeamQuestion): Outcome<BeamReactions> {
  const problems = beamProblems(question);
  if (problems.length > 0) return refuse(problems);
  const order = question.supports.map((_, i) => i).sort((a, b) => question.supports[a]! - question.supports[b]!);
  const at = order.map((i) => question.supports[i]!);
  const last = at.length - 1;
  const spans = at.slice(1).map((to, i) => loadsIn(question, at[i]!, to, i === last - 1));
  const head = loadsIn(question, 0, at[0]!, false);
  const tail = loadsIn(
    { ...question, points: question.points.filter((p) => p.at > at[last]!) },
    at[last]!,
    question.length,
    true,
  );
  const startMoment = -(total(head) * head.length - momentAboutLeft(head));
  const endMoment = -momentAboutLeft(tail);
  const moments = supportMoments(at, spans, startMoment, endMoment, question.hinges ?? []);
  if (!moments) return refuse([mechanism()]);
  const simple = at.map((_, i) => {
    const before = spans[i - 1];
    const after = spans[i];
    return (
      (i === 0 ? total(head) : 0) +
      (i === last ? total(tail) : 0) +
      (before ? momentAboutLeft(before) / before.length : 0) +
      (after ? total(after) - momentAboutLeft(after) / after.length : 0)
    );
  });
  const reactions = at.map((_, i) => {
    const before = spans[i - 1] ? (moments[i - 1]! - moments[i]!) / spans[i - 1]!.length : 0;
    const after = spans[i] ? (moments[i + 1]! - moments[i]!) / spans[i]!.length : 0;
    return simple[i]! + before + after;
  });
  const back = (sorted: readonly number[]) => question.supports.map((_, i) => sorted[order.indexOf(i)]!);
  return ok({ reactions: back(reactions), moments: back(moments), simple: back(simple), carrying: order });
}

interface Unknown {
  readonly place: number;
  readonly support?: number;
  readonly hinge?: { readonly span: number; readonly at: number };
}

/** Moments over all supports, hinges respected; null for a mechanism. Unknowns stand in the order of their places, so that the system is banded. */
function supportMoments(
  at: readonly number[],
  spans: readonly SpanLoads[],
  startMoment: number,
  endMoment: number,
  hinges: readonly number[],
): number[] | null {
  const last = at.length - 1;
  const unknowns: Unknown[] = [];
  for (let i = 1; i < last; i++) unknowns.push({ place: at[i]!, support: i });
  for (const h of hinges) {
    if (Math.abs(h - at[0]!) <= samePlace && startMoment === 0) continue;
    if (Math.abs(h - at[last]!) <= samePlace && endMoment === 0) continue;
    if (h <= at[0]! + samePlace || h >= at[last]! - samePlace) return null;
    const span = Math.min(last - 1, at.filter((a) => a <= h).length - 1);
    unknowns.push({ place: h, hinge: { span, at: h - at[span]! } });
  }
  unknowns.sort((a, b) => a.place - b.place);
  const known = at.map((_, i) => (i === 0 ? startMoment : i === last ? endMoment : 0));
  const columns = new Array<number>(at.length).fill(-1);
  const hingesOf = spans.map((): { readonly column: number; readonly at: number }[] => []);
  unknowns.forEach((u, column) => {
    if (u.support !== undefined) columns[u.support] = column;
    if (u.hinge) hingesOf[u.hinge.span]!.push({ column, at: u.hinge.at });
  });
  const rows = unknowns.map(() => new Array<number>(unknowns.length).fill(0));
  const right = unknowns.map(() => 0);
  const addMoment = (row: number, support: number, factor: number) => {
    const column = columns[support]!;
    if (column >= 0) rows[row]![column]! += factor;
    else right[row]! -= factor * known[support]!;
  };
  unknowns.forEach((u, row) => {
    if (u.support !== undefined) {
      const i = u.support;
      const before = spans[i - 1]!;
      const after = spans[i]!;
      addMoment(row, i - 1, before.length);
      addMoment(row, i, 2 * (before.length + after.length));
      addMoment(row, i + 1, after.length);
      right[row]! -= endSlopes(before).right + endSlopes(after).left;
      for (const h of hingesOf[i - 1]!) rows[row]![h.column]! += h.at / before.length;
      for (const h of hingesOf[i]!) rows[row]![h.column]! += 1 - h.at / after.length;
    } else if (u.hinge) {
      const span = spans[u.hinge.span]!;
      const share = u.hinge.at / span.length;
      addMoment(row, u.hinge.span, 1 - share);
      addMoment(row, u.hinge.span + 1, share);
      right[row]! -= simpleMoment(span, u.hinge.at);
    }
  });
  const reach = widestReach(rows);
  const solved = solveBanded(rows, right, reach);
  if (!solved) return null;
  return known.map((k, i) => (columns[i]! >= 0 ? solved[columns[i]!]! : k));
}

const widestReach = (rows: readonly (readonly number[])[]): number =>
  rows.reduce((most, row, i) => row.reduce((m, v, j) => (v !== 0 ? Math.max(m, Math.abs(i - j)) : m), most), 1);

/**
 * Reactions of a track on supports that hold it up but cannot push it down (rods, chains): a support that would have to push is
 * left out and the rest computed again; it then carries nothing.
 * @param question as for `supportLoads`
 * @returns reactions [N], zero or more, `curtain/lifts-off`, or the problems of `supportLoads`
 * Source: handbook of layout, 3.5 (derived).
 */
export function hangingSupportLoads(question: BeamQuestion): Outcome<BeamReactions> {
  let kept = question.supports.map((_, i) => i);
  for (;;) {
    const found = supportLoads({ ...question, supports: kept.map((i) => question.supports[i]!) });
    if (!found.ok) return found;
    const least = Math.min(...found.value.reactions);
    if (least >= -1e-9) {
      const spread = (list: readonly number[]) =>
        question.supports.map((_, i) => (kept.includes(i) ? list[kept.indexOf(i)]! : 0));
      const { reactions, moments, simple } = found.value;
      const carrying = found.value.carrying.map((i) => kept[i]!);
      return ok({ reactions: spread(reactions), moments: spread(moments), simple: spread(simple), carrying });
    }
    const lifted = kept[found.value.reactions.indexOf(least)]!;
    kept = kept.filter((i) => i !== lifted);
    if (kept.length < 2) return refuse([liftsOff()]);
  }
}
