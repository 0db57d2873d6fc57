import { type KeyboardEvent, type PointerEvent, type RefObject, useEffect, useRef, useState } from 'react';
import type { Design, Vec2 } from '../engine/contract.js';
import { boxOf } from '../plan/card-corner.js';
import { fitted, moved, type PlanView, type Size, scaled } from '../plan/view.js';
import { wallThickness } from '../plan/wall-band.js';

/** Room round the walls, pixels. */
const margin = 26;

/** How far the leaves of doors reach into the room and out of it. */
const swings = ({ room }: Design): Vec2[] =>
  room.doors.flatMap(({ leaves }) =>
    leaves.map(({ hinge, leaf, open }): Vec2 => [hinge[0] + leaf * Math.cos(open), hinge[1] + leaf * Math.sin(open)]),
  );

/** Both rooms whole, with the swing of their doors. */
const whole = (before: Design, after: Design, size: Size): PlanView => {
  const { min, max } = boxOf([before, after].flatMap((d) => [...d.room.outline, ...swings(d)]));
  const wall = wallThickness;
  return fitted({ min: [min[0] - wall, min[1] - wall], max: [max[0] + wall, max[1] + wall] }, size, margin);
};

const keyPan: Readonly<Record<string, Vec2>> = {
  ArrowLeft: [60, 0],
  ArrowRight: [-60, 0],
  ArrowUp: [0, 60],
  ArrowDown: [0, -60],
};

/** Pixels before a press becomes a drag. */
const slack = 4;

/** The view of an overlay: fitted to its frame until a person moves or scales it, and again on request. */
export function useOverlayView(frame: RefObject<HTMLDivElement | null>, before: Design, after: Design) {
  const [size, setSize] = useState<Size>({ width: 0, height: 0 });
  const [chosen, choose] = useState<PlanView | null>(null);
  const view = chosen ?? (size.width > 0 ? whole(before, after, size) : null);
  const drag = useRef<{ x: number; y: number; moving: boolean } | null>(null);
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    const measure = () => setSize({ width: element.clientWidth, height: element.clientHeight });
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    measure();
    return () => observer.disconnect();
  }, [frame]);
  // React listens to the wheel passively; scaling must keep the page from scrolling.
  useEffect(() => {
    const element = frame.current;
    if (!element || !view) return;
    const onWheel = (event: WheelEvent) => {
      event.preventDefault();
      const box = element.getBoundingClientRect();
      choose(scaled(view, size, [event.clientX - box.left, event.clientY - box.top], Math.exp(-event.deltaY * 0.0015)));
    };
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => element.removeEventListener('wheel', onWheel);
  }, [frame, view, size]);
  const byFactor = (factor: number) => {
    if (view) choose(scaled(view, size, [size.width / 2, size.height / 2], factor));
  };
  const fit = () => choose(null);
  const onKeyDown = (event: KeyboardEvent) => {
    const by = keyPan[event.key];
    if (!view || event.ctrlKey || event.metaKey || event.altKey) return;
    if (by) choose(moved(view, ...by));
    else if (event.key === '+' || event.key === '=') byFactor(1.25);
    else if (event.key === '-') byFactor(0.8);
    else if (event.key === '0') fit();
    else return;
    event.preventDefault();
  };
  const pan = {
    onPointerDown(event: PointerEvent<SVGSVGElement>) {
      if (event.button === 0) drag.current = { x: event.clientX, y: event.clientY, moving: false };
    },
    onPointerMove(event: PointerEvent<SVGSVGElement>) {
      const from = drag.current;
      if (!from || !view) return;
      const [dx, dy] = [event.clientX - from.x, event.clientY - from.y];
      if (!from.moving && Math.hypot(dx, dy) < slack) return;
      if (!from.moving) event.currentTarget.setPointerCapture(event.pointerId);
      drag.current = { x: event.clientX, y: event.clientY, moving: true };
      choose(moved(view, dx, dy));
    },
    onPointerUp() {
      drag.current = null;
    },
    onPointerCancel() {
      drag.current = null;
    },
  };
  return { view, size, fit, byFactor, onKeyDown, pan };
}
