import { useId } from 'react';
import { FieldRow, isShown } from '../brief/field-row.js';
import { fieldsAt, rowsAt } from '../brief/fields.js';
import { listAt, type Path, pathKey, shownText, valueAt } from '../brief/path.js';
import { namedOf } from '../brief/references.js';
import { RowTable } from '../brief/row-table.js';
import type { Field } from '../brief/shapes.js';
import { type Addable, canAdd, onTable } from '../brief/templates.js';
import type { Problem } from '../engine/contract.js';
import { removeEntry, selectInForm, useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';
import { add } from './adding.js';

/** A list of the brief, its entries one below the other, and what adds to it. */
export function Entries({ what, open = false }: { readonly what: Addable; readonly open?: boolean }) {
  const count = useWorkbench((s) => listAt(s.data, what.list).length);
  return (
    <details className="group" open={open} data-path={pathKey(what.list)}>
      <Head title={what.title} count={count} list={what.list} />
      {what.about && <p className="second">{what.about}</p>}
      {Array.from({ length: count }, (_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: an entry is named by its place in the brief
        <Entry key={i} path={[...what.list, i]} />
      ))}
      <AddButtons what={what} />
    </details>
  );
}

/** An object of the brief that is there or not. */
export function Single({ what }: { readonly what: Addable }) {
  const there = useWorkbench((s) => valueAt(s.data, what.list) !== undefined);
  return (
    <details className="group" data-path={pathKey(what.list)}>
      <Head title={what.title} count={there ? 1 : 0} list={what.list} />
      {there ? (
        <>
          <Fields path={what.list} />
          <button type="button" className="quiet" onClick={() => removeEntry(what.list)}>
            {texts.forms.remove(what.adds[0]?.one ?? what.title)}
          </button>
        </>
      ) : (
        <AddButtons what={what} />
      )}
    </details>
  );
}

/** An object that every brief has, or may have without being asked. */
export function Form({
  path,
  title,
  open = false,
}: {
  readonly path: Path;
  readonly title: string;
  readonly open?: boolean;
}) {
  return (
    <details className="group" open={open} data-path={pathKey(path)}>
      <summary>
        <span className="title">{title}</span>
        <Inside path={path} own />
      </summary>
      <Fields path={path} />
    </details>
  );
}

function Head({ title, count, list }: { readonly title: string; readonly count: number; readonly list: Path }) {
  return (
    <summary>
      <span className="title">{title}</span>
      <Inside path={list} />
      <span className="count">{count > 0 ? count : ''}</span>
    </summary>
  );
}

/** Tells that something inside a folded part cannot be used; forms of a whole chapter count only what is their own. */
function Inside({ path, own = false }: { readonly path: Path; readonly own?: boolean }) {
  const count = useWorkbench(
    (s) => s.problems.filter((p) => (own ? isOwn(p.path, path) : starts(p.path, path))).length,
  );
  return count === 0 ? null : <span className="trouble-inside">{texts.forms.problemsInside(count)}</span>;
}

const starts = (path: Path, with_: Path): boolean => pathKey(path.slice(0, with_.length)) === pathKey(with_);
const isOwn = (told: Path, path: Path): boolean =>
  starts(told, path) &&
  (fieldsAt(path).some((field) => starts(told, [...path, ...field.path])) ||
    rowsAt(path).some((rows) => starts(told, [...path, ...rows.path])));

function AddButtons({ what }: { readonly what: Addable }) {
  const can = useWorkbench((s) => canAdd(s.data, what));
  if (!can) return <p className="second">{what.needs?.[1]}</p>;
  return (
    <div className="adds">
      {what.adds.map((adding) => (
        <button key={adding.one} type="button" className="add" onClick={() => add(what, adding)}>
          {texts.forms.add(adding.one)}
        </button>
      ))}
    </div>
  );
}

function Fields({ path }: { readonly path: Path }) {
  const fields = fieldsAt(path);
  const rare = fields.filter((field) => field.further);
  return (
    <>
      <FieldList path={path} fields={fields.filter((field) => !field.further)} />
      {rowsAt(path).map((rows) => (
        <RowTable key={rows.path.join('/')} base={path} rows={rows} />
      ))}
      {rare.length > 0 && (
        <details className="further">
          <summary>{texts.forms.further}</summary>
          <FieldList path={path} fields={rare} />
        </details>
      )}
      <Rest path={path} />
    </>
  );
}

function FieldList({ path, fields }: { readonly path: Path; readonly fields: readonly Field[] }) {
  return (
    <div className="fields">
      {fields.map((field) => (
        <FieldRow key={`${field.path.join('/')} ${field.label} ${field.when?.[1] ?? ''}`} base={path} field={field} />
      ))}
    </div>
  );
}

/** Problems of a thing that no field of it can say. */
function Rest({ path }: { readonly path: Path }) {
  const problems = useWorkbench((s) => s.problems);
  const data = useWorkbench((s) => s.data);
  const unsaid = problems.filter((p) => starts(p.path, path) && !isSaid(p, path, data));
  if (typeof path.at(-1) !== 'number' || unsaid.length === 0) return null;
  return unsaid.map((p) => (
    <p key={`${p.code} ${p.path.join('/')}`} className="told problem">
      {`${p.message} ${p.hint}`}
    </p>
  ));
}

const isSaid = (p: Problem, path: Path, data: unknown): boolean =>
  fieldsAt(path).some(
    (field) =>
      isShown(data, path, field) &&
      (pathKey(p.path) === pathKey([...path, ...field.path]) ||
        (field.path.at(-1) === 0 && pathKey(p.path) === pathKey([...path, ...field.path.slice(0, -1)]))),
  ) || rowsAt(path).some((rows) => starts(p.path, [...path, ...rows.path]));

/** One thing of a list: folded to its name, open to its numbers; open while it is in hand. */
function Entry({ path }: { readonly path: Path }) {
  const name = useWorkbench((s) => nameOf(s.data, path));
  const id = useWorkbench((s) => shownText(valueAt(s.data, [...path, 'id'])));
  const inHand = useWorkbench((s) => id !== '' && s.selected === id);
  const label = useId();
  const isTable = path.length === 2 && path[0] === 'tables';
  return (
    <details
      className={inHand ? 'entry in-hand' : 'entry'}
      open={inHand || undefined}
      data-path={pathKey(path)}
      onToggle={(e) => {
        // A toggle of something folded inside this entry is not its own.
        if (e.target !== e.currentTarget || id === '') return;
        if (e.currentTarget.open && !inHand) selectInForm(id);
        if (!e.currentTarget.open && inHand) selectInForm(null);
      }}
    >
      <summary id={label}>
        <span className="title">{name}</span>
        <Inside path={path} />
      </summary>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset would bring a frame that cannot be folded */}
      <div role="group" aria-labelledby={label}>
        <Fields path={path} />
        {isTable && <Entries what={onTable(path)} />}
      </div>
      <button type="button" className="quiet" onClick={() => removeEntry(path)}>
        {texts.forms.remove(name)}
      </button>
    </details>
  );
}

/** Name and id, or what an entry without either is about. */
function nameOf(data: unknown, path: Path): string {
  const entry = valueAt(data, path);
  const [name, id] = [shownText(valueAt(entry, ['name'])), shownText(valueAt(entry, ['id']))];
  if (name !== '') return id === '' ? name : `${name} (${id})`;
  if (id !== '') return id;
  const known = new Map(
    namedOf(data, ['tables', 'doors', 'windows', 'enclosures', 'runs', 'room']).map((each) => [each.id, each.name]),
  );
  const ends = ['where', 'from', 'to'].flatMap((key) => {
    const value = valueAt(entry, [key]);
    if (value === undefined) return [];
    return Array.isArray(value) ? value.join(', ') : (known.get(shownText(value)) ?? shownText(value));
  });
  return ends.join(' to ') || '?';
}
