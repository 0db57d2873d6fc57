import { sub2, unit2, type Vec2 } from '@cloche/engine';
import { useMemo } from 'react';
import { distanceList, type KeptDistance, keptIn } from '../../brief/kept-distances.js';
import type { Design } from '../../engine/contract.js';
import { addEntry, endEdit, removeEntry, useWorkbench } from '../../state/store.js';
import { arrangeTexts as say } from '../../texts/arrange.js';
import { write } from '../act.js';
import { closely, lengthTo } from '../exact.js';
import { shifted } from '../shifted.js';
import { tellAll } from '../state.js';
import { type Anchor, placeOn } from './anchor.js';

export function useKept(): readonly KeptDistance[] {
  const data = useWorkbench((s) => s.data);
  return useMemo(() => keptIn(data), [data]);
}

const written = (point: Vec2): readonly string[] => point.map((value) => lengthTo('m', value, closely));
const endOf = ({ at, on, offset }: Anchor): object =>
  on === null ? { at: written(at) } : { of: on, at: written(offset) };

/** Writes a distance in the brief, with the next number that is free. */
export function keepDistance(a: Anchor, b: Anchor): void {
  const next = 1 + Math.max(0, ...keptIn(useWorkbench.getState().data).map(({ number }) => number));
  endEdit();
  addEntry(distanceList, { id: `distance-${next}`, from: endOf(a), to: endOf(b) });
}

export function dropDistance({ index }: KeptDistance): void {
  endEdit();
  removeEntry([...distanceList, index]);
}

/** Both ends; null while one is on a thing that is not in the design. */
export function endsOf(design: Design, { a, b }: KeptDistance): readonly [Vec2, Vec2] | null {
  const [from, to] = [a, b].map(({ on, at }) => (on === null ? at : placeOn(design, on, at)));
  return from && to ? [from, to] : null;
}

/** The end that moves when the distance is typed: that on the thing in hand, else the second, else the first. */
export function movingEnd({ a, b }: Pick<KeptDistance, 'a' | 'b'>, inHand: readonly string[]): 'a' | 'b' | null {
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
  const ends = endsOf(design, distance);
  if (!end || !id || !ends) {
    tellAll([say.measure.nothingMoves]);
    return;
  }
  const [a, b] = ends;
  const way = sub2(b, a);
  const by = (wanted - Math.hypot(...way)) * (end === 'b' ? 1 : -1);
  const along = unit2(way);
  write(shifted(data, [id], [along[0] * by, along[1] * by]));
}
