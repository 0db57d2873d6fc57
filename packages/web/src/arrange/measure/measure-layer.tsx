import { distance2, type Vec2 } from '@cloche/engine';
import { lengthText, unitsOf } from '../../drawing/length-text.js';
import { SnapMarks } from '../../drawing/snap/index.js';
import type { Design } from '../../engine/contract.js';
import { DimensionLine } from '../../plan/dimensions.js';
import { unspoken } from '../../plan/unspoken.js';
import { type PlanView, type Size, toScreen } from '../../plan/view.js';
import { useWorkbench } from '../../state/store.js';
import { useArrange } from '../state.js';
import { placeOf } from './anchor.js';
import { endsOf, useKept } from './kept.js';
import { isClosed } from './measured.js';
import { useMeasure } from './state.js';

interface Drawn {
  readonly design: Design;
  readonly view: PlanView;
  readonly size: Size;
}

/** What is measured: its line with the length of every stretch, and the one that the pointer would add. */
export function MeasureLayer({ design, view, size }: Drawn) {
  const active = useArrange((s) => s.tool === 'measure');
  const { points, hover } = useMeasure();
  const units = useWorkbench((s) => unitsOf(s.data));
  if (!active) return null;
  const fixed = points.map((anchor) => placeOf(design, anchor));
  const line = hover && !isClosed(fixed) ? [...fixed, hover.at] : fixed;
  const screen = line.map((p) => toScreen(view, size, p));
  return (
    <g className="measure" {...unspoken}>
      {screen.length > 1 && (
        <path d={`M${screen.map((p) => p.join(' ')).join('L')}`} className={isClosed(fixed) ? 'closed' : undefined} />
      )}
      {screen.map(([x, y], i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a point is its number
        <circle key={i} cx={x} cy={y} r={3.5} />
      ))}
      {line.slice(1).map((to, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a stretch is its number
        <Stretch key={i} from={screen[i]!} to={screen[i + 1]!} text={lengthText(distance2(line[i]!, to), units)} />
      ))}
      {hover && <SnapMarks at={hover.at} reasons={hover.reasons} view={view} size={size} />}
    </g>
  );
}

function Stretch({ from, to, text }: { readonly from: Vec2; readonly to: Vec2; readonly text: string }) {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  if (length < 40) return null;
  const raw = (Math.atan2(dy, dx) * 180) / Math.PI;
  const angle = raw >= 90 ? raw - 180 : raw < -90 ? raw + 180 : raw;
  return (
    <text
      textAnchor="middle"
      transform={`translate(${(from[0] + to[0]) / 2} ${(from[1] + to[1]) / 2}) rotate(${angle}) translate(0 -6)`}
    >
      {text}
    </text>
  );
}

/** Distances that stay on the sheet. */
export function KeptLines({ design, view, size }: Drawn) {
  const kept = useKept();
  return (
    <g className="dimensions in-hand kept" {...unspoken}>
      {kept.map((distance) => {
        const ends = endsOf(design, distance);
        if (!ends) return null;
        const [a, b] = ends.map((p) => toScreen(view, size, p));
        return <DimensionLine key={distance.number} from={a!} to={b!} away={[0, 0]} distance={0} />;
      })}
    </g>
  );
}
