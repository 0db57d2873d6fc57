import { bounds, signedArea, type Vec2 } from '@cloche/engine';
import { type DragEvent, useRef, useState } from 'react';
import { FieldRow } from '../../brief/field-row.js';
import { quantity, yesNo } from '../../brief/shapes.js';
import { lengthText, unitsOf } from '../../drawing/length-text.js';
import { removeEntry, useWorkbench } from '../../state/store.js';
import { arrangeTexts } from '../../texts/arrange.js';
import { useLayers } from '../layers.js';
import { QuantityField, siOf } from '../quantity-field.js';
import { useArrange } from '../state.js';
import { setStrength, useBackgroundSettings } from './background-settings.js';
import type { LineDrawing } from './dxf-lines.js';
import { useLoaded } from './loaded.js';
import { useOutlineChoice } from './outline-choice.js';
import { scaleTo, startPicking, stopPicking, usePicked } from './picking.js';
import { type Placement, placementIn } from './placement.js';
import { takeInBackground, takeOutline } from './take-in.js';

const say = arrangeTexts.background;
const fields = [
  quantity('at.0', say.fromWest),
  quantity('at.1', say.fromSouth),
  quantity('width', say.width),
  quantity('turn', say.turn, 'angle'),
  yesNo('shown', say.shown),
];

/** Loading a picture or drawing of the room, and laying it in place. */
export function BackgroundForm() {
  const data = useWorkbench((s) => s.data);
  const placement = placementIn(data);
  const { trouble, content } = useLoaded();
  const locked = useLayers((s) => s.locked.includes('background'));
  const chooser = useRef<HTMLInputElement>(null);
  const onDrop = (event: DragEvent) => {
    event.preventDefault();
    const file = event.dataTransfer.files[0];
    if (file) void takeInBackground(file);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the button inside does the same without a pointer
    <div className="background-form" onDragOver={(e) => e.preventDefault()} onDrop={onDrop}>
      <h4>{say.title}</h4>
      <input
        ref={chooser}
        type="file"
        hidden
        accept=".png,.jpg,.jpeg,.webp,.dxf"
        aria-label={say.choose}
        onChange={(event) => {
          const file = event.target.files?.[0];
          if (file) void takeInBackground(file);
          event.target.value = '';
        }}
      />
      {placement && <p className="background-name">{placement.name}</p>}
      {trouble && <p className="told problem">{trouble}</p>}
      <p className="panel-buttons">
        <button type="button" disabled={locked} onClick={() => chooser.current?.click()}>
          {placement ? say.replace : say.choose}
        </button>
        {placement && !locked && (
          <button type="button" className="quiet" onClick={() => removeEntry(['background'])}>
            {say.remove}
          </button>
        )}
      </p>
      {!placement && <p className="second">{say.about}</p>}
      {placement && locked && <p className="second">{say.locked}</p>}
      {placement && content && !locked && (
        <>
          <Lay />
          <div className="fields">
            {fields.map((field) => (
              <FieldRow key={field.label} base={['background']} field={field} />
            ))}
            <Strength />
          </div>
          {content.kind === 'lines' && <Outlines drawing={content.drawing} placement={placement} />}
        </>
      )}
    </div>
  );
}

function Strength() {
  const strength = useBackgroundSettings((s) => s.strength);
  return (
    <label className="field strength">
      {say.strength}
      <input
        type="range"
        min={0.1}
        max={1}
        step={0.05}
        value={strength}
        onChange={(e) => setStrength(Number(e.target.value))}
      />
    </label>
  );
}

/** The two ways to lay it in place by clicking. */
function Lay() {
  const active = useArrange((s) => s.tool === 'background');
  const { purpose, points } = usePicked();
  const [text, setText] = useState('1 m');
  if (!active)
    return (
      <p className="panel-buttons">
        <button type="button" onClick={() => startPicking('scale')}>
          {say.setScale}
        </button>
        <button type="button" onClick={() => startPicking('shift')}>
          {say.setPlace}
        </button>
      </p>
    );
  const metres = siOf(text, 'length');
  const hints =
    purpose === 'scale'
      ? [say.firstOfScale, say.secondOfScale, say.typeDistance]
      : [say.firstOfShift, say.secondOfShift];
  return (
    <form
      className="point-form"
      onSubmit={(event) => {
        event.preventDefault();
        if (metres) scaleTo(metres);
      }}
    >
      <p>{hints[points.length]}</p>
      {purpose === 'scale' && points.length === 2 && (
        <>
          <QuantityField label={say.trueDistance} text={text} set={setText} dimension="length" />
          <button type="submit" disabled={!metres}>
            {say.setIt}
          </button>
        </>
      )}
      <button type="button" className="quiet" onClick={stopPicking}>
        {arrangeTexts.leave}
      </button>
    </form>
  );
}

/** So many closed lines are offered, the largest first. */
const offered = 8;

function Outlines({ drawing, placement }: { readonly drawing: LineDrawing; readonly placement: Placement }) {
  const units = useWorkbench((s) => unitsOf(s.data));
  const width = drawing.max[0] - drawing.min[0];
  const k = placement.width / width;
  const choices = drawing.closed
    .map((ring, index) => ({ ring, index, area: Math.abs(signedArea(ring)) }))
    .sort((a, b) => b.area - a.area)
    .slice(0, offered);
  const point = (pointed: number | null) => useOutlineChoice.setState({ pointed });
  const sizeOf = (ring: readonly Vec2[]): string => {
    const { min, max } = bounds(ring);
    return [0, 1].map((i) => lengthText((max[i]! - min[i]!) * k, units)).join(' × ');
  };
  return (
    <div className="outline-choice">
      <h4>{say.outline}</h4>
      {choices.length === 0 && <p className="second">{say.noClosed}</p>}
      <ul>
        {choices.map(({ ring, index }) => (
          <li key={index}>
            <button
              type="button"
              onPointerEnter={() => point(index)}
              onPointerLeave={() => point(null)}
              onFocus={() => point(index)}
              onBlur={() => point(null)}
              onClick={() => {
                point(null);
                takeOutline(ring, drawing.min, width);
              }}
            >
              {say.outlineOf(sizeOf(ring), ring.length)}
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
