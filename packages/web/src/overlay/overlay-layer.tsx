import type { OverlayMark } from '@cloche/engine';
import { ringPath } from '../plan/path-text.js';
import { unspoken } from '../plan/unspoken.js';
import { useOverlay } from './overlay-store.js';

type Drawn = Exclude<OverlayMark, { readonly mark: 'value' }>;

const classOf = (mark: Drawn): string => {
  const verdict = mark.mark === 'line' && mark.verdict ? ` is-${mark.verdict.replace(' ', '-')}` : '';
  return `laid ${mark.mark} ${mark.style}${verdict}`;
};

/** What is laid over the plan, in room coordinates and within the walls. */
export function OverlayLayer({ outline }: { readonly outline: readonly (readonly [number, number])[] }) {
  const marks = useOverlay((s) => s.marks);
  if (marks.length === 0) return null;
  return (
    <g className="overlay" clipPath="url(#room-inside)" {...unspoken}>
      <clipPath id="room-inside">
        <path d={ringPath(outline)} />
      </clipPath>
      {/* Grown areas overlap: together they have one tone. */}
      <g className="grown-areas">
        <Marks marks={marks.filter(isGrown)} />
      </g>
      <Marks marks={marks.filter((mark) => !isGrown(mark))} />
    </g>
  );
}

const isGrown = (mark: OverlayMark): boolean => mark.mark === 'area' && mark.grow !== undefined;

function Marks({ marks }: { readonly marks: readonly OverlayMark[] }) {
  // biome-ignore lint/suspicious/noArrayIndexKey: marks have no name of their own
  return marks.map((mark, i) => <Mark key={i} mark={mark} />);
}

function Mark({ mark }: { readonly mark: OverlayMark }) {
  switch (mark.mark) {
    case 'area': {
      const d = [mark.outline, ...(mark.holes ?? [])].map(ringPath).join('');
      // A stroke as wide as twice the growth, with round joins, is the area grown all round.
      const grown = mark.grow ? { strokeWidth: 2 * mark.grow, className: `${classOf(mark)} grown` } : null;
      return <path d={d} fillRule="evenodd" className={classOf(mark)} {...grown} />;
    }
    case 'line':
      return <path d={`M${mark.points.map((p) => p.join(' ')).join('L')}`} className={classOf(mark)} />;
    case 'circle':
      return <circle cx={mark.centre[0]} cy={mark.centre[1]} r={mark.radius} className={classOf(mark)} />;
    case 'value':
      return null;
  }
}
