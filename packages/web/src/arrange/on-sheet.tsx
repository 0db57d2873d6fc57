import { useHand } from '../drawing/hand.js';
import { SnapLayer } from '../drawing/snap/index.js';
import type { Design } from '../engine/contract.js';
import type { PlanView, Size } from '../plan/view.js';
import { PickedPoints } from './background/background-layer.js';
import { GapLine, SizeLines } from './dimension-inputs.js';
import { KeptLines, MeasureLayer } from './measure/measure-layer.js';
import { useArrange } from './state.js';
import { TurnGrip } from './turn-grip.js';

interface Drawn {
  readonly design: Design;
  readonly view: PlanView;
  readonly size: Size;
}

/** Everything about arranging that is drawn on the sheet. */
export function ArrangeOnSheet({ design, view, size }: Drawn) {
  const drawing = useHand((s) => s.session !== null);
  return (
    <>
      <SizeLines design={design} view={view} size={size} />
      <GapLine design={design} view={view} size={size} />
      <KeptLines design={design} view={view} size={size} />
      <TurnGrip design={design} view={view} size={size} />
      <MeasureLayer design={design} view={view} size={size} />
      <PickedPoints view={view} size={size} />
      {!drawing && <SnapLayer view={view} size={size} />}
      <FrameShape />
    </>
  );
}

function FrameShape() {
  const frame = useArrange((s) => s.frame);
  if (!frame) return null;
  const { from, to } = frame;
  return (
    <rect
      className="hand-frame"
      x={Math.min(from[0], to[0])}
      y={Math.min(from[1], to[1])}
      width={Math.abs(to[0] - from[0])}
      height={Math.abs(to[1] - from[1])}
    />
  );
}
