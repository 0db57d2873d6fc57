import { addEntry, editObject, removeEntry, useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';
import { FieldRow } from './field-row.js';
import { listAt, type Path, pathKey, valueAt } from './path.js';
import type { Rows } from './shapes.js';

/** A small table of values under a thing; columns are told once, in its head. */
export function RowTable({ base, rows }: { readonly base: Path; readonly rows: Rows }) {
  const path = [...base, ...rows.path];
  const count = useWorkbench((s) => listAt(s.data, path).length);
  const fits = useWorkbench((s) => rows.path.length === 1 || valueAt(s.data, path) !== undefined);
  const problem = useWorkbench((s) => s.problems.find((p) => pathKey(p.path) === pathKey(path)));
  if (!fits) return null;
  const add = () => {
    const { data } = useWorkbench.getState();
    const entry = rows.row(listAt(data, path), data, base);
    if (count === 0) editObject(path, [entry]);
    else addEntry(path, entry);
  };
  const table = (
    <fieldset className="row-table" data-path={pathKey(path)}>
      <legend className={rows.folded ? 'visually-hidden' : ''}>{rows.title}</legend>
      {count > 0 && (
        <div className="row-head" aria-hidden="true">
          {rows.columns.map((column) => (
            <span key={column.path.join('/')} className={'quantity' in column.shape ? 'right' : ''}>
              {column.label}
            </span>
          ))}
        </div>
      )}
      {Array.from({ length: count }, (_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row is its number
        <Row key={i} base={[...path, i]} rows={rows} number={i} removable={count > (rows.least ?? 0)} />
      ))}
      {problem && <p className="told problem">{`${problem.message} ${problem.hint}`}</p>}
      <button type="button" className="quiet" onClick={add}>
        {texts.forms.add(rows.one)}
      </button>
    </fieldset>
  );
  if (!rows.folded) return table;
  return (
    <details className="further">
      <summary>
        {rows.title} <span className="count">{count > 0 ? count : ''}</span>
      </summary>
      {table}
    </details>
  );
}

function Row({
  base,
  rows,
  number,
  removable,
}: {
  readonly base: Path;
  readonly rows: Rows;
  readonly number: number;
  readonly removable: boolean;
}) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset takes no part in the grid of its table
    <div className="row" role="group" aria-label={`${number}`}>
      {rows.columns.map((column) => (
        <FieldRow key={column.path.join('/')} base={base} field={column} />
      ))}
      {removable && (
        <button type="button" className="quiet take" onClick={() => removeEntry(base)} title={texts.forms.removeRow}>
          <span aria-hidden="true">×</span>
          <span className="visually-hidden">{texts.forms.remove(`${number}`)}</span>
        </button>
      )}
    </div>
  );
}
