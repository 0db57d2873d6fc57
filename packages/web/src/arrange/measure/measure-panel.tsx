import { useState } from 'react';
import { lengthText, unitsOf } from '../../drawing/length-text.js';
import type { Design } from '../../engine/contract.js';
import { useWorkbench } from '../../state/store.js';
import { arrangeTexts } from '../../texts/arrange.js';
import { QuantityField, siOf } from '../quantity-field.js';
import { tellAll, useArrange } from '../state.js';
import { placeOf } from './anchor.js';
import { keepDistance } from './kept.js';
import { angleText, areaText, measureText } from './measure-text.js';
import { measured } from './measured.js';
import { clearMeasure, dropLastPoint, leaveMeasure, pickMeasurePoint, useMeasure } from './state.js';

const say = arrangeTexts.measure;

/** What was measured, in numbers, and a way to set points without a pointer. */
export function MeasurePanel({ design }: { readonly design: Design }) {
  const active = useArrange((s) => s.tool === 'measure');
  const points = useMeasure((s) => s.points);
  const units = useWorkbench((s) => unitsOf(s.data));
  if (!active) return null;
  const now = measured(points.map((anchor) => placeOf(design, anchor)));
  const length = (metres: number) => lengthText(metres, units);
  const rows: readonly (readonly [string, string])[] = now
    ? [
        [say.length, length(now.length)],
        [say.east, length(now.east)],
        [say.north, length(now.north)],
        [say.angle, angleText(now.angle)],
        ...(points.length > 2 ? [[say.total, length(now.total)] as const] : []),
        ...(now.area === null ? [] : [[say.area, areaText(now.area, units)] as const]),
      ]
    : [];
  const [a, b] = points;
  return (
    <section className="sheet-panel measure-panel" aria-label={say.title}>
      <header>
        <h3>{say.title}</h3>
        <button type="button" className="quiet" onClick={leaveMeasure}>
          {arrangeTexts.leave}
        </button>
      </header>
      {now ? (
        <dl>
          {rows.map(([name, value]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd className="number">{value}</dd>
            </div>
          ))}
        </dl>
      ) : (
        <p className="second">{points.length === 0 ? say.start : say.first}</p>
      )}
      <PointForm />
      <p className="panel-buttons">
        <button type="button" disabled={points.length === 0} onClick={dropLastPoint}>
          {say.back}
        </button>
        <button type="button" disabled={points.length === 0} onClick={clearMeasure}>
          {say.again}
        </button>
        <button type="button" disabled={!now} onClick={() => now && copyText(measureText(now, units))}>
          {say.copy}
        </button>
        {points.length === 2 && a && b && (a.on !== null || b.on !== null) && (
          <button type="button" onClick={() => keepDistance(a, b)}>
            {say.keep}
          </button>
        )}
      </p>
    </section>
  );
}

function PointForm() {
  const [west, setWest] = useState('0 m');
  const [south, setSouth] = useState('0 m');
  const [x, y] = [siOf(west, 'length'), siOf(south, 'length')];
  return (
    <form
      className="point-form"
      onSubmit={(event) => {
        event.preventDefault();
        if (x !== null && y !== null) pickMeasurePoint([x, y], true);
      }}
    >
      <QuantityField label={say.fromWest} text={west} set={setWest} dimension="length" />
      <QuantityField label={say.fromSouth} text={south} set={setSouth} dimension="length" />
      <button type="submit" disabled={x === null || y === null}>
        {say.setPoint}
      </button>
    </form>
  );
}

async function copyText(text: string): Promise<void> {
  try {
    await navigator.clipboard.writeText(text);
    tellAll([say.copied]);
  } catch {
    tellAll([say.notCopied]);
  }
}
