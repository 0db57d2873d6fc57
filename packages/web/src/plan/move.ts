import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import type { Vec2 } from '../engine/contract.js';
import { editValues, endEdit, useWorkbench } from '../state/store.js';
import { carrierOf, gripOf, movedGrip, shiftBetween } from './grips.js';
import { knownGrip } from './known-grips.js';
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

/** Moves a thing by a distance in the room, from where a grip on it was taken. */
function put(id: string, grip: ReturnType<typeof gripOf>, by: Vec2, snap: boolean): void {
  editValues(movedGrip(grip, by, snap), `move ${id}`);
}

/** Moves a thing by an exact distance: a dimension was typed. */
export function shift(id: string, by: Vec2): void {
  put(id, gripOf(useWorkbench.getState().data, id), by, false);
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

interface Drag {
  readonly grip: ReturnType<typeof gripOf>;
  readonly x: number;
  readonly y: number;
  moving: boolean;
}

/** Moving a thing by pointer or arrow keys; each drag is one step of undo. */
export function useMove(id: string) {
  const movable = useWorkbench((s) => knownGrip(s.data, id).length > 0);
  const drag = useRef<Drag | null>(null);
  return {
    movable,
    start(event: PointerEvent<SVGGElement>) {
      const grip = gripOf(useWorkbench.getState().data, id);
      if (grip.length === 0) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      drag.current = { grip, x: event.clientX, y: event.clientY, moving: false };
    },
    during(event: PointerEvent<SVGGElement>) {
      const { current } = drag;
      const { view } = usePlanView.getState();
      if (!current || !view) return;
      const [dx, dy] = [event.clientX - current.x, event.clientY - current.y];
      current.moving ||= Math.hypot(dx, dy) > slack;
      if (current.moving) put(id, current.grip, [dx / view.scale, -dy / view.scale], true);
    },
    end() {
      if (drag.current?.moving) endEdit();
      drag.current = null;
    },
    byKey(event: KeyboardEvent): boolean {
      const arrow = arrows[event.key];
      const grip = arrow ? gripOf(useWorkbench.getState().data, id) : [];
      if (!arrow || grip.length === 0) return false;
      const step = event.shiftKey ? 0.1 : 0.01;
      put(id, grip, [arrow[0] * step, arrow[1] * step], true);
      return true;
    },
  };
}
