import type { KeyboardEvent, PointerEvent } from 'react';
import type { Design, Vec2 } from '../engine/contract.js';
import { select, useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';
import { cornerId } from './grips.js';
import { useAhead, useMove } from './move.js';

/** Corners of the run in hand, points of the beam in hand: each can be taken by itself. */
export function CornerLayer({ design, scale }: { readonly design: Design; readonly scale: number }) {
  const selected = useWorkbench((s) => s.selected);
  const run = design.runs.find((each) => each.id === selected);
  const laser = design.lasers.find((each) => each.id === selected);
  const points = run?.corners ?? laser?.path.map(([x, y]): Vec2 => [x, y]) ?? [];
  if (!selected) return null;
  return (
    <g className="corners">
      {points.map((at, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a corner is its number
        <Corner key={i} id={selected} number={i} at={at} scale={scale} />
      ))}
    </g>
  );
}

interface CornerProps {
  readonly id: string;
  readonly number: number;
  readonly at: Vec2;
  readonly scale: number;
}

function Corner({ id, number, at, scale }: CornerProps) {
  const own = cornerId(id, number);
  const move = useMove(own);
  const ahead = useAhead(own);
  if (!move.movable) return null;
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Escape') select(null);
    else if (!move.byKey(event)) return;
    event.preventDefault();
    event.stopPropagation();
  };
  const onPointerDown = (event: PointerEvent<SVGGElement>) => {
    if (event.button !== 0) return;
    event.stopPropagation();
    move.start(event);
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing has no button element
    <g
      className="corner-grip"
      data-corner={own}
      transform={ahead}
      tabIndex={0}
      role="button"
      aria-label={texts.plan.corner(number, id)}
      onKeyDown={onKeyDown}
      onPointerDown={onPointerDown}
      onPointerMove={move.during}
      onPointerUp={move.end}
      onPointerCancel={move.end}
    >
      <circle className="reach" cx={at[0]} cy={at[1]} r={12 / scale} />
      <circle cx={at[0]} cy={at[1]} r={5 / scale} />
    </g>
  );
}
