import { bounds } from '@cloche/engine';
import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { unitsOf } from '../drawing/length-text.js';
import { hideSnap, type SnapField, showSnap, snapBox, snapField, snapOptions } from '../drawing/snap/index.js';
import type { Design, Vec2 } from '../engine/contract.js';
import { editValues, endEdit, useWorkbench } from '../state/store.js';
import { carrierOf, gripOf, groupGrip, movedGrip, shiftBetween } from './grips.js';
import { knownGrip } from './known-grips.js';
import { extentOf, middleOf } from './places.js';
import { usePlanView } from './view-store.js';

/**
 * How far a thing was moved since the drawing was computed, as a transform in plan metres: it follows the hand at once, and the
 * rest of the sheet when the engine has answered.
 */
export function useAhead(id: string): string | undefined {
  return useWorkbench((s) => {
    if (s.data === s.computedData) return undefined;
    const carrier = carrierOf(s.data, id);
    const shifts = [id, ...(carrier ? [carrier] : [])].map((each) =>
      shiftBetween(ownGrip(s.computedData, each), ownGrip(s.data, each)),
    );
    const [dx, dy] = [0, 1].map((k) => shifts.reduce((sum, shift) => sum + (shift?.[k] ?? 0), 0));
    return dx === 0 && dy === 0 ? undefined : `translate(${dx} ${dy})`;
  });
}

/** A corner without the ends of legs that go along with it. */
const ownGrip = (data: unknown, id: string) =>
  id.includes('#') ? knownGrip(data, id).slice(0, 1) : knownGrip(data, id);

/** Moves a thing by an exact distance: a dimension was typed. */
export function shift(id: string, by: Vec2): void {
  editValues(movedGrip(gripOf(useWorkbench.getState().data, id), by, false), `move ${id}`);
  endEdit();
}

const arrows: Readonly<Record<string, Vec2>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Pixels before a press becomes a drag. */
const slack = 4;

/** What moves with a thing: everything in hand when it is part of that, else itself. */
function handOf(id: string): readonly string[] {
  const { selection } = useWorkbench.getState();
  return selection.length > 1 && selection.includes(id) ? selection : [id];
}

interface Drag {
  readonly ids: readonly string[];
  readonly grip: ReturnType<typeof gripOf>;
  readonly x: number;
  readonly y: number;
  /** What it may come to rest on; null for what is placed on a table or in a wall, which rests on whole steps. */
  readonly field: SnapField | null;
  readonly outline: readonly Vec2[];
  moving: boolean;
}

function taken(id: string, x: number, y: number): Drag | null {
  const { data, computed } = useWorkbench.getState();
  const ids = handOf(id);
  const grip = groupGrip(data, ids);
  if (grip.length === 0) return null;
  const free = grip[0]?.length === 2 && ids.every((each) => carrierOf(data, each) === null);
  const outline = computed && free ? outlineOf(computed.design, ids) : [];
  const field = computed && outline.length > 0 ? snapField(computed.design, ids, unitsOf(data)) : null;
  return { ids, grip, x, y, field, outline, moving: false };
}

/** The points that come to rest: a corner by itself, one thing by its outline, several by the box round them. */
function outlineOf(design: Design, ids: readonly string[]): readonly Vec2[] {
  const [id = '', corner] = (ids[0] ?? '').split('#');
  if (corner !== undefined) {
    const point = extentOf(design, id)[Number(corner)];
    return point ? [point] : [];
  }
  const points = ids.flatMap((each) => extentOf(design, each));
  if (ids.length < 2 || points.length === 0) return points;
  const { min, max } = bounds(points);
  return [min, [max[0], min[1]], max, [min[0], max[1]]];
}

/** Leads what was taken by a distance in the room; it comes to rest on what is near. */
function lead({ ids, grip, field, outline }: Drag, by: Vec2, free: boolean): void {
  const key = `move ${ids.join(' ')}`;
  const { view } = usePlanView.getState();
  if (!field || !view) {
    editValues(movedGrip(grip, by, !free), key);
    return;
  }
  const options = snapOptions(view, field.units, { free });
  const rested = snapBox(field, outline, by, options);
  editValues(movedGrip(grip, rested.by, false), key);
  const [first] = outline;
  const middle = middleOf(outline) ?? first;
  if (middle) showSnap([middle[0] + rested.by[0], middle[1] + rested.by[1]], rested.reasons);
}

/** Moves by one arrow key; null for other keys, and for what has no place of its own. */
export function moveByKey(ids: readonly string[], event: Pick<KeyboardEvent, 'key' | 'shiftKey'>): boolean {
  const arrow = arrows[event.key];
  const grip = arrow ? groupGrip(useWorkbench.getState().data, ids) : [];
  if (!arrow || grip.length === 0) return false;
  const step = event.shiftKey ? 0.1 : 0.01;
  editValues(movedGrip(grip, [arrow[0] * step, arrow[1] * step], true), `move ${ids.join(' ')}`);
  return true;
}

/** Moving a thing, with everything else in hand, by pointer or arrow keys; each drag is one step of undo. */
export function useMove(id: string) {
  const movable = useWorkbench((s) => knownGrip(s.data, id).length > 0);
  const drag = useRef<Drag | null>(null);
  return {
    movable,
    start(event: PointerEvent<SVGGElement>) {
      drag.current = taken(id, event.clientX, event.clientY);
      if (drag.current) event.currentTarget.setPointerCapture(event.pointerId);
    },
    during(event: PointerEvent<SVGGElement>) {
      const { current } = drag;
      const { view } = usePlanView.getState();
      if (!current || !view) return;
      const [dx, dy] = [event.clientX - current.x, event.clientY - current.y];
      if (!current.moving && Math.hypot(dx, dy) > slack) {
        current.moving = true;
        endEdit();
      }
      if (current.moving) lead(current, [dx / view.scale, -dy / view.scale], event.altKey);
    },
    /** @returns true when the press was a drag */
    end(): boolean {
      const moved = drag.current?.moving ?? false;
      if (moved) endEdit();
      drag.current = null;
      hideSnap();
      return moved;
    },
    byKey: (event: KeyboardEvent): boolean => moveByKey(handOf(id), event),
  };
}
