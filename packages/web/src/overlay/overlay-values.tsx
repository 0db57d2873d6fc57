import type { OverlayMark } from '@cloche/engine';
import { useMemo } from 'react';
import type { Vec2 } from '../engine/contract.js';
import { localNumber } from '../locale.js';
import { VerdictShape } from '../notes/verdict-mark.js';
import { type Label, placeLabels, type Spot } from '../plan/place-labels.js';
import { widthOf } from '../plan/plan-labels.js';
import { unspoken } from '../plan/unspoken.js';
import type { PlanView, Size } from '../plan/view.js';
import { openFinding } from '../state/store.js';
import { useOverlay } from './overlay-store.js';

type Value = Extract<OverlayMark, { readonly mark: 'value' }>;

/** Before the writing, where a verdict stands, pixels. */
const shapeWidth = 16;
const height = 17;

/** The writings of an overlay in screen pixels, moved aside where they would lie on each other. */
export function OverlayValues({ view, size }: { readonly view: PlanView; readonly size: Size }) {
  const marks = useOverlay((s) => s.marks);
  const { scale } = view;
  const placed = useMemo(() => {
    const values = eachOnce(
      marks.filter((m): m is Value => m.mark === 'value'),
      scale,
    );
    const byKey = new Map(values.map((value, i) => [String(i), value]));
    const labels = placeLabels(
      [...byKey].map(([key, value]) => labelOf(key, value, scale)),
      [],
      [],
    );
    return labels.map((label) => ({ ...label, value: byKey.get(label.key)! }));
  }, [marks, scale]);
  const x = size.width / 2 - view.middle[0] * scale;
  const y = size.height / 2 + view.middle[1] * scale;
  return (
    <g className="overlay-values" transform={`translate(${x} ${y})`} {...unspoken}>
      {placed.map(({ key, text, box, value }) => (
        <g
          key={key}
          className={value.finding ? 'value opens' : 'value'}
          transform={`translate(${box.min[0]} ${box.min[1]})`}
          onPointerDown={(e) => {
            if (!value.finding) return;
            e.stopPropagation();
            openFinding(value.finding);
          }}
        >
          <rect width={box.max[0] - box.min[0]} height={height} rx="2" />
          {value.verdict && (
            <g transform="translate(3 3) scale(0.62)">
              <VerdictShape verdict={value.verdict} />
            </g>
          )}
          {text && (
            <text x={value.verdict ? shapeWidth + 1 : 4} y={13}>
              {localNumber(text)}
            </text>
          )}
        </g>
      ))}
    </g>
  );
}

/** Pixels within which the same is not said twice. */
const near = 40;

/** The free way to one door is told once, though two findings rest on it. */
function eachOnce(values: readonly Value[], scale: number): readonly Value[] {
  const same = (a: Value, b: Value) =>
    a.text === b.text && a.verdict === b.verdict && Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) * scale < near;
  return values.filter((value, i) => !values.slice(0, i).some((before) => same(before, value)));
}

/** A value that is nothing but its verdict stands as the shape alone; the legend has the word. */
export const isVerdictAlone = (mark: OverlayMark): boolean =>
  mark.mark === 'value' && mark.verdict !== undefined && mark.text === mark.verdict;

function labelOf(key: string, value: Value, scale: number): Label {
  const at: Vec2 = [value.at[0] * scale, -value.at[1] * scale];
  const text = isVerdictAlone(value) ? '' : value.text;
  const width = text === '' ? height : widthOf(text) + (value.verdict ? shapeWidth : 4);
  const beside = [0, -1, 1, -2, 2, -3, 3].flatMap((row): Spot[] => [
    { at: [at[0], at[1] + row * (height + 1)] },
    { at: [at[0] + width * 0.7, at[1] + row * (height + 1)] },
    { at: [at[0] - width * 0.7, at[1] + row * (height + 1)] },
  ]);
  return { key, text, width, height, spots: beside };
}
