import { millimetreText } from '@cloche/engine';
import { type KeyboardEvent, type PointerEvent, useMemo, useRef } from 'react';
import type { Design, Vec3 } from '../engine/contract.js';
import { boxOf } from '../plan/card-corner.js';
import { texts } from '../texts.js';
import { cutLimits } from './cut-limits.js';
import { keySteps } from './length-field.js';
import { onScreen, usePin } from './pins.js';
import { type Cut, isKept } from './section.js';
import { changeCut, useSpace } from './space-store.js';

/** The handles by which cuts are dragged over the drawing. */
export function SectionHandles({ room }: { readonly room: Design['room'] }) {
  const cuts = useSpace((s) => s.cuts);
  return cuts.map((cut, i) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: a cut is known by its place in the list of two
    <Handle key={i} index={i} cut={cut} others={cuts.filter((o) => o !== cut)} room={room} />
  ));
}

interface HandleProps {
  readonly index: number;
  readonly cut: Cut;
  readonly others: readonly Cut[];
  readonly room: Design['room'];
}

/** Upright pixels that stand for a metre when the axis points at the eye, where no drag could follow it. */
const pixelsPerMetre = 160;

function Handle({ index, cut, others, room }: HandleProps) {
  const element = useRef<HTMLButtonElement>(null);
  const place = useMemo(() => handlePlace(cut, others, room), [cut, others, room]);
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

/** Over an end of an upright cut, at a corner of a level one; at the near ones unless another cut takes them away. */
function handlePlace(cut: Cut, others: readonly Cut[], room: Design['room']): Vec3 {
  const { min, max } = boxOf(room.outline);
  const over = room.height + 0.15;
  const { axis, at } = cut;
  const places: readonly Vec3[] =
    axis === 0
      ? [min[1], max[1]].map((y): Vec3 => [at, y, over])
      : axis === 1
        ? [max[0], min[0]].map((x): Vec3 => [x, at, over])
        : [max[0], min[0]].flatMap((x) => [min[1], max[1]].map((y): Vec3 => [x, y, at]));
  // A level cut that takes the upper part away leaves the upright one nothing to stand over.
  const ceiling = others.find((o) => o.axis === 2 && o.keeps === 'lesser');
  const low = (p: Vec3): Vec3 => (ceiling && axis !== 2 ? [p[0], p[1], ceiling.at] : p);
  const kept = places.map(low).find((p) => others.every((o) => isKept(o, p)));
  return kept ?? places[0]!;
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
