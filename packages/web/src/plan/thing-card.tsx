import { useLayoutEffect, useRef, useState } from 'react';
import { FieldRow } from '../brief/field-row.js';
import { fieldsAt } from '../brief/fields.js';
import { pathOfThing } from '../brief/find.js';
import type { Path } from '../brief/path.js';
import type { Design } from '../engine/contract.js';
import { removeEntry, select, selectInForm, useWorkbench } from '../state/store.js';
import { reveal } from '../steps/reveal.js';
import { texts } from '../texts.js';
import { boxOf, cardCorner, gap } from './card-corner.js';
import { clearancesOf, distanceBox, middleOf } from './clearances.js';
import { extentOf } from './places.js';
import { toScreen } from './view.js';
import { usePlanView } from './view-store.js';

/** The numbers of the thing in hand, beside it. */
export function ThingCard({ design }: { readonly design: Design }) {
  const selected = useWorkbench((s) => (s.onSheet ? s.selected : null));
  const data = useWorkbench((s) => s.data);
  const path = selected ? pathOfThing(data, selected) : undefined;
  const { ref, style } = usePlaceBeside(design, selected);
  if (!selected || !path) return null;
  const fields = fieldsAt(path).filter((field) => field.onCard);
  return (
    <section className="thing-card" ref={ref} style={style} aria-label={`${texts.thing.numbers} ${selected}`}>
      <header>
        <h3>{selected}</h3>
        <button type="button" className="quiet" onClick={() => toForm(selected, path)}>
          {texts.forms.allNumbers}
        </button>
        <button type="button" className="quiet" onClick={() => removeEntry(path)}>
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
    </section>
  );
}

/** All numbers stand in the form; the card would only say some of them again. */
function toForm(id: string, path: Path): void {
  selectInForm(id);
  reveal(path);
}

function usePlaceBeside(design: Design, id: string | null) {
  const { view, size } = usePlanView();
  const ref = useRef<HTMLElement>(null);
  const [card, setCard] = useState({ width: 260, height: 240 });
  // biome-ignore lint/correctness/useExhaustiveDependencies: another thing has another card
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const observer = new ResizeObserver(() => setCard({ width: element.offsetWidth, height: element.offsetHeight }));
    observer.observe(element);
    return () => observer.disconnect();
  }, [id]);
  const points = id && view ? extentOf(design, id).map((p) => toScreen(view, size, p)) : [];
  if (points.length === 0) return { ref, style: { right: gap, top: gap + 60 } };
  const numbers = id && view ? clearancesOf(design, id).map((c) => distanceBox(toScreen(view, size, middleOf(c)))) : [];
  const [left, top] = cardCorner(boxOf(points), card, size, numbers);
  return { ref, style: { left, top } };
}
