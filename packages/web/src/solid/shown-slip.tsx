import { texts } from '../texts.js';
import { layers, toggleLayer, useSpace } from './space-store.js';

/** What is drawn and what is left out. */
export function ShownSlip() {
  const shown = useSpace((s) => s.shown);
  return layers.map((layer) => (
    <label key={layer} className="switch">
      <input type="checkbox" checked={shown[layer]} onChange={() => toggleLayer(layer)} />
      {texts.space.shown[layer]}
    </label>
  ));
}
