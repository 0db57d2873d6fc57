import { type KeyboardEvent, type PointerEvent, useEffect, useRef } from 'react';
import type { Vec2 } from '../engine/contract.js';
import { unspoken } from '../plan/unspoken.js';
import { moved, type PlanView, type Size, scaled, toPlan, toScreen } from '../plan/view.js';
import { setPlanView } from '../plan/view-store.js';
import { useWorkbench } from '../state/store.js';
import { drawingTexts } from '../texts/drawing.js';
import { Ghost } from './ghost.js';
import { happen, leave, moveBy, pointAt, putHere, useHand } from './hand.js';
import { unitsOf } from './length-text.js';
import { type Scene, sceneOf } from './scene.js';
import { placeOf, type Session, shownOf } from './session.js';
import { SnapLayer } from './snap/shown.js';

const { hand: say } = drawingTexts;

interface DrawnOn {
  readonly design: Scene['design'];
  readonly view: PlanView;
  readonly size: Size;
}

/** The tool in hand lies over the plan: it takes the pointer and the keys until it is laid down. */
export function DrawingHand({ design, view, size }: DrawnOn) {
  const session = useHand((s) => s.session);
  return session && <InHand key={session.tool.id} session={session} design={design} view={view} size={size} />;
}

/** Pixels before a press becomes a drag from one point to the next. */
const slack = 12;

function InHand({ session, design, view, size }: DrawnOn & { readonly session: Session }) {
  const data = useWorkbench((s) => s.data);
  const byKeys = useHand((s) => s.byKeys);
  const pressed = useRef<{ readonly x: number; readonly y: number } | null>(null);
  const panned = useRef<{ readonly x: number; readonly y: number } | null>(null);
  const sheet = useRef<SVGSVGElement>(null);
  useEffect(() => {
    sheet.current?.focus({ preventScroll: true });
    return () => void requestAnimationFrame(backToPlan);
  }, []);
  const scene = sceneOf(data, design);
  const point = (event: PointerEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    const at = toPlan(view, size, [event.clientX - box.left, event.clientY - box.top]);
    pointAt(at, { alt: event.altKey, shift: event.shiftKey });
  };
  /** Lines have their points where the pointer is pressed, things where it is let go. */
  const byPoints = session.tool.set !== undefined || session.tool.from !== undefined;
  return (
    <svg
      ref={sheet}
      className="in-hand-sheet"
      width={size.width}
      height={size.height}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: points are set by keys as well
      tabIndex={0}
      role="application"
      aria-label={say.label(session.tool.title)}
      aria-describedby="hand-hint hand-keys"
      onKeyDown={(event) => key(event, session, size, view, unitsOf(data) === 'imperial')}
      onPointerDown={(event) => {
        event.currentTarget.focus({ preventScroll: true });
        event.currentTarget.setPointerCapture(event.pointerId);
        if (event.button === 1) panned.current = { x: event.clientX, y: event.clientY };
        if (event.button !== 0) return;
        pressed.current = { x: event.clientX, y: event.clientY };
        point(event);
        if (byPoints) putHere();
      }}
      onPointerMove={(event) => {
        const { current: last } = panned;
        if (!last) return point(event);
        panned.current = { x: event.clientX, y: event.clientY };
        setPlanView(moved(view, event.clientX - last.x, event.clientY - last.y));
      }}
      onPointerUp={(event) => {
        panned.current = null;
        const { current: down } = pressed;
        pressed.current = null;
        if (!down) return;
        point(event);
        const dragged = Math.hypot(event.clientX - down.x, event.clientY - down.y) > slack;
        if (!byPoints || (dragged && useHand.getState().session)) putHere();
      }}
      onPointerCancel={() => {
        pressed.current = null;
        panned.current = null;
      }}
    >
      <title>{say.label(session.tool.title)}</title>
      <rect className="reach" width={size.width} height={size.height} />
      <Ghost shown={shownOf(session, scene)} view={view} size={size} />
      {byKeys && <Crosshair at={toScreen(view, size, placeOf(session, scene))} />}
      <SnapLayer view={view} size={size} />
    </svg>
  );
}

/** Whoever drew by keys goes on from the plan, unless the focus already went elsewhere. */
function backToPlan(): void {
  if (document.activeElement === document.body)
    document.querySelector<SVGElement>('.plan > svg[role="group"]')?.focus({ preventScroll: true });
}

function Crosshair({ at: [x, y] }: { readonly at: Vec2 }) {
  return (
    <g className="crosshair" {...unspoken}>
      <path d={`M${x - 16} ${y}H${x - 3}M${x + 3} ${y}H${x + 16}M${x} ${y - 16}V${y - 3}M${x} ${y + 3}V${y + 16}`} />
    </g>
  );
}

const arrows: Readonly<Record<string, { readonly by: Vec2; readonly angle: number }>> = {
  ArrowRight: { by: [1, 0], angle: 0 },
  ArrowUp: { by: [0, 1], angle: Math.PI / 2 },
  ArrowLeft: { by: [-1, 0], angle: Math.PI },
  ArrowDown: { by: [0, -1], angle: -Math.PI / 2 },
};

const inch = 0.0254;
/** Plain, with Shift, with Ctrl [m]. */
const steps = { metric: [0.01, 0.1, 0.001], imperial: [inch / 2, 6 * inch, inch / 16] } as const;

function key(event: KeyboardEvent, session: Session, size: Size, view: PlanView, imperial: boolean): void {
  const arrow = arrows[event.key];
  const ctrl = event.ctrlKey || event.metaKey;
  // Undo takes back what is not yet in the brief first.
  if (ctrl && event.key.toLowerCase() === 'z' && !event.shiftKey && session.tool.back?.(session.state)) {
    happen({ kind: 'back' });
    event.preventDefault();
    event.stopPropagation();
    return;
  }
  if (event.altKey || (ctrl && !arrow)) return;
  if (arrow && session.typed.length !== undefined && session.typed.angle === undefined) {
    happen({ kind: 'type', field: 'angle', value: arrow.angle });
    putHere();
  } else if (arrow) {
    const step = steps[imperial ? 'imperial' : 'metric'][event.shiftKey ? 1 : ctrl ? 2 : 0];
    moveBy([arrow.by[0] * step, arrow.by[1] * step]);
  } else if (event.key === 'Enter' || event.key === ' ') putHere();
  else if (event.key === 'Backspace') happen({ kind: 'back' });
  else if (event.key.toLowerCase() === 'r' && !event.shiftKey && session.tool.turned) happen({ kind: 'turn' });
  else if (event.key === 'Escape') leave();
  else if (event.key === '+' || event.key === '=') byFactor(view, size, 1.25);
  else if (event.key === '-') byFactor(view, size, 0.8);
  else if (/^[\d.,]$/.test(event.key)) {
    // The key itself then types into the field that has the focus.
    event.stopPropagation();
    focusField();
    return;
  } else return;
  event.preventDefault();
  event.stopPropagation();
}

const byFactor = (view: PlanView, size: Size, factor: number): void =>
  setPlanView(scaled(view, size, [size.width / 2, size.height / 2], factor));

/** A digit starts the first number that is not typed yet. */
function focusField(): void {
  const fields = [...document.querySelectorAll<HTMLInputElement>('.hand-foot input[data-field]')];
  (fields.find((each) => each.value === '') ?? fields[0])?.focus();
}
