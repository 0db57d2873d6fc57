import type { Vec2 } from '../engine/contract.js';
import { unspoken } from '../plan/unspoken.js';
import { type PlanView, type Size, toScreen } from '../plan/view.js';
import type { Shown } from './tool.js';

interface GhostProps {
  readonly shown: Shown;
  readonly view: PlanView;
  readonly size: Size;
}

const path = (points: readonly Vec2[], close: boolean): string =>
  points.length === 0 ? '' : `M${points.map(([x, y]) => `${x} ${y}`).join('L')}${close ? 'Z' : ''}`;

/** What is about to be put in, following the pointer, with its distances. */
export function Ghost({ shown, view, size }: GhostProps) {
  const screen = (p: Vec2) => toScreen(view, size, p);
  const { rings = [], lines = [], dots = [], dimensions = [], target = [] } = shown;
  return (
    <g className="ghost" {...unspoken}>
      {target.length > 0 && <path className="target" d={path(target.map(screen), target.length > 2)} />}
      {rings.map((ring) => (
        <path key={`ring ${ring[0]}`} className="ring" d={path(ring.map(screen), true)} />
      ))}
      {lines.map((line) => (
        <path key={`line ${line[0]} ${line.length}`} className="line" d={path(line.map(screen), false)} />
      ))}
      {shown.arrow && lines.map((line) => <Arrow key={`arrow ${line.length}`} line={line.map(screen)} />)}
      {dots.map((dot, i) => {
        const [x, y] = screen(dot);
        // The first is where a line is closed.
        return <circle key={`${dot}`} className={i === 0 ? 'first' : ''} cx={x} cy={y} r={i === 0 ? 5 : 3.5} />;
      })}
      {dimensions.map((each) => (
        <Dimension key={`${each.from} ${each.to}`} from={screen(each.from)} to={screen(each.to)} text={each.text} />
      ))}
    </g>
  );
}

function Arrow({ line }: { readonly line: readonly Vec2[] }) {
  const [a, b] = [line.at(-2), line.at(-1)];
  if (!a || !b || Math.hypot(b[0] - a[0], b[1] - a[1]) < 8) return null;
  const degrees = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
  return <path className="tip" d="M0 0L-11 4L-11 -4Z" transform={`translate(${b[0]} ${b[1]}) rotate(${degrees})`} />;
}

/** Pixels from the middle of a stretch to its number. */
const aside = 11;

function Dimension({ from, to, text }: { readonly from: Vec2; readonly to: Vec2; readonly text: string }) {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy) || 1;
  // Above what runs along the sheet, to the left of what runs up.
  const sign = dx < -1e-6 || (Math.abs(dx) <= 1e-6 && dy > 0) ? -1 : 1;
  const [nx, ny] = [(dy / length) * sign, (-dx / length) * sign];
  const [x, y] = [(from[0] + to[0]) / 2 + nx * aside, (from[1] + to[1]) / 2 + ny * aside];
  const steep = Math.abs(dy) > Math.abs(dx);
  return (
    <g className="size">
      <path d={`M${from[0]} ${from[1]}L${to[0]} ${to[1]}`} />
      <text x={x} y={y + 4} textAnchor={steep ? (nx < 0 ? 'end' : 'start') : 'middle'}>
        {text}
      </text>
    </g>
  );
}
