import { takeOut } from '../arrange/act.js';
import { ActionsForm } from '../arrange/actions-form.js';
import { usePanel } from '../arrange/panel.js';
import { FieldRow } from '../brief/field-row.js';
import { fieldsAt } from '../brief/fields.js';
import { pathOfThing } from '../brief/find.js';
import type { Path } from '../brief/path.js';
import type { Design } from '../engine/contract.js';
import { select, selectInForm, useWorkbench } from '../state/store.js';
import { reveal } from '../steps/reveal.js';
import { arrangeTexts } from '../texts/arrange.js';
import { texts } from '../texts.js';
import { usePlaceBeside } from './place-beside.js';

/** The numbers of the thing in hand, beside it. */
export function ThingCard({ design }: { readonly design: Design }) {
  const selected = useWorkbench((s) => (s.onSheet ? s.selected : null));
  const data = useWorkbench((s) => s.data);
  const path = selected ? pathOfThing(data, selected) : undefined;
  const actions = usePanel((s) => s.actions);
  const { ref, style } = usePlaceBeside(design, selected ? [selected] : []);
  if (!selected || !path) return null;
  const fields = fieldsAt(path).filter((field) => field.onCard);
  return (
    <section className="thing-card" ref={ref} style={style} aria-label={`${texts.thing.numbers} ${selected}`}>
      <header>
        <h3>{selected}</h3>
        <button type="button" className="quiet" onClick={() => toForm(selected, path)}>
          {texts.forms.allNumbers}
        </button>
        <button type="button" className="quiet" onClick={takeOut}>
          {texts.thing.remove}
        </button>
        <button type="button" className="quiet" onClick={() => select(null)}>
          {texts.thing.close}
        </button>
      </header>
      <div className="fields">
        {fields.map((field) => (
          <FieldRow key={`${path.join('/')}/${field.path.join('/')} ${field.label}`} base={path} field={field} />
        ))}
      </div>
      <details
        className="arrange"
        open={actions}
        onToggle={(e) => usePanel.setState({ actions: e.currentTarget.open })}
      >
        <summary>{arrangeTexts.arrange}</summary>
        <ActionsForm several={false} />
      </details>
    </section>
  );
}

/** All numbers stand in the form; the card would only say some of them again. */
function toForm(id: string, path: Path): void {
  selectInForm(id);
  reveal(path);
}
