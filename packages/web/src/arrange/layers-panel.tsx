import { arrangeTexts } from '../texts/arrange.js';
import { BackgroundForm } from './background/background-form.js';
import { layerNames, lockable, showAllLayers, toggleLocked, toggleShown, useLayers } from './layers.js';
import { usePanel } from './panel.js';

const say = arrangeTexts.layers;

/** What is shown and what can be taken in hand, by layers; and the picture under the drawing. */
export function LayersPanel() {
  const open = usePanel((s) => s.open === 'layers');
  const { hidden, locked } = useLayers();
  if (!open) return null;
  return (
    <section className="sheet-panel layers-panel" aria-label={say.title}>
      <header>
        <h3>{say.title}</h3>
        <button type="button" className="quiet" disabled={hidden.length + locked.length === 0} onClick={showAllLayers}>
          {say.all}
        </button>
        <button type="button" className="quiet" onClick={() => usePanel.setState({ open: null })}>
          {arrangeTexts.leave}
        </button>
      </header>
      <table>
        <thead>
          <tr>
            <th scope="col">{say.layer}</th>
            <th scope="col">{say.shown}</th>
            <th scope="col">{say.locked}</th>
          </tr>
        </thead>
        <tbody>
          {layerNames.map((name) => (
            <tr key={name}>
              <th scope="row">{say.names[name]}</th>
              <td>
                <input
                  type="checkbox"
                  aria-label={say.show(say.names[name])}
                  checked={!hidden.includes(name)}
                  onChange={() => toggleShown(name)}
                />
              </td>
              <td>
                {lockable.includes(name) && (
                  <input
                    type="checkbox"
                    aria-label={say.lock(say.names[name])}
                    checked={locked.includes(name)}
                    onChange={() => toggleLocked(name)}
                  />
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="second">{say.printed}</p>
      <BackgroundForm />
    </section>
  );
}
