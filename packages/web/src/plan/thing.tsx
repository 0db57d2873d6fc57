import type { KeyboardEvent, PointerEvent, ReactNode } from 'react';
import { select, useWorkbench } from '../state/store.js';
import { useAhead, useMove } from './move.js';

export interface ThingProps {
  readonly id: string;
  readonly label: string;
  readonly kind: string;
  readonly children: ReactNode;
}

/** A thing on the plan that can be touched, reached by keyboard, and moved where its place is typed in the brief. */
export function Thing({ id, label, kind, children }: ThingProps) {
  const selected = useWorkbench((s) => s.selected === id);
  const pointed = useWorkbench(
    (s) =>
      s.focusedFinding !== null &&
      s.computed?.findings.some((f) => f.id === s.focusedFinding && f.subject === id) === true,
  );
  const move = useMove(id);
  const ahead = useAhead(id);
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Enter' || event.key === ' ') select(selected ? null : id);
    else if (event.key === 'Escape') select(null);
    else if (!(selected && move.byKey(event))) return;
    event.preventDefault();
    event.stopPropagation();
  };
  const onPointerDown = (event: PointerEvent<SVGGElement>) => {
    if (event.button !== 0) return;
    event.stopPropagation();
    select(id);
    move.start(event);
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing has no button element
    <g
      className={`thing ${kind}${selected ? ' selected' : ''}${pointed ? ' pointed' : ''}${move.movable ? ' movable' : ''}`}
      data-thing={id}
      transform={ahead}
      tabIndex={0}
      role="button"
      aria-label={label}
      aria-pressed={selected}
      onKeyDown={onKeyDown}
      onPointerDown={onPointerDown}
      onPointerMove={move.during}
      onPointerUp={move.end}
      onPointerCancel={move.end}
    >
      {children}
    </g>
  );
}
