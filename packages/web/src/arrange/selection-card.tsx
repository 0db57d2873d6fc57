import type { Design } from '../engine/contract.js';
import { usePlaceBeside } from '../plan/place-beside.js';
import { select, selectSeveral, useWorkbench } from '../state/store.js';
import { arrangeTexts as say } from '../texts/arrange.js';
import { takeOut } from './act.js';
import { ActionsForm } from './actions-form.js';

/** Several things in hand: how many, which, and what can be done with them. */
export function SelectionCard({ design }: { readonly design: Design }) {
  const selection = useWorkbench((s) => s.selection);
  const { ref, style } = usePlaceBeside(design, selection);
  if (selection.length < 2) return null;
  return (
    <section className="thing-card hand-card" ref={ref} style={style} aria-label={say.numbers(selection.length)}>
      <header>
        <h3>{say.inHand(selection.length)}</h3>
        <button type="button" className="quiet" onClick={takeOut}>
          {say.takeOut}
        </button>
        <button type="button" className="quiet" onClick={() => select(null)}>
          {say.leave}
        </button>
      </header>
      <details className="which">
        <summary>{say.which}</summary>
        <ul>
          {selection.map((id) => (
            <li key={id}>
              <span>{id}</span>
              <button
                type="button"
                className="quiet"
                aria-label={say.layDown(id)}
                onClick={() => selectSeveral(selection.filter((each) => each !== id))}
              >
                {say.layDownShort}
              </button>
            </li>
          ))}
        </ul>
      </details>
      <ActionsForm several />
    </section>
  );
}
