import { distance2 } from '@cloche/engine';
import type { Design } from '../../engine/contract.js';
import { type PlanView, type Size, toScreen } from '../../plan/view.js';
import { arrangeTexts as say } from '../../texts/arrange.js';
import { TypedLength } from '../typed-length.js';
import { dropDistance, endsOf, setDistance, useKept } from './kept.js';

/** Distances that stay on the sheet, typed where they stand: the thing at one end moves. */
export function KeptInputs({
  design,
  view,
  size,
}: {
  readonly design: Design;
  readonly view: PlanView;
  readonly size: Size;
}) {
  const kept = useKept();
  if (kept.length === 0) return null;
  return (
    <fieldset className="dimension-inputs in-hand kept">
      <legend className="visually-hidden">{say.measure.kept}</legend>
      {kept.map((distance) => {
        const ends = endsOf(design, distance);
        if (!ends) return null;
        const [a, b] = ends;
        const [p, q] = [toScreen(view, size, a), toScreen(view, size, b)];
        const at = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2] as const;
        return (
          <span key={distance.number}>
            <TypedLength
              label={say.measure.keptDistance(distance.number)}
              metres={distance2(a, b)}
              put={(wanted) => setDistance(design, distance, wanted)}
              at={at}
            />
            <button
              type="button"
              className="drop-distance"
              style={{ left: at[0] + 52, top: at[1] }}
              aria-label={say.measure.dropDistance(distance.number)}
              title={say.measure.dropDistance(distance.number)}
              onClick={() => dropDistance(distance)}
            >
              ×
            </button>
          </span>
        );
      })}
    </fieldset>
  );
}
