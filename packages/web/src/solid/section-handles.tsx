import { millimetreText } from '@cloche/engine';
import { type KeyboardEvent, type PointerEvent, useMemo, useRef } from 'react';
import type { Design, Vec3 } from '../engine/contract.js';
import { boxOf } from '../plan/card-corner.js';
import { texts } from '../texts.js';
import { cutLimits } from './cut-limits.js';
import { keySteps } from './length-field.js';
import { onScreen, usePin } from './pins.js';
import type { Cut } from './section.js';
import { changeCut, useSpace } from './space-store.js';

/** The handles by which cuts are dragged over the drawing. */
export function SectionHandles({ room }: { readonly room: Design['room'] }) {
  const cuts = useSpace((s) => s.cuts);
  return cuts.map((cut, i) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: a cut is known by its place in the list of two
    <Handle key={i} index={i} cut={cut} room={room} />
  ));
}

interface HandleProps {
  readonly index: number;
  readonly cut: Cut;
  readonly room: Design['room'];
}

/** Upright pixels that stand for a metre when the axis points at the eye, where no drag could follow it. */
const pixelsPerMetre = 160;

function Handle({ index, cut, room }: HandleProps) {
  const element = useRef<HTMLButtonElement>(null);
  const place = useMemo(() => handlePlace(cut, room), [cut, room]);
  usePin(element, place);
  const [low, high] = cutLimits(room, cut.axis);
  const held = useRef<{ readonly x: number; readonly y: number; readonly at: number } | null>(null);
  const put = (at: number) => changeCut(index, { at: Math.min(high, Math.max(low, at)) });
  const onPointerDown = (event: PointerEvent<HTMLButtonElement>) => {
    event.currentTarget.setPointerCapture(event.pointerId);
    held.current = { x: event.clientX, y: event.clientY, at: cut.at };
  };
  const onPointerMove = (event: PointerEvent) => {
    if (!held.current) return;
    const { x, y, at } = held.current;
    put(at + alongAxis(place, cut.axis, event.clientX - x, event.clientY - y));
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const sign = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1 }[event.key];
    if (event.key === 'Home') put(low);
    else if (event.key === 'End') put(high);
    else if (sign) put(cut.at + sign * keySteps[event.shiftKey ? 1 : 0]);
    else return;
    event.preventDefault();
  };
  const from = texts.space.cut.axes[cut.axis];
  return (
    <button
      ref={element}
      type="button"
      className="pin cut-handle"
      role="slider"
      aria-label={texts.space.cut.handle(index + 1, from)}
      aria-valuemin={Math.round(low * 1000)}
      aria-valuemax={Math.round(high * 1000)}
      aria-valuenow={Math.round(cut.at * 1000)}
      aria-valuetext={`${millimetreText(cut.at)} ${from}`}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={() => {
        held.current = null;
      }}
      onKeyDown={onKeyDown}
    >
      <span>{index + 1}</span>
    </button>
  );
}

/** Over the near end of an upright cut, at a corner of a level one, so that no two lie on each other. */
function handlePlace({ axis, at }: Cut, room: Design['room']): Vec3 {
  const { min, max } = boxOf(room.outline);
  const over = room.height + 0.15;
  if (axis === 0) return [at, min[1], over];
  if (axis === 1) return [max[0], at, over];
  return [max[0], min[1], at];
}

/** Metres along an axis that a drag over the drawing means at a place. */
function alongAxis(place: Vec3, axis: 0 | 1 | 2, dx: number, dy: number): number {
  const short = 0.1;
  const next: Vec3 = [place[0], place[1], place[2]].map((v, k) => (k === axis ? v + short : v)) as unknown as Vec3;
  const [a, b] = [onScreen(place), onScreen(next)];
  const way = a && b ? ([(b[0] - a[0]) / short, (b[1] - a[1]) / short] as const) : null;
  const length2 = way ? way[0] ** 2 + way[1] ** 2 : 0;
  if (!way || length2 < 100) return -dy / pixelsPerMetre;
  return (dx * way[0] + dy * way[1]) / length2;
}
