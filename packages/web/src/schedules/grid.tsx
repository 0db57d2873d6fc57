import { type ClipboardEvent, type KeyboardEvent, useEffect, useLayoutEffect, useRef, useState } from 'react';
import { pathKey } from '../brief/path.js';
import { useWorkbench } from '../state/store.js';
import { scheduleTexts as say } from '../texts/schedules.js';
import { blockText, readBlock } from './block-text.js';
import { choicesOf, isFigure } from './cells.js';
import { GridCell, type Way } from './grid-cell.js';
import { GridHead } from './grid-head.js';
import { corners, type Extent, holds, isSingle, moved, type Range, type Spot } from './range.js';
import { columnName, rowName } from './schedule.js';
import { setWidth, useLook } from './state.js';
import type { GridModel } from './use-grid.js';
import { columnKey, widthOf } from './widths.js';

export const rowHeight = 28;
/** Rows drawn beyond what is in sight, so that scrolling shows no gaps. */
const beyond = 10;
const keyOfWay = { down: 'ArrowDown', up: 'ArrowUp', right: 'ArrowRight', left: 'ArrowLeft' } as const;
const origin: Spot = { row: 0, column: 0 };

/**
 * Rows and columns that are edited in place: one cell is in focus, several can be taken.
 * Source of the pattern: WAI-ARIA Authoring Practices, data grid (from memory).
 */
