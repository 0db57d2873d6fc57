import { contains, type Edge, edges, type Ring, segmentsMeet, signedArea } from '../floor/geometry/polygon.js';
import { cross2, dot2, sub2, type Vec2 } from '../floor/geometry/vec.js';
import { type Outcome, ok, type Problem, refuse } from '../floor/problem.js';
import { frameMessages } from './messages.js';
import type { SectionOutline } from './types.js';

/** Below this no outline is a section: the points are then likely not metres [m2]. */
const leastArea = 1e-12;

const same = (a: Vec2, b: Vec2): boolean => a[0] === b[0] && a[1] === b[1];

/** Points that repeat their forerunner say nothing new: a ring closed by its first point is the same ring. */
const withoutRepeats = (ring: Ring): Ring => ring.filter((p, i) => !same(p, ring[(i + 1) % ring.length]!));

/**
 * True when two edges share a point. Most pairs of an outline lie far apart: comparing their extents first makes the
 * whole test of a slotted bar about ten times faster.
 */
function meet(a: Edge, b: Edge): boolean {
  for (const k of [0, 1] as const) {
    if (Math.max(a.from[k], a.to[k]) < Math.min(b.from[k], b.to[k])) return false;
    if (Math.max(b.from[k], b.to[k]) < Math.min(a.from[k], a.to[k])) return false;
  }
  return segmentsMeet(a.from, a.to, b.from, b.to);
}

/** First two edges that cross or touch although they are not neighbours. */
function crossing(ring: Ring): readonly [number, number] | undefined {
  const e = edges(ring);
  for (let i = 0; i < e.length; i++)
    for (let j = i + 2; j < e.length; j++) {
      const closing = i === 0 && j === e.length - 1;
      if (!closing && meet(e[i]!, e[j]!)) return [i, j];
    }
  return undefined;
}

/** Edge that runs back over the one before it, which a test of edges that are no neighbours cannot see. */
function spike(ring: Ring): readonly [number, number] | undefined {
  const e = edges(ring);
  for (let i = 0; i < e.length; i++) {
    const j = (i + 1) % e.length;
    const a = sub2(e[i]!.to, e[i]!.from);
    const b = sub2(e[j]!.to, e[j]!.from);
    if (cross2(a, b) === 0 && dot2(a, b) < 0) return [i, j];
  }
  return undefined;
}

function ringProblems(name: string, ring: Ring): Problem[] {
  if (ring.length < 3 || ring.some((p) => !p.every(Number.isFinite))) return [frameMessages.ringPoints(name)];
  const crossed = crossing(ring) ?? spike(ring);
  if (crossed) return [frameMessages.ringCrosses(name, ...crossed)];
  const area = Math.abs(signedArea(ring));
  return area > leastArea ? [] : [frameMessages.ringArea(name, area)];
}

function apart(a: Ring, b: Ring): boolean {
  const others = edges(b);
  return edges(a).every((e) => !others.some((other) => meet(e, other)));
}

function holeProblems(outer: Ring, holes: readonly Ring[]): Problem[] {
  const name = (i: number) => `hole ${i + 1}`;
  return holes.flatMap((hole, i) => {
    if (!apart(outer, hole) || !contains(outer, hole[0]!, 0)) return [frameMessages.holeOutside(name(i))];
    const touched = holes.findIndex(
      (other, j) => j < i && (!apart(other, hole) || contains(other, hole[0]!, 0) || contains(hole, other[0]!, 0)),
    );
    return touched < 0 ? [] : [frameMessages.holesTouch(name(touched), name(i))];
  });
}

const oriented = (ring: Ring, sign: 1 | -1): Ring => (signedArea(ring) * sign < 0 ? [...ring].reverse() : ring);

/**
 * The outline as the integrals want it: outer ring counter-clockwise, holes clockwise, no point twice in a row.
 * @param outline rings in any sense of turning [m]
 * @returns the repaired outline, or `frame/section-points`, `frame/section-self-crossing`, `frame/section-area`,
 *          `frame/section-hole-outside`, `frame/section-holes-touch`; nothing but the order of points is repaired
 * Source: geometry.
 */
export function repairedOutline(outline: SectionOutline): Outcome<SectionOutline> {
  const outer = withoutRepeats(outline.outer);
  const holes = outline.holes.map(withoutRepeats);
  const rings = [...ringProblems('outer', outer), ...holes.flatMap((hole, i) => ringProblems(`hole ${i + 1}`, hole))];
  const problems = rings.length > 0 ? rings : holeProblems(outer, holes);
  if (problems.length > 0) return refuse(problems);
  return ok({ outer: oriented(outer, 1), holes: holes.map((hole) => oriented(hole, -1)) });
}
