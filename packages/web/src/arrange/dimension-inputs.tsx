import { useMemo } from 'react';
import { wallNames } from '../drawing/snap/wall-names.js';
import type { Design } from '../engine/contract.js';
import { DimensionLine, shortestLine, wallDistance } from '../plan/dimensions.js';
import { unspoken } from '../plan/unspoken.js';
import { type PlanView, type Size, toScreen } from '../plan/view.js';
import { useWorkbench } from '../state/store.js';
import { arrangeTexts as say } from '../texts/arrange.js';
import { write } from './act.js';
import { numberPlace } from './dimension-place.js';
import { shifted } from './shifted.js';
import { onScreen, placedSize } from './size-place.js';
import { type SizeLine, sizeLines } from './sizes.js';
import { tellAll } from './state.js';
import { betweenTwo, moveForGap } from './two-gap.js';
import { TypedLength } from './typed-length.js';
import { wallDimensions } from './wall-dimensions.js';
import { withWallLength } from './wall-length.js';

interface Drawn {
  readonly design: Design;
  readonly view: PlanView;
  readonly size: Size;
}

/** Lengths of the walls, typed where they stand: the walls after it follow. */
export function WallInputs({ design, view, size }: Drawn) {
  const data = useWorkbench((s) => s.data);
  const names = wallNames(design.room.outline);
  return (
    <fieldset className="dimension-inputs walls">
      <legend className="visually-hidden">{say.wallLengths}</legend>
      {wallDimensions(design).map(({ wall, from, to, out, metres }) => {
        const [a, b] = [toScreen(view, size, from), toScreen(view, size, to)];
        const { at, angle, length } = numberPlace(a, b, onScreen(out), wallDistance(view));
        if (length < shortestLine) return null;
        return (
          <TypedLength
            key={wall}
            label={say.lengthOfWall(names[wall] ?? '')}
            metres={metres}
            put={(wanted) => write(withWallLength(data, wall, wanted))}
            at={at}
            angle={angle}
            bare
          />
        );
      })}
    </fieldset>
  );
}

export function useSizes(design: Design): readonly SizeLine[] {
  const id = useWorkbench((s) => s.selected);
  const data = useWorkbench((s) => s.data);
  return useMemo(() => (id ? sizeLines(data, design, id) : []), [data, design, id]);
}

/** Lines of the sizes of the thing in hand. */
export function SizeLines({ design, view, size }: Drawn) {
  const lines = useSizes(design);
  return (
    <g className="dimensions in-hand" {...unspoken}>
      {lines.map((line) => {
        const { a, b, away, distance } = placedSize(line, view, size);
        return <DimensionLine key={line.key} from={a} to={b} away={away ?? [0, 0]} distance={distance} />;
      })}
    </g>
  );
}

/** Sizes of the thing in hand, typed where they stand. */
export function SizeInputs({ design, view, size }: Drawn) {
  const lines = useSizes(design);
  const id = useWorkbench((s) => s.selected);
  if (!id || lines.length === 0) return null;
  return (
    <fieldset className="dimension-inputs in-hand">
      <legend className="visually-hidden">{say.sizesOf(id)}</legend>
      {lines.map((line) => {
        const { at, angle, length } = placedSize(line, view, size);
        if (line.away && length < shortestLine) return null;
        const put = (wanted: number) => {
          const changes = line.put(wanted);
          if (changes.length === 0) tellAll([say.lengthCannotBe]);
          else write({ changes, told: [] });
        };
        return (
          <TypedLength key={line.key} label={line.label} metres={line.metres} put={put} at={at} angle={angle} bare />
        );
      })}
    </fieldset>
  );
}

/** The free distance between two things in hand; typed, the one that was taken last moves. */
export function GapInput({ design, view, size }: Drawn) {
  const selection = useWorkbench((s) => s.selection);
  const data = useWorkbench((s) => s.data);
  const gap = useMemo(() => betweenTwo(design, selection), [design, selection]);
  if (!gap) return null;
  const [a, b] = [toScreen(view, size, gap.from), toScreen(view, size, gap.to)];
  return (
    <fieldset className="dimension-inputs in-hand">
      <legend className="visually-hidden">{say.gapBetween(gap.stays, gap.moves)}</legend>
      <TypedLength
        label={say.gapBetween(gap.stays, gap.moves)}
        metres={gap.metres}
        put={(wanted) => write(shifted(data, [gap.moves], moveForGap(gap, wanted)))}
        at={[(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]}
      />
    </fieldset>
  );
}

export function GapLine({ design, view, size }: Drawn) {
  const selection = useWorkbench((s) => s.selection);
  const gap = useMemo(() => betweenTwo(design, selection), [design, selection]);
  if (!gap) return null;
  return (
    <g className="dimensions in-hand" {...unspoken}>
      <DimensionLine
        from={toScreen(view, size, gap.from)}
        to={toScreen(view, size, gap.to)}
        away={[0, 0]}
        distance={0}
      />
    </g>
  );
}
