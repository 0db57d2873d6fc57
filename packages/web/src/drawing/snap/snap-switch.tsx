import { drawingTexts } from '../../texts/drawing.js';
import { snapGroupNames, switchSnap, useSnapSettings } from './settings.js';

const { snap: say } = drawingTexts;

/** What a point may come to rest on, each kind to be switched off. */
export function SnapSwitch() {
  const off = useSnapSettings((s) => s.off);
  return (
    <fieldset className="snap-switch">
      <legend>{say.switch}</legend>
      {snapGroupNames.map((name) => (
        <label key={name}>
          <input type="checkbox" checked={!off.includes(name)} onChange={() => switchSnap(name)} />
          {say.groups[name]}
        </label>
      ))}
      <span className="second">{say.hold}</span>
    </fieldset>
  );
}