export function Grid({ model, told }: { readonly model: GridModel; readonly told: (spot: Spot) => void }) {
  const { schedule, rows } = model;
  const data = useWorkbench((s) => s.data);
  const shelf = useWorkbench((s) => s.shelf);
  const widths = useLook((s) => s.widths);
  const [range, setRange] = useState<Range>({ anchor: origin, active: origin });
  const [draft, setDraft] = useState<string | null>(null);
  const [sight, setSight] = useState({ top: 0, height: 600 });
  const scroller = useRef<HTMLDivElement>(null);
  const wantsFocus = useRef(false);

  const extent: Extent = { rows: rows.length + (model.canAdd ? 1 : 0), columns: schedule.columns.length };
  const columnWidths = schedule.columns.map((field) => widthOf(widths, schedule, field));
  const template = columnWidths.map((w) => `${w}px`).join(' ');
  const active: Spot = {
    row: Math.max(0, Math.min(range.active.row, extent.rows - 1)),
    column: Math.min(range.active.column, extent.columns - 1),
  };
  const page = Math.max(1, Math.floor(sight.height / rowHeight) - 2);
  const first = Math.max(0, Math.floor(sight.top / rowHeight) - beyond);
  const last = Math.min(extent.rows - 1, Math.ceil((sight.top + sight.height) / rowHeight) + beyond);
  const shown = new Set(Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => first + i));
  if (extent.rows > 0) shown.add(active.row);

  useLayoutEffect(() => {
    const box = scroller.current;
    if (!box) return;
    const look = () => setSight({ top: box.scrollTop, height: box.clientHeight });
    const watch = new ResizeObserver(look);
    watch.observe(box);
    return () => watch.disconnect();
  }, []);

  useEffect(() => told({ row: active.row, column: active.column }), [told, active.row, active.column]);

  // After the cell is drawn: focus goes with the cell, and the cell comes into sight from under head and first column.
  useLayoutEffect(() => {
    const box = scroller.current;
    const cell = box?.querySelector<HTMLElement>('[tabindex="0"][role]');
    if (!box || !cell || draft !== null || !wantsFocus.current) return;
    wantsFocus.current = false;
    const [top, left] = [(active.row + 1) * rowHeight, columnWidths.slice(0, active.column).reduce((a, b) => a + b, 0)];
    const frozen = active.column === 0 ? 0 : columnWidths[0]!;
    box.scrollTop = Math.max(Math.min(box.scrollTop, top - rowHeight), top + rowHeight - box.clientHeight);
    box.scrollLeft = Math.max(
      Math.min(box.scrollLeft, left - frozen),
      left + columnWidths[active.column]! - box.clientWidth,
    );
    cell.focus({ preventScroll: true });
  });

  const go = (to: Spot, extend = false) => {
    wantsFocus.current = true;
    setRange({ anchor: extend ? range.anchor : to, active: to });
  };
  const begin = (text?: string) => {
    const cell = model.cell(active.row, active.column);
    if (cell.applies) setDraft(text ?? cell.refusal?.text ?? cell.text);
  };
  const write = (text: string, spot: Spot) => model.write([{ ...spot, text }]);
  const leave = (way: Way) => {
    if (draft !== null) write(draft, active);
    setDraft(null);
    if (way !== 'blur') go(moved(keyOfWay[way], false, active, extent, page) ?? active);
  };

  const clear = () => {
    const { top, bottom, left, right } = corners(range);
    const cells = [];
    for (let row = top; row <= Math.min(bottom, rows.length - 1); row++)
      for (let column = left; column <= right; column++) cells.push({ row, column, text: '' });
    model.write(cells);
  };

  const widen = (by: number) => {
    const field = schedule.columns[active.column]!;
    setWidth(columnKey(schedule, field), columnWidths[active.column]! + by);
  };

  const onKey = (event: KeyboardEvent) => {
    if (draft !== null || extent.rows === 0) return;
    if (!(event.target instanceof HTMLElement) || !event.target.matches('[data-cell]')) return;
    const { key, shiftKey, altKey } = event;
    const ctrl = event.ctrlKey || event.metaKey;
    const used = (act: () => void) => {
      event.preventDefault();
      act();
    };
    if (altKey && (key === 'ArrowLeft' || key === 'ArrowRight'))
      return used(() => widen(key === 'ArrowLeft' ? -16 : 16));
    const to = altKey ? undefined : moved(key, ctrl, active, extent, page);
    if (to) return used(() => go(to, shiftKey));
    if (key === 'Enter' || key === 'F2') return used(() => begin());
    if (key === 'Delete' || key === 'Backspace') return used(clear);
    if (key === 'Escape') return used(model.forgetRefused);
    if (ctrl && key.toLowerCase() === 'a')
      return used(() =>
        setRange({ anchor: { row: 0, column: 0 }, active: { row: extent.rows - 1, column: extent.columns - 1 } }),
      );
    if (!ctrl && !altKey && key.length === 1) used(() => begin(key));
  };

  const onCopy = (event: ClipboardEvent) => {
    if (draft !== null) return;
    event.preventDefault();
    event.clipboardData.setData('text/plain', blockText(model.out(corners(range))));
  };
  const onPaste = (event: ClipboardEvent) => {
    if (draft !== null) return;
    event.preventDefault();
    const block = readBlock(event.clipboardData.getData('text/plain'));
    const { top, left, bottom, right } = corners(range);
    // One cell pasted over a range fills it.
    const fill = block.length === 1 && block[0]!.length === 1 && !isSingle(range);
    const [high, wide] = fill
      ? [bottom - top + 1, right - left + 1]
      : [block.length, Math.max(...block.map((r) => r.length))];
    const cells = [];
    for (let row = 0; row < high; row++)
      for (let column = 0; column < wide; column++) {
        const text = fill ? block[0]![0]! : block[row]![column];
        if (text !== undefined) cells.push({ row: top + row, column: left + column, text });
      }
    model.write(cells);
    setRange({
      anchor: { row: top, column: left },
      active: { row: Math.min(extent.rows - 1, top + high - 1), column: Math.min(extent.columns - 1, left + wide - 1) },
    });
    wantsFocus.current = true;
  };

  return (
    // biome-ignore lint/a11y/useSemanticElements: rows are drawn as they come into sight, which a table element cannot
    <div
      ref={scroller}
      className="grid"
      role="grid"
      aria-label={say.grid(schedule.title)}
      aria-rowcount={extent.rows + 1}
      aria-colcount={extent.columns}
      aria-multiselectable="true"
      onScroll={(e) => setSight({ top: e.currentTarget.scrollTop, height: e.currentTarget.clientHeight })}
      onKeyDown={onKey}
      onCopy={onCopy}
      onPaste={onPaste}
    >
      <GridHead schedule={schedule} template={template} widths={columnWidths} />
      {/* biome-ignore lint/a11y/useSemanticElements: as above */}
      <div role="rowgroup" className="grid-body" style={{ height: extent.rows * rowHeight }}>
        {[...shown]
          .sort((a, b) => a - b)
          .map((row) => (
            // biome-ignore lint/a11y/useSemanticElements: as above
            // biome-ignore lint/a11y/useFocusableInteractive: its cells take the focus
            <div
              key={rows[row] ? pathKey(rows[row]) : 'new'}
              role="row"
              aria-rowindex={row + 2}
              className={rows[row] ? 'grid-row' : 'grid-row new'}
              style={{ top: row * rowHeight, gridTemplateColumns: template }}
            >
              {schedule.columns.map((field, column) => {
                const spot = { row, column };
                const isActive = row === active.row && column === active.column;
                return (
                  <GridCell
                    key={columnName(field)}
                    spot={spot}
                    label={field.label}
                    rowName={rows[row] ? (model.nameOf?.(rows[row]) ?? rowName(data, rows[row])) : say.newRowName}
                    placeholder={!rows[row] && column === 0 ? say.newRow : ''}
                    figure={isFigure(field)}
                    view={model.cell(row, column)}
                    active={isActive}
                    taken={!isSingle(range) && holds(range, spot)}
                    draft={isActive ? draft : null}
                    choices={
                      isActive && draft !== null
                        ? choicesOf(model.fieldAt?.(row, column) ?? field, { data, shelf })
                        : []
                    }
                    point={(extend) => {
                      if (draft !== null) write(draft, active);
                      setDraft(null);
                      go(spot, extend);
                    }}
                    arrive={() =>
                      setRange((now) =>
                        now.active.row === row && now.active.column === column ? now : { anchor: spot, active: spot },
                      )
                    }
                    drag={() => setRange({ anchor: range.anchor, active: spot })}
                    open={() => begin()}
                    type={setDraft}
                    leave={leave}
                    drop={() => {
                      setDraft(null);
                      go(active);
                    }}
                  />
                );
              })}
            </div>
          ))}
      </div>
    </div>
  );
}
