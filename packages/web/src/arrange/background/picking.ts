import type { Vec2 } from '@cloche/engine';
import { create } from 'zustand';
import type { Change } from '../../brief/document.js';
import { unitsOf } from '../../drawing/length-text.js';
import { snapField, snapOptions, snapPoint } from '../../drawing/snap/index.js';
import { usePlanView } from '../../plan/view-store.js';
import { useWorkbench } from '../../state/store.js';
import { arrangeTexts } from '../../texts/arrange.js';
import { write } from '../act.js';
import { closely, lengthTo } from '../exact.js';
import { readOut, takeTool, tellAll } from '../state.js';
import { type Placement, placementIn, scaledTo } from './placement.js';

const say = arrangeTexts.background;

/** What two clicks on the sheet are for: a known length, or a point of the background and where it belongs. */
export type Purpose = 'scale' | 'shift';

interface Picked {
  readonly purpose: Purpose;
  readonly points: readonly Vec2[];
}

export const usePicked = create<Picked>(() => ({ purpose: 'scale', points: [] }));

export function startPicking(purpose: Purpose): void {
  usePicked.setState({ purpose, points: [] });
  takeTool('background');
  readOut([purpose === 'scale' ? say.firstOfScale : say.firstOfShift]);
}

export function stopPicking(): void {
  usePicked.setState({ points: [] });
  takeTool(null);
}

/** The background itself has no corners to snap to; where it is laid onto the room, the room has. */
export function pickBackgroundPoint(at: Vec2, free: boolean): void {
  const { purpose, points } = usePicked.getState();
  if (points.length >= 2) return;
  const second = points.length === 1;
  const point = purpose === 'shift' && second ? rested(at, free) : at;
  usePicked.setState({ points: [...points, point] });
  if (!second) readOut([purpose === 'scale' ? say.secondOfScale : say.secondOfShift]);
  else if (purpose === 'shift') shiftOnto(points[0]!, point);
  else readOut([say.typeDistance]);
}

function rested(at: Vec2, free: boolean): Vec2 {
  const { computed, data } = useWorkbench.getState();
  const { view } = usePlanView.getState();
  if (!computed || !view) return at;
  const units = unitsOf(data);
  return snapPoint(snapField(computed.design, [], units), at, snapOptions(view, units, { free })).at;
}

const changesFor = ({ at, width }: Pick<Placement, 'at' | 'width'>): readonly Change[] => [
  [['background', 'at', 0], lengthTo('m', at[0], closely)],
  [['background', 'at', 1], lengthTo('m', at[1], closely)],
  [['background', 'width'], lengthTo('m', width, closely)],
];

function shiftOnto(from: Vec2, to: Vec2): void {
  const placement = placementIn(useWorkbench.getState().data);
  if (placement) {
    const at: Vec2 = [placement.at[0] + to[0] - from[0], placement.at[1] + to[1] - from[1]];
    write({ changes: changesFor({ at, width: placement.width }), told: [] }, [say.shifted]);
  }
  stopPicking();
}

/** Sets the scale by the distance between the two points that were clicked [m]. */
export function scaleTo(metres: number): void {
  const placement = placementIn(useWorkbench.getState().data);
  const [a, b] = usePicked.getState().points;
  const scaled = placement && a && b ? scaledTo(placement, a, b, metres) : null;
  if (scaled) write({ changes: changesFor(scaled), told: [] }, [say.scaled]);
  else tellAll([say.notTwoPoints]);
  stopPicking();
}
