import { type KeyboardEvent, type PointerEvent, useEffect, useRef } from 'react';
import { BackgroundLayer } from '../arrange/background/background-layer.js';
import { ArrangeOnSheet } from '../arrange/on-sheet.js';
import { ArrangeOverSheet } from '../arrange/over-sheet.js';
import { sheetPointers } from '../arrange/pointers.js';
import { useSheetState } from '../arrange/sheet-state.js';
import { useArrange } from '../arrange/state.js';
import { DrawingHand } from '../drawing/drawing-hand.js';
import { HandFoot } from '../drawing/hand-foot.js';
import type { Computed, Design } from '../engine/contract.js';
import { OverlayLayer } from '../overlay/overlay-layer.js';
import { useOverlay } from '../overlay/overlay-store.js';
import { OverlayStrip } from '../overlay/overlay-strip.js';
import { OverlayValues } from '../overlay/overlay-values.js';
import { select, useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';
import { BeamLayer } from './beam-layer.js';
import { CornerLayer } from './corner-layer.js';
import { RoomDimensions } from './dimensions.js';
import { FindingMarks } from './finding-marks.js';
import { HoverName, hoverOff, hoverOver } from './hover-name.js';
import { Labels } from './labels.js';
import { moveByKey } from './move.js';
import { PartsLayer } from './parts-layer.js';
import { PlaceInputs, PlaceLines } from './place-inputs.js';
import { PointedLayer } from './pointed-layer.js';
import { RoomLayer } from './room-layer.js';
import { TableLayer } from './table-layer.js';
import { ThingCard } from './thing-card.js';
import { unspoken } from './unspoken.js';
import { moved, type PlanView, type Size, scaled } from './view.js';
import { setPlanView, usePlanView } from './view-store.js';
import { showWholeRoom } from './whole-room.js';

/** The plan: drawn from the design, to be touched, moved and scaled. */
export function SheetPlan({ computed }: { readonly computed: Computed }) {
  const { design } = computed;
  const { view, size, type } = usePlanView();
  // The writings of an overlay take the place of the names.
  const laid = useOverlay((s) => s.shown !== null);
  const frame = useRef<HTMLDivElement>(null);
  useSize(frame);
  useFirstFit(design);
  useWheel(frame);
  const pan = usePan();
  const inLetters = lettersView(view, size, type);
  return (
    <div className="plan" ref={frame} {...useSheetState()} {...sheetPointers}>
      {view && (
        // biome-ignore lint/a11y/useSemanticElements: a drawing is no fieldset
        <svg
          className="sheet-drawing"
          width={size.width}
          height={size.height}
          // biome-ignore lint/a11y/noNoninteractiveTabindex: the plan is moved and scaled by keys
          tabIndex={0}
          role="group"
          aria-label={texts.plan.label}
          onKeyDown={(e) => planKey(e, design)}
          onPointerOver={hoverOver}
          onPointerLeave={hoverOff}
          {...pan}
        >
          <title>{texts.views.plan}</title>
          <desc>
            {texts.plan.summary(
              design.tables.length,
              design.enclosures.length,
              design.runs.length,
              design.lasers.length,
            )}
          </desc>
          <Hatch />
          <BackgroundLayer view={view} size={size} />
          <g transform={matrix(view, size)}>
            <RoomLayer room={design.room} />
            <TableLayer design={design} />
            <PartsLayer design={design} />
            <BeamLayer design={design} />
            <OverlayLayer outline={design.room.outline} />
            <PointedLayer />
            <CornerLayer design={design} scale={view.scale} />
          </g>
          <RoomDimensions design={design} view={view} size={size} />
          <g transform={`scale(${type})`}>{!laid && inLetters && <Labels computed={computed} {...inLetters} />}</g>
          <PlaceLines design={design} view={view} size={size} />
          <g transform={`scale(${type})`}>
            {inLetters && <FindingMarks {...inLetters} />}
            {inLetters && <OverlayValues {...inLetters} />}
          </g>
          <ArrangeOnSheet design={design} view={view} size={size} />
          <HoverName size={size} type={type} />
          <g transform={`scale(${type})`}>
            <North x={size.width / type - 30} y={76} />
          </g>
        </svg>
      )}
      {view && <PlaceInputs design={design} view={view} size={size} />}
      <ArrangeOverSheet design={design} view={view} size={size} />
      <OverlayStrip />
      <PlanButtons design={design} />
      <ThingCard design={design} />
      {view && <DrawingHand design={design} view={view} size={size} />}
      <HandFoot design={design} />
    </div>
  );
}

/** The view in units that grow with the letters of the page, for writing and marks. */
const lettersView = (view: PlanView | null, size: Size, type: number) =>
  view && {
    view: { middle: view.middle, scale: view.scale / type },
    size: { width: size.width / type, height: size.height / type },
  };

const matrix = (view: PlanView, size: Size): string =>
  `matrix(${view.scale} 0 0 ${-view.scale} ${size.width / 2 - view.middle[0] * view.scale} ${size.height / 2 + view.middle[1] * view.scale})`;

function Hatch() {
  return (
    <defs>
      <pattern id="hatch" width="0.07" height="0.07" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path d="M0 0V0.07" className="hatch" />
      </pattern>
    </defs>
  );
}

function North({ x, y }: { readonly x: number; readonly y: number }) {
  return (
    <g className="north" transform={`translate(${x} ${y})`} {...unspoken}>
      <path d="M0 -22V14M-6 -9L0 -22L6 -9" />
      <text y="28" textAnchor="middle">
        {texts.plan.north}
      </text>
    </g>
  );
}

function PlanButtons({ design }: { readonly design: Design }) {
  return (
    <div className="plan-buttons">
      <button type="button" onClick={() => byFactor(1.25)} aria-label={texts.plan.closer} title={texts.plan.closer}>
        +
      </button>
      <button type="button" onClick={() => byFactor(0.8)} aria-label={texts.plan.farther} title={texts.plan.farther}>
        −
      </button>
      <button type="button" onClick={() => showWholeRoom(design)}>
        {texts.plan.fit}
      </button>
    </div>
  );
}

function byFactor(factor: number): void {
  const { view, size } = usePlanView.getState();
  if (view) setPlanView(scaled(view, size, [size.width / 2, size.height / 2], factor));
}

const keyPan: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [60, 0],
  ArrowRight: [-60, 0],
  ArrowUp: [0, 60],
  ArrowDown: [0, -60],
};

