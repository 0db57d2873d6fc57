import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import type { Design, Vec2 } from '../engine/contract.js';
import { type PlanView, type Size, toPlan, toScreen } from '../plan/view.js';
import { editText, endEdit, useWorkbench } from '../state/store.js';
import { arrangeTexts as say } from '../texts/arrange.js';
import { arrangedText } from './arranged.js';
import { boxRoundAll } from './boxes.js';
import { groupOf, isInWall } from './members.js';
import { turning } from './motion.js';
import { tellAll } from './state.js';
import { middleOfPlaces, transformed } from './transformed.js';

interface Start {
  readonly text: string;
  readonly data: unknown;
  readonly ids: readonly string[];
  readonly middle: Vec2;
  /** Direction from the middle to where the grip was taken [rad]. */
  readonly angle: number;
}

const step = Math.PI / 12;

/** A ring beside what is in hand: taken and led round, everything turns about its middle. */
export function TurnGrip({
  design,
  view,
  size,
}: {
  readonly design: Design;
  readonly view: PlanView;
  readonly size: Size;
}) {
  const selection = useWorkbench((s) => s.selection);
  const data = useWorkbench((s) => s.data);
  const start = useRef<Start | null>(null);
  const middle = canTurn(data, selection) ? middleOfPlaces(data, selection) : null;
  const box = middle ? boxRoundAll(design, selection) : undefined;
  if (!middle || !box) return null;
  const corner = toScreen(view, size, box.max);
  const rest: Vec2 = [corner[0] + 16, corner[1] - 16];
  const begin = (angle: number): Start => ({ text: useWorkbench.getState().text, data, ids: selection, middle, angle });
  const onPointerDown = (event: PointerEvent<SVGGElement>) => {
    if (event.button !== 0) return;
    event.stopPropagation();
    event.currentTarget.setPointerCapture(event.pointerId);
    endEdit();
    start.current = begin(angleAt(event, middle, view, size));
  };
  const onPointerMove = (event: PointerEvent<SVGGElement>) => {
    const { current } = start;
    if (!current) return;
    event.stopPropagation();
    const raw = angleAt(event, middle, view, size) - current.angle;
    turnFrom(current, event.altKey ? raw : Math.round(raw / step) * step);
  };
  const onPointerUp = () => {
    if (start.current) endEdit();
    start.current = null;
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const sign = event.key === 'ArrowLeft' ? 1 : event.key === 'ArrowRight' ? -1 : 0;
    if (sign === 0) return;
    event.preventDefault();
    event.stopPropagation();
    turnFrom(begin(0), sign * (event.shiftKey ? Math.PI / 180 : step));
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing has no button element
    <g
      className="turn-grip"
      tabIndex={0}
      role="button"
      aria-label={say.turnGrip}
      transform={`translate(${rest[0]} ${rest[1]})`}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={onPointerUp}
      onPointerCancel={onPointerUp}
      onKeyDown={onKeyDown}
    >
      <circle className="reach" r={13} />
      <path d="M-5.5 4A6.8 6.8 0 1 1 4 5.5" />
      <path className="head" d="M-8.6 1.6L-5.2 4.6L-2.4 1" />
    </g>
  );
}

const canTurn = (data: unknown, ids: readonly string[]): boolean => {
  const { members } = groupOf(data, ids);
  if (members.length > 1) return members.some((member) => !isInWall(member));
  return members.some(({ list }) => turnable.has(list));
};
/** Alone, a point has nothing to be turned. */
const turnable = new Set([
  'tables',
  'equipment',
  'columns',
  'obstructions',
  'beams',
  'runs',
  'lasers',
  'airTerminals',
  'luminaires',
]);

function angleAt(event: PointerEvent<SVGGElement>, middle: Vec2, view: PlanView, size: Size): number {
  const box = event.currentTarget.ownerSVGElement?.getBoundingClientRect();
  if (!box) return 0;
  const [x, y] = toPlan(view, size, [event.clientX - box.left, event.clientY - box.top]);
  return Math.atan2(y - middle[1], x - middle[0]);
}

/** Always from the state that the grip was taken in, so that no rounding adds up. */
function turnFrom({ text, data, ids, middle }: Start, angle: number): void {
  const turned = transformed(data, ids, turning(middle, angle));
  editText(arrangedText(text, turned), `turn ${ids.join(' ')}`);
  tellAll([say.turnedBy(Math.round((angle * 180) / Math.PI)), ...turned.told]);
}
