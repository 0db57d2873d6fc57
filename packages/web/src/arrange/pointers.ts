import type { DragEvent, MouseEvent, PointerEvent } from 'react';
import type { Vec2 } from '../engine/contract.js';
import { type Box, fitted, toPlan } from '../plan/view.js';
import { setPlanView, usePlanView } from '../plan/view-store.js';
import { selectSeveral, useWorkbench } from '../state/store.js';
import { arrangeTexts as say } from '../texts/arrange.js';
import { pickBackgroundPoint } from './background/picking.js';
import { takeInBackground } from './background/take-in.js';
import { framed } from './framed.js';
import { isLocked, useLayers } from './layers.js';
import { hoverMeasure, pickMeasurePoint } from './measure/state.js';
import { idsLike } from './members.js';
import { readOut, takeTool, tellAll, useArrange } from './state.js';

/** Files that may lie under the drawing, by their names; what they are is told by what is in them. */
const underDrawing = /\.(png|jpe?g|webp|dxf)$/i;

type Sheet = PointerEvent<HTMLDivElement>;

/** Where the pointer is on the sheet, pixels. */
function onSheet(event: Sheet): Vec2 {
  const box = event.currentTarget.getBoundingClientRect();
  return [event.clientX - box.left, event.clientY - box.top];
}

function inPlan(at: Vec2): Vec2 {
  const { view, size } = usePlanView.getState();
  return view ? toPlan(view, size, at) : [0, 0];
}

/** True on the drawing itself, false on cards, fields and buttons over it. */
const onDrawing = (event: { readonly target: EventTarget }): boolean =>
  (event.target as Element).closest('.plan > svg.sheet-drawing') !== null;
const onThing = (event: Sheet): boolean =>
  (event.target as Element).closest('.thing, .corner-grip, .turn-grip, .mark') !== null;

function boxOf(from: Vec2, to: Vec2): Box {
  const [a, b] = [inPlan(from), inPlan(to)];
  return { min: [Math.min(a[0], b[0]), Math.min(a[1], b[1])], max: [Math.max(a[0], b[0]), Math.max(a[1], b[1])] };
}

function startFrame(event: Sheet, purpose: 'select' | 'zoom'): void {
  event.stopPropagation();
  event.currentTarget.setPointerCapture(event.pointerId);
  (event.target as Element).closest<SVGElement>('.sheet-drawing')?.focus({ preventScroll: true });
  const at = onSheet(event);
  useArrange.setState({ frame: { from: at, to: at, purpose } });
}

function endFrame(): void {
  const { frame } = useArrange.getState();
  useArrange.setState({ frame: null });
  if (!frame || Math.hypot(frame.to[0] - frame.from[0], frame.to[1] - frame.from[1]) < 4) return;
  const box = boxOf(frame.from, frame.to);
  if (frame.purpose === 'zoom') {
    setPlanView(fitted(box, usePlanView.getState().size, 8));
    takeTool(null);
    return;
  }
  const { computed, data, selection } = useWorkbench.getState();
  if (!computed) return;
  const free = idsLike(data, null).filter((id) => !isLocked(data, id));
  const all = [...new Set([...selection, ...framed(computed.design, free, box)])];
  selectSeveral(all);
  readOut([say.inHand(all.length)]);
}

/** What the pointer does on the sheet before things are asked: frames, measuring, points of the background. */
export const sheetPointers = {
  /** With Shift a browser would mark the words between two clicks. */
  onMouseDownCapture(event: MouseEvent<HTMLDivElement>): void {
    if (event.shiftKey && onDrawing(event)) event.preventDefault();
  },
  onPointerDownCapture(event: Sheet): void {
    if (event.button !== 0 || !onDrawing(event)) return;
    const { tool } = useArrange.getState();
    if (tool === 'measure' || tool === 'background') {
      event.stopPropagation();
      const pick = tool === 'measure' ? pickMeasurePoint : pickBackgroundPoint;
      pick(inPlan(onSheet(event)), event.altKey);
    } else if (tool === 'zoom') startFrame(event, 'zoom');
    else if (event.shiftKey && !onThing(event)) startFrame(event, 'select');
  },
  onPointerMoveCapture(event: Sheet): void {
    const { tool, frame } = useArrange.getState();
    if (frame) {
      event.stopPropagation();
      useArrange.setState({ frame: { ...frame, to: onSheet(event) } });
    } else if (tool === 'measure' && onDrawing(event)) hoverMeasure(inPlan(onSheet(event)), event.altKey);
  },
  onPointerUpCapture(event: Sheet): void {
    if (!useArrange.getState().frame) return;
    event.stopPropagation();
    endFrame();
  },
  onDragOver(event: DragEvent<HTMLDivElement>): void {
    if (event.dataTransfer.types.includes('Files')) event.preventDefault();
  },
  onDrop(event: DragEvent<HTMLDivElement>): void {
    const file = event.dataTransfer.files[0];
    if (event.defaultPrevented || !file || !underDrawing.test(file.name)) return;
    event.preventDefault();
    if (useLayers.getState().locked.includes('background')) tellAll([say.background.locked]);
    else void takeInBackground(file);
  },
  onPointerCancelCapture(): void {
    useArrange.setState({ frame: null });
  },
};
