import { memo, useMemo } from 'react';
import type { Vec2 } from '../../engine/contract.js';
import { unspoken } from '../../plan/unspoken.js';
import { type PlanView, type Size, toScreen } from '../../plan/view.js';
import { useWorkbench } from '../../state/store.js';
import { useArrange } from '../state.js';
import { useBackgroundSettings } from './background-settings.js';
import type { LineDrawing } from './dxf-lines.js';
import { useBackgroundFile, useLoaded } from './loaded.js';
import { useOutlineChoice } from './outline-choice.js';
import { usePicked } from './picking.js';
import { placementIn } from './placement.js';

/** The picture or drawing of the room under everything else. */
export function BackgroundLayer({ view, size }: { readonly view: PlanView; readonly size: Size }) {
  const data = useWorkbench((s) => s.data);
  const placement = useMemo(() => placementIn(data), [data]);
  useBackgroundFile(placement?.file ?? null);
  const { file, content } = useLoaded();
  const strength = useBackgroundSettings((s) => s.strength);
  if (!placement?.shown || !content || file !== placement.file) return null;
  const [x, y] = toScreen(view, size, placement.at);
  const degrees = (-placement.turn * 180) / Math.PI;
  const width = placement.width * view.scale;
  return (
    <g className="background" opacity={strength} transform={`translate(${x} ${y}) rotate(${degrees})`} {...unspoken}>
      {content.kind === 'picture' ? (
        <image
          href={content.url}
          x={0}
          y={-width * content.aspect}
          width={width}
          height={width * content.aspect}
          preserveAspectRatio="none"
        />
      ) : (
        <Lines drawing={content.drawing} width={width} />
      )}
    </g>
  );
}

function Lines({ drawing, width }: { readonly drawing: LineDrawing; readonly width: number }) {
  const chosen = useOutlineChoice((s) => s.pointed);
  const scale = width / (drawing.max[0] - drawing.min[0]);
  const ring = chosen === null ? undefined : drawing.closed[chosen];
  return (
    <g transform={`scale(${scale} ${-scale}) translate(${-drawing.min[0]} ${-drawing.min[1]})`}>
      <AllLines lines={drawing.lines} />
      {ring && <path className="pointed" d={`${pathOf(ring)}Z`} />}
    </g>
  );
}

const pathOf = (line: readonly Vec2[]): string => `M${line.map((p) => `${p[0]} ${p[1]}`).join('L')}`;

const AllLines = memo(function AllLines({ lines }: { readonly lines: LineDrawing['lines'] }) {
  const d = useMemo(() => lines.map(pathOf).join(''), [lines]);
  return <path d={d} />;
});

/** The points that were clicked on the background. */
export function PickedPoints({ view, size }: { readonly view: PlanView; readonly size: Size }) {
  const active = useArrange((s) => s.tool === 'background');
  const points = usePicked((s) => s.points);
  if (!active) return null;
  const screen = points.map((p) => toScreen(view, size, p));
  return (
    <g className="measure" {...unspoken}>
      {screen.length > 1 && <path d={`M${screen.map((p) => p.join(' ')).join('L')}`} />}
      {screen.map(([x, y]) => (
        <circle key={`${x} ${y}`} cx={x} cy={y} r={3.5} />
      ))}
    </g>
  );
}
