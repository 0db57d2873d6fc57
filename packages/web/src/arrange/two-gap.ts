import { boundaryDistance, sub2, unit2, type Vec2 } from '@cloche/engine';
import type { Design } from '../engine/contract.js';
import { extentOf } from '../plan/places.js';

export interface TwoGap {
  readonly stays: string;
  readonly moves: string;
  readonly from: Vec2;
  readonly to: Vec2;
  readonly metres: number;
}

/** Nearer than this two things touch [m]. */
const touching = 1e-3;

/** The shortest way between two things in hand that do not touch. */
export function betweenTwo(design: Design, selection: readonly string[]): TwoGap | null {
  const [stays, moves] = selection;
  if (!stays || !moves || selection.length !== 2) return null;
  const [p, q] = [extentOf(design, stays), extentOf(design, moves)];
  if (p.length === 0 || q.length === 0) return null;
  const { distance, a, b } = boundaryDistance(p, q);
  return distance < touching ? null : { stays, moves, from: a, to: b, metres: distance };
}

/** The move of the second thing that gives the way between both a length. */
export function moveForGap({ from, to, metres }: TwoGap, wanted: number): Vec2 {
  const along = unit2(sub2(to, from));
  return [along[0] * (wanted - metres), along[1] * (wanted - metres)];
}
