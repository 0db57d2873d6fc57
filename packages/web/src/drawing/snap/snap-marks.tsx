import type { Vec2 } from '../../engine/contract.js';
import { unspoken } from '../../plan/unspoken.js';
import { type PlanView, type Size, toScreen } from '../../plan/view.js';
import type { SnapReason } from './types.js';

interface SnapMarksProps {
  /** Where the point came to rest, or a point of the dragged thing beside which the words stand. */
  readonly at: Vec2;
  readonly reasons: readonly SnapReason[];
  /** Words stand beside a point, or under the south-west corner of a thing. */
  readonly words?: 'beside' | 'under';
  readonly view: PlanView;
  readonly size: Size;
}

const half = 4.5;
const lineHeight = 16;
const aside = 14;
/** A letter is about this wide at the size of the plan's writing, pixels. */
const letterWidth = 6.6;

/** Why a point rests where it does: fine lines to what it is in line with, and a word beside it. */
export function SnapMarks({ at, reasons, words = 'beside', view, size }: SnapMarksProps) {
  const screen = (p: Vec2) => toScreen(view, size, p);
  const told = reasons.filter(({ kind }) => kind !== 'grid');
  if (told.length === 0) return null;
  // In line both ways with the same corner is said once.
  const texts = [...new Set(told.map(({ text }) => text))];
  const [x, y] = screen(at);
  // Words stand on the side of the point where the sheet has room.
  const longest = Math.max(...texts.map((text) => text.length)) * letterWidth;
  const left = words === 'beside' && x + aside + longest > size.width;
  const top = words === 'beside' ? y - 12 - (texts.length - 1) * lineHeight : y + 18;
  const start = words === 'beside' ? x + (left ? -aside : aside) : Math.max(4, Math.min(x, size.width - longest));
  return (
    <g className="snap-marks" {...unspoken}>
      {told.map((reason, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: reasons have no other order
        <g key={i} data-snap={reason.kind}>
          {linesOf(reason, at).map(([a, b]) => {
            const [from, to] = [screen(a), screen(b)];
            return <path key={`${a} ${b}`} d={`M${from[0]} ${from[1]}L${to[0]} ${to[1]}`} />;
          })}
        </g>
      ))}
      {told.some(({ kind }) => kind === 'end' || kind === 'middle') && (
        <rect x={x - half} y={y - half} width={2 * half} height={2 * half} />
      )}
      {texts.map((text, i) => (
        <text key={text} x={start} y={top + i * lineHeight} textAnchor={left ? 'end' : 'start'}>
          {text}
        </text>
      ))}
    </g>
  );
}

const linesOf = ({ from, lines = [] }: SnapReason, at: Vec2): readonly (readonly [Vec2, Vec2])[] =>
  from ? [[from, at], ...lines] : lines;
