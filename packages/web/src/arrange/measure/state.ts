import { distance2, type Vec2 } from '@cloche/engine';
import { create } from 'zustand';
import { unitsOf } from '../../drawing/length-text.js';
import { type SnapReason, snapField, snapOptions, snapPoint } from '../../drawing/snap/index.js';
import { usePlanView } from '../../plan/view-store.js';
import { useWorkbench } from '../../state/store.js';
import { arrangeTexts as say } from '../../texts/arrange.js';
import { idsLike } from '../members.js';
import { readOut, takeTool } from '../state.js';
import { type Anchor, anchored, placeOf } from './anchor.js';
import { measureText } from './measure-text.js';
import { isClosed, measured } from './measured.js';

interface Measuring {
  readonly points: readonly Anchor[];
  /** Where the pointer rests, and why there. */
  readonly hover: { readonly at: Vec2; readonly reasons: readonly SnapReason[] } | null;
}

export const useMeasure = create<Measuring>(() => ({ points: [], hover: null }));

/** Pixels within which a click meets the first point again. */
const onFirst = 10;

function rest(at: Vec2, free: boolean): { readonly at: Vec2; readonly reasons: readonly SnapReason[] } {
  const { computed, data } = useWorkbench.getState();
  const { view } = usePlanView.getState();
  if (!computed || !view) return { at, reasons: [] };
  const points = placesNow();
  const first = points[0];
  if (points.length > 2 && first && distance2(first, at) * view.scale < onFirst) return { at: first, reasons: [] };
  const units = unitsOf(data);
  const from = points.at(-1);
  return snapPoint(
    snapField(computed.design, [], units),
    at,
    snapOptions(view, units, from ? { from, free } : { free }),
  );
}

/** The points as they lie now. */
export function placesNow(): readonly Vec2[] {
  const { computed } = useWorkbench.getState();
  return computed ? useMeasure.getState().points.map((anchor) => placeOf(computed.design, anchor)) : [];
}

export function hoverMeasure(at: Vec2, free: boolean): void {
  useMeasure.setState({ hover: rest(at, free) });
}

/** Sets the next point; after a closed line a new one begins. */
export function pickMeasurePoint(at: Vec2, free: boolean): void {
  const { computed, data } = useWorkbench.getState();
  if (!computed) return;
  const point = anchored(computed.design, idsLike(data, null), rest(at, free).at);
  const before = isClosed(placesNow()) ? [] : useMeasure.getState().points;
  useMeasure.setState({ points: [...before, point], hover: null });
  const now = measured(placesNow());
  readOut([now ? measureText(now, unitsOf(data)) : say.measure.first]);
}

export function dropLastPoint(): void {
  useMeasure.setState((s) => ({ points: s.points.slice(0, -1), hover: null }));
}

export function clearMeasure(): void {
  useMeasure.setState({ points: [], hover: null });
}

export function leaveMeasure(): void {
  clearMeasure();
  takeTool(null);
}
