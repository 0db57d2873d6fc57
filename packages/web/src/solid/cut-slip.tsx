import type { Design } from '../engine/contract.js';
import { texts } from '../texts.js';
import { cutLimits, middleCut } from './cut-limits.js';
import { LengthField } from './length-field.js';
import type { Axis, Cut } from './section.js';
import { addCut, changeCut, mostCuts, removeCut, useSpace } from './space-store.js';

const axes: readonly Axis[] = [0, 1, 2];

/** The cuts, their places and sides. */
export function CutSlip({ room }: { readonly room: Design['room'] }) {
  const cuts = useSpace((s) => s.cuts);
  const words = texts.space.cut;
  const next = axes.find((axis) => cuts.every((c) => c.axis !== axis) && axis === (cuts.length === 0 ? 1 : axis)) ?? 0;
  return (
    <>
      {cuts.map((cut, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a cut is known by its place in the list of two
        <CutLine key={i} index={i} cut={cut} room={room} />
      ))}
      {cuts.length < mostCuts && (
        <div className="about">
          <p className="second">{words.about}</p>
          <button
            type="button"
            onClick={() => addCut({ axis: next, at: middleCut(room, next), keeps: keepsAtFirst(next) })}
          >
            {words.add}
          </button>
        </div>
      )}
    </>
  );
}

/** The first view is from the south-east and from above: what stands nearer to the eye is cut away. */
const keepsAtFirst = (axis: Axis): Cut['keeps'] => (axis === 1 ? 'greater' : 'lesser');

interface CutLineProps {
  readonly index: number;
  readonly cut: Cut;
  readonly room: Design['room'];
}

function CutLine({ index, cut, room }: CutLineProps) {
  const words = texts.space.cut;
  const [low, high] = cutLimits(room, cut.axis);
  const name = words.name(index + 1);
  const measure = (axis: Axis) => changeCut(index, { axis, at: middleCut(room, axis), keeps: keepsAtFirst(axis) });
  return (
    <fieldset className="cut-line">
      <legend>{name}</legend>
      <div className="field">
        <label htmlFor={`cut-axis-${index}`}>{words.across}</label>
        <select id={`cut-axis-${index}`} value={cut.axis} onChange={(e) => measure(Number(e.target.value) as Axis)}>
          {axes.map((axis) => (
            <option key={axis} value={axis}>
              {words.axes[axis]}
            </option>
          ))}
        </select>
      </div>
      <LengthField
        label={words.place}
        name={`${name}, ${words.place} ${words.axes[cut.axis]}`}
        value={cut.at}
        low={low}
        high={high}
        outside={words.outside}
        outsideHint={words.outsideHint}
        change={(at) => changeCut(index, { at })}
      />
      <div className="adds">
        <button
          type="button"
          onClick={() => changeCut(index, { keeps: cut.keeps === 'lesser' ? 'greater' : 'lesser' })}
        >
          {words.turn}
        </button>
        <button type="button" className="quiet" onClick={() => removeCut(index)}>
          {words.remove}
        </button>
        <span className="second">{words.keeps(cut.axis, cut.keeps)}</span>
      </div>
    </fieldset>
  );
}