function planKey(event: KeyboardEvent, design: Design): void {
  const { view } = usePlanView.getState();
  const by = keyPan[event.key];
  if (!view || event.ctrlKey || event.metaKey) return;
  const { selection } = useWorkbench.getState();
  if (by && selection.length > 1 && moveByKey(selection, event)) {
    // Several things in hand follow the arrows wherever the focus is on the sheet.
  } else if (by) setPlanView(moved(view, ...by));
  else if (event.key === '+' || event.key === '=') byFactor(1.25);
  else if (event.key === '-') byFactor(0.8);
  else if (event.key === '0') showWholeRoom(design);
  else if (event.key === 'Escape' && useArrange.getState().tool === null) select(null);
  else return;
  event.preventDefault();
}

/** Size of letters on a screen of common size, for which everything in pixels is made. */
const letters = 13;

function useSize(frame: React.RefObject<HTMLDivElement | null>): void {
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    const measure = () =>
      usePlanView.setState({
        size: { width: element.clientWidth, height: element.clientHeight },
        type: Number.parseFloat(getComputedStyle(element).fontSize) / letters || 1,
      });
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    measure();
    return () => observer.disconnect();
  }, [frame]);
}

/** Fits a room that was not shown before, and again when the sheet itself changes its size. */
function useFirstFit(design: Design): void {
  const size = usePlanView((s) => s.size);
  const legend = usePlanView((s) => s.legend);
  const room = `${design.room.name} ${design.room.outline.length}`;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a room that only changes its numbers keeps its view
  useEffect(() => {
    if (size.width > 0) showWholeRoom(design);
  }, [room, size.width, size.height]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a legend that comes or goes moves only a plan that nobody has moved
  useEffect(() => {
    if (usePlanView.getState().whole) showWholeRoom(design);
  }, [legend]);
}

/** React listens to the wheel passively; scaling must keep the page from scrolling. */
function useWheel(frame: React.RefObject<HTMLDivElement | null>): void {
  useEffect(() => {
    const element = frame.current;
    const onWheel = (event: WheelEvent) => {
      const { view, size } = usePlanView.getState();
      if (!view || !element || (event.target as Element).closest('.thing-card, .overlay-strip, .sheet-panel')) return;
      event.preventDefault();
      const box = element.getBoundingClientRect();
      const at = [event.clientX - box.left, event.clientY - box.top] as const;
      setPlanView(scaled(view, size, at, Math.exp(-event.deltaY * 0.0015)));
    };
    element?.addEventListener('wheel', onWheel, { passive: false });
    return () => element?.removeEventListener('wheel', onWheel);
  }, [frame]);
}

function usePan() {
  const last = useRef<readonly [number, number] | null>(null);
  const travelled = useRef(0);
  return {
    onPointerDown(event: PointerEvent<SVGSVGElement>) {
      event.currentTarget.setPointerCapture(event.pointerId);
      last.current = [event.clientX, event.clientY];
      travelled.current = 0;
    },
    onPointerMove(event: PointerEvent<SVGSVGElement>) {
      const { view } = usePlanView.getState();
      if (!last.current || !view) return;
      const [dx, dy] = [event.clientX - last.current[0], event.clientY - last.current[1]];
      travelled.current += Math.hypot(dx, dy);
      last.current = [event.clientX, event.clientY];
      setPlanView(moved(view, dx, dy));
    },
    onPointerUp() {
      if (last.current && travelled.current < 4) select(null);
      last.current = null;
    },
  };
}
