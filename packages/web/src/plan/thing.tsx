import type { KeyboardEvent, PointerEvent, ReactNode } from 'react';
import { isLocked, useLayers } from '../arrange/layers.js';
import { useArrange } from '../arrange/state.js';
import { select, selectAlso, useWorkbench } from '../state/store.js';
import { useAhead, useMove } from './move.js';

const dataNow = () => useWorkbench.getState().data;

export interface ThingProps {
  readonly id: string;
  readonly label: string;
  readonly kind: string;
  readonly children: ReactNode;
}

/** A thing on the plan that can be touched, reached by keyboard, and moved where its place is typed in the brief. */
export function Thing({ id, label, kind, children }: ThingProps) {
  const selected = useWorkbench((s) => s.selection.includes(id));
  const pointed = useWorkbench(
    (s) =>
      s.focusedFinding !== null &&
      s.computed?.findings.some((f) => f.id === s.focusedFinding && f.subject === id) === true,
  );
  const move = useMove(id);
  const ahead = useAhead(id);
  const locked = useLayers(({ locked, hidden }) => locked.length + hidden.length > 0 && isLocked(dataNow(), id));
  const onKeyDown = (event: KeyboardEvent) => {
    const choose = event.key === 'Enter' || event.key === ' ';
    if (locked && choose) return;
    if (choose && event.shiftKey) selectAlso(id);
    else if (choose) select(selected && useWorkbench.getState().selected === id ? null : id);
    else if (event.key === 'Escape' && useArrange.getState().tool === null) select(null);
    else if (!(selected && move.byKey(event))) return;
    event.preventDefault();
    event.stopPropagation();
  };
  const onPointerDown = (event: PointerEvent<SVGGElement>) => {
    if (event.button !== 0 || locked) return;
    event.stopPropagation();
    if (event.shiftKey) {
      event.currentTarget.focus();
      selectAlso(id);
      return;
    }
    // One of several in hand takes all of them along; a mere click leaves it alone in hand.
    if (!useWorkbench.getState().selection.includes(id)) select(id);
    move.start(event);
  };
  const onPointerUp = (event: PointerEvent<SVGGElement>) => {
    const dragged = move.end();
    if (!dragged && !event.shiftKey && !locked && event.button === 0) select(id);
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing has no button element
    <g
      className={`thing ${kind}${selected ? ' selected' : ''}${pointed ? ' pointed' : ''}${move.movable ? ' movable' : ''}${locked ? ' locked' : ''}`}
      data-thing={id}
      transform={ahead}
      tabIndex={locked ? -1 : 0}
      role="button"
      aria-label={label}
      aria-pressed={selected}
      onKeyDown={onKeyDown}
      onPointerDown={onPointerDown}
      onPointerMove={move.during}
      onPointerUp={onPointerUp}
      onPointerCancel={move.end}
    >
      {children}
    </g>
  );
}
