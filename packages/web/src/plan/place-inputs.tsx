import { useMemo } from 'react';
import { TypedLength } from '../arrange/typed-length.js';
import type { Design, Vec2 } from '../engine/contract.js';
import { useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';
import { type Clearance, clearancesOf, middleOf, moveFor } from './clearances.js';
import { carrierOf, gripOf } from './grips.js';
import { shift } from './move.js';
import { unspoken } from './unspoken.js';
import { type PlanView, type Size, toScreen } from './view.js';

interface Drawn {
  readonly design: Design;
  readonly view: PlanView;
  readonly size: Size;
}

const none: readonly Clearance[] = [];

/** What is placed on a table is measured on the table, what is in a wall along the wall. */
const standsInRoom = (data: unknown, id: string): boolean =>
  gripOf(data, id)[0]?.length === 2 && carrierOf(data, id) === null;

/** What the thing in hand leaves free to the walls, when its place is typed in the brief in two directions. */
export function useDistances(design: Design): readonly Clearance[] {
  const id = useWorkbench((s) => s.selected);
  const free = useWorkbench((s) => s.selected !== null && standsInRoom(s.data, s.selected));
  return useMemo(
    () => (id && free ? clearancesOf(design, id).filter((c) => c.distance > 0.001) : none),
    [design, id, free],
  );
}

/** Thin dimension lines from the thing in hand to the walls. */
export function PlaceLines({ design, view, size }: Drawn) {
  const distances = useDistances(design);
  const stroke = ([x, y]: Vec2) => `M${x - 4} ${y + 4}L${x + 4} ${y - 4}`;
  return (
    <g className="dimensions in-hand" {...unspoken}>
      {distances.map(({ side, from, to }) => {
        const [a, b] = [toScreen(view, size, from), toScreen(view, size, to)];
        return (
          <g key={side} className="dimension">
            <path d={`M${a[0]} ${a[1]}L${b[0]} ${b[1]}`} />
            <path className="stroke" d={stroke(a) + stroke(b)} />
          </g>
        );
      })}
    </g>
  );
}

/** The distances themselves, to be typed: the thing then moves. */
export function PlaceInputs({ design, view, size }: Drawn) {
  const distances = useDistances(design);
  const id = useWorkbench((s) => s.selected);
  if (!id || distances.length === 0) return null;
  return (
    <fieldset className="place-inputs">
      <legend className="visually-hidden">{texts.plan.distances(id)}</legend>
      {distances.map((clearance) => (
        <TypedLength
          key={`${id} ${clearance.side}`}
          label={texts.plan.distance(clearance.side)}
          metres={clearance.distance}
          put={(wanted) => shift(id, moveFor(clearance, wanted))}
          at={toScreen(view, size, middleOf(clearance))}
        />
      ))}
    </fieldset>
  );
}
