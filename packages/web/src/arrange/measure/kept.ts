import { sub2, unit2, type Vec2 } from '@cloche/engine';
import { create } from 'zustand';
import type { Design } from '../../engine/contract.js';
import { useWorkbench } from '../../state/store.js';
import { arrangeTexts as say } from '../../texts/arrange.js';
import { write } from '../act.js';
import { shifted } from '../shifted.js';
import { tellAll } from '../state.js';
import { type Anchor, placeOf } from './anchor.js';

/** A distance that stays on the sheet: its ends go along with the things they are on. */
export interface KeptDistance {
  readonly number: number;
  readonly a: Anchor;
  readonly b: Anchor;
}

interface Kept {
  readonly kept: readonly KeptDistance[];
  readonly next: number;
}

export const useKept = create<Kept>(() => ({ kept: [], next: 1 }));

export const keepDistance = (a: Anchor, b: Anchor): void =>
  useKept.setState(({ kept, next }) => ({ kept: [...kept, { number: next, a, b }], next: next + 1 }));

export const dropDistance = (number: number): void =>
  useKept.setState(({ kept }) => ({ kept: kept.filter((each) => each.number !== number) }));

export const endsOf = (design: Design, { a, b }: KeptDistance): readonly [Vec2, Vec2] => [
  placeOf(design, a),
  placeOf(design, b),
];

/** The end that moves when the distance is typed: that on the thing in hand, else the second, else the first. */
export function movingEnd({ a, b }: KeptDistance, inHand: readonly string[]): 'a' | 'b' | null {
  if (a.on === b.on) return null;
  if (b.on !== null && inHand.includes(b.on)) return 'b';
  if (a.on !== null && inHand.includes(a.on)) return 'a';
  return b.on !== null ? 'b' : 'a';
}

/** Moves the thing at one end along the distance until it has a length. */
export function setDistance(design: Design, distance: KeptDistance, wanted: number): void {
  const { data, selection } = useWorkbench.getState();
  const end = movingEnd(distance, selection);
  const id = end && distance[end].on;
  if (!end || !id) {
    tellAll([say.measure.nothingMoves]);
    return;
  }
  const [a, b] = endsOf(design, distance);
  const way = sub2(b, a);
  const by = (wanted - Math.hypot(...way)) * (end === 'b' ? 1 : -1);
  const along = unit2(way);
  write(shifted(data, [id], [along[0] * by, along[1] * by]));
}
