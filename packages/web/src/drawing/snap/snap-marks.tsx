import type { Vec2 } from '../../engine/contract.js';
import { unspoken } from '../../plan/unspoken.js';
import { type PlanView, type Size, toScreen } from '../../plan/view.js';
import type { SnapReason } from './types.js';

interface SnapMarksProps {
  /** Where the point came to rest, or a point of the dragged thing beside which the words stand. */
  readonly at: Vec2;
  readonly reasons: readonly SnapReason[];
  readonly view: PlanView;
  readonly size: Size;
}

const half = 4.5;
const lineHeight = 16;

/** Why a point rests where it does: fine lines to what it is in line with, and a word beside it. */
export function SnapMarks({ at, reasons, view, size }: SnapMarksProps) {
  const screen = (p: Vec2) => toScreen(view, size, p);
  const told = reasons.filter(({ kind }) => kind !== 'grid');
  if (told.length === 0) return null;
  const [x, y] = screen(at);
  // Words stand on the side of the point where the sheet has room.
  const left = x > size.width - 220;
  return (
    <g className="snap-marks" {...unspoken}>
      {told.map((reason) => (
        <g key={`${reason.kind} ${reason.text}`} data-snap={reason.kind}>
          {linesOf(reason, at).map(([a, b]) => {
            const [from, to] = [screen(a), screen(b)];
            return <path key={`${from} ${to}`} d={`M${from[0]} ${from[1]}L${to[0]} ${to[1]}`} />;
          })}
        </g>
      ))}
      {told.some(({ kind }) => kind === 'end' || kind === 'middle') && (
        <rect x={x - half} y={y - half} width={2 * half} height={2 * half} />
      )}
      {told.map(({ text }, i) => (
        <text
          key={text}
          x={left ? x - 14 : x + 14}
          y={y - 12 - (told.length - 1 - i) * lineHeight}
          textAnchor={left ? 'end' : 'start'}
        >
          {text}
        </text>
      ))}
    </g>
  );
}

const linesOf = ({ from, lines = [] }: SnapReason, at: Vec2): readonly (readonly [Vec2, Vec2])[] =>
  from ? [[from, at], ...lines] : lines;
