import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { pathOfThing } from '../brief/find.js';
import { lengthLike, metresOf, snapped } from '../brief/lengths.js';
import { type Path, valueAt } from '../brief/path.js';
import type { Vec2 } from '../engine/contract.js';
import { editValues, endEdit, useWorkbench } from '../state/store.js';
import { usePlanView } from './view-store.js';

/** Lists whose entries stand in the room by a place of their own; a laser's place is measured on its table. */
const inRoom = new Set([
  'tables',
  'columns',
  'obstructions',
  'sprinklers',
  'detectors',
  'exitSigns',
  'stops',
  'sensors',
  'luminaires',
  'airTerminals',
]);

interface Place {
  readonly path: Path;
  readonly texts: readonly [unknown, unknown];
  readonly at: Vec2;
}

function placeIn(data: unknown, id: string): Place | null {
  const path = pathOfThing(data, id);
  if (!path?.some((s) => inRoom.has(String(s)))) return null;
  const texts = [valueAt(data, [...path, 'at', 0]), valueAt(data, [...path, 'at', 1])] as const;
  const [x, y] = [metresOf(texts[0]), metresOf(texts[1])];
  return x === null || y === null ? null : { path, texts, at: [x, y] };
}

const placeOf = (id: string): Place | null => placeIn(useWorkbench.getState().data, id);

/**
 * How far a thing was moved since the drawing was computed, as a transform in plan metres: it follows the hand at once, and the
 * rest of the sheet when the engine has answered.
 */
export function useAhead(id: string): string | undefined {
  return useWorkbench((s) => {
    if (s.data === s.computedData) return undefined;
    const [now, drawn] = [placeIn(s.data, id), placeIn(s.computedData, id)];
    if (!now || !drawn) return undefined;
    const [dx, dy] = [now.at[0] - drawn.at[0], now.at[1] - drawn.at[1]];
    return dx === 0 && dy === 0 ? undefined : `translate(${dx} ${dy})`;
  });
}

function put(id: string, place: Place, to: Vec2): void {
  editValues(
    [0, 1].map((i) => [[...place.path, 'at', i], lengthLike(place.texts[i], snapped(place.texts[i], to[i]!))] as const),
    `move ${id}`,
  );
}

const arrows: Readonly<Record<string, Vec2>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Pixels before a press becomes a drag. */
const slack = 4;

/** Moving a thing by pointer or arrow keys; each drag is one step of undo. */
export function useMove(id: string) {
  const movable = useWorkbench((s) => pathOfThing(s.data, id)?.some((step) => inRoom.has(String(step))) ?? false);
  const drag = useRef<{ place: Place; x: number; y: number; moving: boolean } | null>(null);
  return {
    movable,
    start(event: PointerEvent<SVGGElement>) {
      const place = placeOf(id);
      if (!place) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      drag.current = { place, x: event.clientX, y: event.clientY, moving: false };
    },
    during(event: PointerEvent<SVGGElement>) {
      const { current } = drag;
      const { view } = usePlanView.getState();
      if (!current || !view) return;
      const [dx, dy] = [event.clientX - current.x, event.clientY - current.y];
      current.moving ||= Math.hypot(dx, dy) > slack;
      const { at } = current.place;
      if (current.moving) put(id, current.place, [at[0] + dx / view.scale, at[1] - dy / view.scale]);
    },
    end() {
      if (drag.current?.moving) endEdit();
      drag.current = null;
    },
    byKey(event: KeyboardEvent): boolean {
      const arrow = arrows[event.key];
      const place = arrow && placeOf(id);
      if (!arrow || !place) return false;
      const step = event.shiftKey ? 0.1 : 0.01;
      put(id, place, [place.at[0] + arrow[0] * step, place.at[1] + arrow[1] * step]);
      return true;
    },
  };
}
