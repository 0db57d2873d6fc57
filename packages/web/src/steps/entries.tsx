import { type ReactNode, useId } from 'react';
import { FieldRow } from '../brief/field-row.js';
import { fieldsAt } from '../brief/fields.js';
import { listAt, type Path, shownText, valueAt } from '../brief/path.js';
import type { Addable } from '../brief/templates.js';
import { addEntry, removeEntry, select, useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';

interface GroupProps {
  readonly list: Path;
  readonly title: string;
  readonly open?: boolean;
  readonly children?: ReactNode;
}

/** A list of the brief, its entries one below the other; nothing where the brief has none and none can be added here. */
export function Group({ list, title, open = false, children }: GroupProps) {
  const count = useWorkbench((s) => listAt(s.data, list).length);
  if (count === 0 && !children) return null;
  return (
    <details className="group" open={open}>
      <summary>
        <span className="title">{title}</span>
        <span className="count">{count}</span>
      </summary>
      {Array.from({ length: count }, (_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: an entry is named by its place in the brief
        <Entry key={i} path={[...list, i]} />
      ))}
      {children}
    </details>
  );
}

/** A list that can be added to. */
export function Entries({ what, open = false }: { readonly what: Addable; readonly open?: boolean }) {
  const add = () => {
    const { data } = useWorkbench.getState();
    addEntry(what.list, what.entry(data, middleOfRoom()));
  };
  return (
    <Group list={what.list} title={what.title} open={open}>
      <button type="button" className="add" onClick={add}>
        {texts.forms.add(what.one)}
      </button>
    </Group>
  );
}

function middleOfRoom(): readonly [string, string] {
  const ring = useWorkbench.getState().computed?.design.room.outline ?? [];
  const middle = (i: 0 | 1) => {
    const values = ring.map((p) => p[i]);
    return values.length === 0 ? '1 m' : `${((Math.min(...values) + Math.max(...values)) / 2).toFixed(2)} m`;
  };
  return [middle(0), middle(1)];
}

/** One thing of a list: folded to its name, open to its numbers; open while it is in hand. */
function Entry({ path }: { readonly path: Path }) {
  const name = useWorkbench((s) => nameOf(valueAt(s.data, path)));
  const id = useWorkbench((s) => shownText(valueAt(s.data, [...path, 'id'])));
  const inHand = useWorkbench((s) => id !== '' && s.selected === id);
  const label = useId();
  return (
    <details
      className={inHand ? 'entry in-hand' : 'entry'}
      open={inHand || undefined}
      onToggle={(e) => {
        if (id !== '' && e.currentTarget.open !== inHand) select(e.currentTarget.open ? id : null);
      }}
    >
      <summary id={label}>{name}</summary>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset would bring a frame that cannot be folded */}
      <div className="fields" role="group" aria-labelledby={label}>
        {fieldsAt(path).map((field) => (
          <FieldRow key={field.path.join('/')} base={path} field={field} />
        ))}
      </div>
      <button type="button" className="quiet" onClick={() => removeEntry(path)}>
        {texts.forms.remove(name)}
      </button>
    </details>
  );
}

/** Name, id, or what an entry without either is about. */
function nameOf(entry: unknown): string {
  const [name, id] = [shownText(valueAt(entry, ['name'])), shownText(valueAt(entry, ['id']))];
  if (name !== '') return id === '' ? name : `${name} (${id})`;
  if (id !== '') return id;
  const about = ['where', 'to', 'from'].map((key) => valueAt(entry, [key])).filter((v) => v !== undefined);
  return about.map((v) => (Array.isArray(v) ? v.join(', ') : shownText(v))).join(' from ') || '?';
}

export function SingleForm({
  path,
  title,
  open = false,
}: {
  readonly path: Path;
  readonly title: string;
  readonly open?: boolean;
}) {
  return (
    <details className="group" open={open}>
      <summary>
        <span className="title">{title}</span>
      </summary>
      <div className="fields">
        {fieldsAt(path).map((field) => (
          <FieldRow key={field.path.join('/')} base={path} field={field} />
        ))}
      </div>
    </details>
  );
}
