import { millimetreText } from '@cloche/engine';
import { type PointerEvent, useMemo } from 'react';
import type { Design, Vec2 } from '../engine/contract.js';
import { boxOf } from '../plan/card-corner.js';
import { linePath, ringPath } from '../plan/path-text.js';
import { texts } from '../texts.js';
import { type OnFoot, useSpace, walkTo } from './space-store.js';
import { groundOf, isFree } from './walk.js';

/** Room round the outline [m]. */
const margin = 0.3;

/** A small plan that shows where one stands on foot; a free place that is touched is stood at. */
export function PlanCorner({ design }: { readonly design: Design }) {
  const foot = useSpace((s) => s.walk);
  const ground = useMemo(() => groundOf(design), [design]);
  const { min, max } = useMemo(() => boxOf(design.room.outline), [design.room.outline]);
  if (!foot) return null;
  const [width, height] = [max[0] - min[0] + 2 * margin, max[1] - min[1] + 2 * margin];
  const touch = (event: PointerEvent<SVGSVGElement>) => {
    const matrix = event.currentTarget.querySelector<SVGGElement>('.metres')?.getScreenCTM()?.inverse();
    if (!matrix) return;
    const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix);
    if (isFree(ground, [x, y])) walkTo({ ...foot, at: [x, y] });
  };
  const where = whereText(foot, min);
  return (
    <figure className="plan-corner">
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={where} onPointerDown={touch}>
        <title>{texts.space.walk.plan}</title>
        <g className="metres" transform={`matrix(1 0 0 -1 ${margin - min[0]} ${max[1] + margin})`}>
          <path className="outline" d={ringPath(design.room.outline)} />
          {[...design.tables, ...design.equipment, ...design.room.columns].map((t) => (
            <path key={t.id} d={ringPath(t.outline)} />
          ))}
          {design.enclosures.map((e) => (
            <path key={e.id} className="dashed" d={ringPath(e.outline)} />
          ))}
          {design.runs.map((r) => (
            <path key={r.id} className="dashed" d={linePath(r.line)} />
          ))}
          <g transform={`translate(${foot.at[0]} ${foot.at[1]}) rotate(${(foot.heading * 180) / Math.PI})`}>
            <path className="sight" d="M0 0L1.3 0.75A1.5 1.5 0 0 0 1.3 -0.75Z" />
            <circle className="here" r={0.14} />
          </g>
        </g>
      </svg>
      <figcaption>{where}</figcaption>
    </figure>
  );
}

function whereText({ at, heading }: OnFoot, min: Vec2): string {
  const { where, ways } = texts.space.walk;
  const eighth = ((Math.round((heading * 4) / Math.PI) % 8) + 8) % 8;
  return where(millimetreText(at[0] - min[0]), millimetreText(at[1] - min[1]), ways[eighth]!);
}
