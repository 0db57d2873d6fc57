import { numberText } from '@cloche/engine';
import { localNumber } from '../locale.js';
import { millimetres } from '../plan/dimensions.js';
import { fittingTexts as say } from '../texts/fitting.js';
import type { Fitting, FittingLine, FittingPiece, FittingStep } from './fitting.js';

/** Lists that look the same on the page and in the file that is kept; only who hears of a tick differs. */
export interface Ticking {
  readonly done: ReadonlySet<string>;
  readonly onTick?: (key: string, done: boolean) => void;
}

export function Steps({ fitting, ticking }: { readonly fitting: Fitting; readonly ticking: Ticking }) {
  if (fitting.steps.length === 0) return <p className="nothing">{say.nothing}</p>;
  return (
    <>
      <p className="caution">{say.caution}</p>
      <ol className="steps">
        {fitting.steps.map((step, i) => (
          <Step key={step.name} step={step} number={i + 1} ticking={ticking} />
        ))}
      </ol>
    </>
  );
}

function Step({
  step,
  number,
  ticking,
}: {
  readonly step: FittingStep;
  readonly number: number;
  readonly ticking: Ticking;
}) {
  const done = step.lines.filter((line) => ticking.done.has(line.key)).length;
  return (
    <li>
      <details open={done < step.lines.length}>
        <summary>
          <h2>{say.step(number, step.name)}</h2>
          <span className="count">{say.done(done, step.lines.length)}</span>
        </summary>
        <ul>
          {step.lines.map((line) => (
            <li key={line.key}>
              <label className="line">
                <input
                  type="checkbox"
                  data-key={line.key}
                  aria-label={say.tick(line.mark ?? line.name)}
                  {...(ticking.onTick
                    ? {
                        checked: ticking.done.has(line.key),
                        onChange: (e) => ticking.onTick?.(line.key, e.currentTarget.checked),
                      }
                    : { defaultChecked: ticking.done.has(line.key) })}
                />
                <LineText line={line} />
              </label>
            </li>
          ))}
        </ul>
      </details>
    </li>
  );
}

function LineText({ line }: { readonly line: FittingLine }) {
  return (
    <span className="what">
      <span className={line.mark === null ? undefined : 'mark'}>{line.mark ?? line.name}</span>
      <span className="times">{say.times(line.count)}</span>
      {line.mark !== null && <span className="name">{line.name}</span>}
      <span className="sizes">{sizesOf(line)}</span>
    </span>
  );
}

function sizesOf({ length, width, mass, note }: FittingLine): string {
  const size =
    length === null
      ? ''
      : width === null
        ? say.length(millimetres(length))
        : say.size(millimetres(length), millimetres(width));
  // Light pieces are carried by anybody; their mass would only be noise.
  const heavy = mass >= 1 ? say.mass(localNumber(numberText(mass, 2))) : '';
  return [size, heavy, note ?? ''].filter(Boolean).join(', ');
}

export function Pieces({ pieces, wanted }: { readonly pieces: readonly FittingPiece[]; readonly wanted: string }) {
  const asked = wanted.trim().toLowerCase();
  const shown = pieces.filter((piece) => piece.mark!.toLowerCase().includes(asked));
  if (shown.length === 0) return <p className="nothing">{asked === '' ? say.nothing : say.noPiece(wanted)}</p>;
  return (
    <ul className="pieces">
      {shown.map((piece) => (
        <li key={piece.key} data-mark={piece.mark}>
          <LineText line={piece} />
          <p className="second">{say.goesInto(say.step(piece.step, piece.stepName))}</p>
        </li>
      ))}
    </ul>
  );
}
