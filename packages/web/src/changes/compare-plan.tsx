import { memo, useId, useMemo, useRef } from 'react';
import type { Design, ThingChange, Vec2 } from '../engine/contract.js';
import { ringPath } from '../plan/path-text.js';
import { extentOf, middleOf } from '../plan/places.js';
import { unspoken } from '../plan/unspoken.js';
import { type PlanView, type Size, toScreen } from '../plan/view.js';
import { counterClockwise, offsetRing, wallThickness } from '../plan/wall-band.js';
import { changesTexts } from '../texts/changes.js';
import { texts } from '../texts.js';
import { type Overlay, type OverlayState, overlayOf } from './overlay.js';
import { type DrawnArrow, drawnArrow, overlayLabels } from './overlay-labels.js';
import { useOverlayView } from './overlay-view.js';
import { Swatch } from './swatch.js';

export interface ComparePlanProps {
  readonly before: Design;
  readonly after: Design;
  readonly changes: readonly ThingChange[];
  /** The thing that the list points at, drawn strong. */
  readonly pointed: string | null;
  readonly onPoint: (id: string | null) => void;
}

/** Both states in one drawing: what is gone dashed, what is new strong, what was moved with an arrow and its length. */
export function ComparePlan({ before, after, changes, pointed, onPoint }: ComparePlanProps) {
  const frame = useRef<HTMLDivElement>(null);
  const { view, size, fit, byFactor, onKeyDown, pan } = useOverlayView(frame, before, after);
  const overlay = useMemo(() => overlayOf(before, after, changes), [before, after, changes]);
  const { plan } = changesTexts;
  return (
    <figure className="compare-plan">
      <div className="compare-drawing" ref={frame}>
        {view && (
          // biome-ignore lint/a11y/useSemanticElements: a drawing is no fieldset
          <svg
            width={size.width}
            height={size.height}
            // biome-ignore lint/a11y/noNoninteractiveTabindex: the plan is moved and scaled by keys
            tabIndex={0}
            role="group"
            aria-label={plan.label}
            onKeyDown={onKeyDown}
            {...pan}
          >
            <title>{plan.title}</title>
            <desc>{described(changes)}</desc>
            <g {...unspoken}>
              <g transform={matrix(view, size)}>
                <Walls design={after} />
                <Shapes overlay={overlay} pointed={pointed} onPoint={onPoint} />
              </g>
              <Signs
                before={before}
                after={after}
                changes={changes}
                overlay={overlay}
                view={view}
                size={size}
                pointed={pointed}
              />
            </g>
          </svg>
        )}
        <div className="plan-buttons">
          <button type="button" onClick={() => byFactor(1.25)} aria-label={texts.plan.closer} title={texts.plan.closer}>
            +
          </button>
          <button
            type="button"
            onClick={() => byFactor(0.8)}
            aria-label={texts.plan.farther}
            title={texts.plan.farther}
          >
            −
          </button>
          <button type="button" onClick={fit}>
            {texts.plan.fit}
          </button>
        </div>
      </div>
      <Legend />
    </figure>
  );
}

function described(changes: readonly ThingChange[]): string {
  const count = (of: (change: ThingChange) => boolean) => changes.filter(of).length;
  const isMoved = (c: ThingChange) => c.change === 'changed' && (c.moved !== null || c.turned !== null);
  return changesTexts.plan.desc(
    count((c) => c.change === 'added'),
    count((c) => c.change === 'removed'),
    count(isMoved),
    count((c) => c.change === 'changed' && !isMoved(c)),
  );
}

const matrix = (view: PlanView, size: Size): string =>
  `matrix(${view.scale} 0 0 ${-view.scale} ${size.width / 2 - view.middle[0] * view.scale} ${size.height / 2 + view.middle[1] * view.scale})`;

const Walls = memo(function Walls({ design }: { readonly design: Design }) {
  const hatch = useId();
  const inner = counterClockwise(design.room.outline);
  return (
    <>
      <pattern id={hatch} width="0.07" height="0.07" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path d="M0 0V0.07" className="hatch" />
      </pattern>
      <path
        className="wall"
        style={{ fill: `url(#${hatch})` }}
        d={ringPath(inner) + ringPath(offsetRing(inner, wallThickness))}
      />
      <path className="wall-edge" d={ringPath(inner)} />
    </>
  );
});

interface ShapesProps {
  readonly overlay: Overlay;
  readonly pointed: string | null;
  readonly onPoint: (id: string | null) => void;
}

const Shapes = memo(function Shapes({ overlay, pointed, onPoint }: ShapesProps) {
  return overlay.shapes.map(({ id, state, d }) => (
    <g
      key={`${state} ${id}`}
      className={`shape ${state}${pointed === id ? ' pointed' : ''}`}
      data-thing={id}
      data-state={state}
      onPointerEnter={state === 'same' ? undefined : () => onPoint(id)}
      onPointerLeave={state === 'same' ? undefined : () => onPoint(null)}
    >
      {state !== 'same' && <path className="reach" d={d} />}
      <path d={d} />
    </g>
  ));
});

interface SignsProps {
  readonly before: Design;
  readonly after: Design;
  readonly changes: readonly ThingChange[];
  readonly overlay: Overlay;
  readonly view: PlanView;
  readonly size: Size;
  readonly pointed: string | null;
}

/** Arrows, crosses and writing, in pixels so that they keep their size at every scale. */
function Signs({ before, after, changes, overlay, view, size, pointed }: SignsProps) {
  const sheet = (point: Vec2) => toScreen(view, size, point);
  const arrows = overlay.arrows.map((arrow) => drawnArrow(arrow, sheet));
  const labels = overlayLabels({ before, after, changes, arrows, sheet, size });
  const crosses = changes.flatMap((c) => {
    const at = c.change === 'removed' ? middleOf(extentOf(before, c.id)) : undefined;
    return at ? [{ id: c.id, at: sheet(at) }] : [];
  });
  return (
    <>
      {crosses.map(({ id, at: [x, y] }) => (
        <path key={id} className="cross" transform={`translate(${x} ${y})`} d="M-4 -4L4 4M4 -4L-4 4" />
      ))}
      {arrows.map((arrow) => (
        <Arrow key={arrow.id} arrow={arrow} pointed={arrow.id === pointed} />
      ))}
      {labels.map(({ key, text, at: [x, y] }) => (
        <text key={key} className={key.startsWith('arrow ') ? 'length' : 'name'} x={x} y={y + 4.5} textAnchor="middle">
          {text}
        </text>
      ))}
    </>
  );
}

function Arrow({ arrow: { id, from, to }, pointed }: { readonly arrow: DrawnArrow; readonly pointed: boolean }) {
  const angle = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return (
    <g
      className={pointed ? 'move pointed' : 'move'}
      data-arrow={id}
      transform={`translate(${to[0]} ${to[1]}) rotate(${angle})`}
    >
      <path d={`M${-length} 0H-7M${-length} -4V4`} />
      <path className="head" d="M0 0L-9 -3.4V3.4Z" />
    </g>
  );
}

const legend: readonly (OverlayState | 'moved')[] = ['same', 'now', 'was', 'removed', 'added', 'moved'];

function Legend() {
  return (
    <figcaption className="compare-legend">
      <ul aria-label={changesTexts.plan.legend}>
        {legend.map((each) => (
          <li key={each}>
            <Swatch of={each} />
            {changesTexts.plan[each]}
          </li>
        ))}
      </ul>
      <p className="second short-moves">{changesTexts.plan.short}</p>
    </figcaption>
  );
}
