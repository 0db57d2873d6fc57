import { type PointerEvent, useRef } from 'react';
import { scheduleTexts as say } from '../texts/schedules.js';
import { isFigure } from './cells.js';
import { columnName, type Schedule } from './schedule.js';
import { setWidth, sortBy, useLook } from './state.js';
import { columnKey } from './widths.js';

/** Names of the columns: a press sorts for looking, the edge is drawn wider or narrower. */
export function GridHead({
  schedule,
  template,
  widths,
}: {
  readonly schedule: Schedule;
  readonly template: string;
  readonly widths: readonly number[];
}) {
  const sorting = useLook((s) => s.sorting);
  const from = useRef<{ readonly x: number; readonly width: number } | null>(null);
  const drag = (column: number) => ({
    onPointerDown: (e: PointerEvent) => {
      e.currentTarget.setPointerCapture(e.pointerId);
      from.current = { x: e.clientX, width: widths[column]! };
    },
    onPointerMove: (e: PointerEvent) => {
      if (from.current)
        setWidth(columnKey(schedule, schedule.columns[column]!), from.current.width + e.clientX - from.current.x);
    },
    onPointerUp: () => {
      from.current = null;
    },
  });
  return (
    // biome-ignore lint/a11y/useSemanticElements: part of a grid whose rows are drawn as they come into sight
    <div role="rowgroup" className="grid-head">
      {/* biome-ignore lint/a11y/useSemanticElements: as above */}
      {/* biome-ignore lint/a11y/useFocusableInteractive: the buttons in it take the focus */}
      <div role="row" aria-rowindex={1} className="grid-row" style={{ gridTemplateColumns: template }}>
        {schedule.columns.map((field, column) => {
          const sorted = sorting?.column === column;
          return (
            // biome-ignore lint/a11y/useSemanticElements: as above
            // biome-ignore lint/a11y/useFocusableInteractive: the button in it takes the focus
            <div
              key={columnName(field)}
              role="columnheader"
              aria-colindex={column + 1}
              aria-sort={sorted ? (sorting.down ? 'descending' : 'ascending') : 'none'}
              className={isFigure(field) ? 'grid-name figure' : 'grid-name'}
            >
              <button
                type="button"
                title={sorted ? (sorting.down ? say.sortDown : say.sortUp) : undefined}
                onClick={() => sortBy(column)}
              >
                {field.label}
                <span aria-hidden="true" className="sort">
                  {sorted ? (sorting.down ? '↓' : '↑') : ''}
                </span>
              </button>
              <span className="widen" aria-hidden="true" {...drag(column)} />
            </div>
          );
        })}
      </div>
    </div>
  );
}
