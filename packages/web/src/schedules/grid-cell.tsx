import { type KeyboardEvent, useId } from 'react';
import type { Named } from '../brief/references.js';
import { scheduleTexts as say } from '../texts/schedules.js';
import type { Spot } from './range.js';
import type { CellView } from './use-grid.js';

/** Where a person goes from a cell they typed in; `blur`: away from the grid. */
export type Way = 'blur' | 'down' | 'up' | 'right' | 'left';

/** One cell: what it shows, what is wrong with it, and, while something is typed, the line to type on. */
export function GridCell({
  spot,
  label,
  rowName,
  placeholder,
  figure,
  view,
  active,
  taken,
  draft,
  choices,
  point,
  arrive,
  drag,
  open,
  type,
  leave,
  drop,
}: {
  readonly spot: Spot;
  readonly label: string;
  readonly rowName: string;
  readonly placeholder: string;
  readonly figure: boolean;
  readonly view: CellView;
  readonly active: boolean;
  readonly taken: boolean;
  readonly draft: string | null;
  readonly choices: readonly Named[];
  readonly point: (extend: boolean) => void;
  /** Focus came by itself: from a screen reader, for one. */
  readonly arrive: () => void;
  readonly drag: () => void;
  readonly open: () => void;
  readonly type: (text: string) => void;
  readonly leave: (way: Way) => void;
  readonly drop: () => void;
}) {
  const id = useId();
  const trouble = view.refusal ? `${say.notWritten(view.refusal.text)} ${view.refusal.reason}` : view.problem;
  const classes = ['cell-of-grid'];
  if (figure) classes.push('figure');
  if (taken) classes.push('taken');
  if (trouble) classes.push(view.refusal ? 'refused' : 'wrong');
  if (!view.applies) classes.push('not-here');
  const onKey = (event: KeyboardEvent) => {
    event.stopPropagation();
    const used = (act: () => void) => {
      event.preventDefault();
      act();
    };
    if (event.key === 'Enter') used(() => leave(event.shiftKey ? 'up' : 'down'));
    else if (event.key === 'Tab') used(() => leave(event.shiftKey ? 'left' : 'right'));
    else if (event.key === 'Escape') used(drop);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it has one of two roles of a grid, which the linter cannot tell
    // biome-ignore lint/a11y/useAriaPropsSupportedByRole: both roles take these
    <div
      role={spot.column === 0 ? 'rowheader' : 'gridcell'}
      data-cell
      aria-colindex={spot.column + 1}
      aria-selected={taken || active}
      aria-invalid={trouble ? true : undefined}
      aria-describedby={trouble ? `${id}-told` : undefined}
      aria-readonly={view.applies ? undefined : true}
      tabIndex={active && draft === null ? 0 : -1}
      className={classes.join(' ')}
      title={trouble}
      onPointerDown={(e) => {
        if (draft === null && e.button === 0) point(e.shiftKey);
      }}
      onFocus={arrive}
      onPointerEnter={(e) => e.buttons === 1 && draft === null && drag()}
      onDoubleClick={open}
    >
      {draft === null ? (
        <Shown view={view} placeholder={placeholder} />
      ) : (
        <>
          <input
            // biome-ignore lint/a11y/noAutofocus: the person has just begun to type here
            autoFocus
            aria-label={say.edit(label, rowName)}
            autoComplete="off"
            spellCheck={false}
            list={choices.length > 0 ? `${id}-list` : undefined}
            value={draft}
            onChange={(e) => type(e.target.value)}
            onKeyDown={onKey}
            onBlur={() => leave('blur')}
          />
          {choices.length > 0 && (
            <datalist id={`${id}-list`}>
              {choices.map((each) => (
                <option key={each.id} value={each.id}>
                  {each.name === each.id ? undefined : each.name}
                </option>
              ))}
            </datalist>
          )}
        </>
      )}
      {trouble && (
        <span id={`${id}-told`} className="visually-hidden">
          {trouble}
        </span>
      )}
    </div>
  );
}

function Shown({ view, placeholder }: { readonly view: CellView; readonly placeholder: string }) {
  if (view.refusal) return <span className="text">{view.refusal.text}</span>;
  if (!view.applies)
    return (
      <span className="second">
        <span aria-hidden="true">·</span>
        <span className="visually-hidden">{say.notHere}</span>
      </span>
    );
  if (view.text === '' && view.assumed) return <span className="text assumed">{say.assumed(view.assumed)}</span>;
  return view.text === '' ? <span className="second">{placeholder}</span> : <span className="text">{view.text}</span>;
}
