import type { Design } from '../engine/contract.js';
import { useWorkbench } from '../state/store.js';
import { partLines } from '../steps/part-lines.js';
import { texts } from '../texts.js';
import type { AssemblyStep } from './assembly-order.js';
import { showStep, useSpace } from './space-store.js';

interface StepsSlipProps {
  readonly design: Design;
  readonly steps: readonly AssemblyStep[];
}

/** The assembly step by step: a slider over all steps, the step's name and what it brings. */
export function StepsSlip({ design, steps }: StepsSlipProps) {
  const step = useSpace((s) => s.step);
  const words = texts.space.steps;
  if (steps.length === 0) return <p>{words.none}</p>;
  const place = step === null ? steps.length : Math.min(step, steps.length - 1);
  const now = steps[place];
  const put = (to: number) => showStep(to >= steps.length ? null : Math.max(0, to));
  const name = now ? stepName(design, now) : words.whole;
  return (
    <>
      <div className="about">
        <label className="slide">
          <span>{words.slider}</span>
          <input
            type="range"
            min={1}
            max={steps.length + 1}
            value={place + 1}
            aria-valuetext={now ? `${words.count(place + 1, steps.length)}, ${name}` : words.whole}
            onChange={(e) => put(Number(e.target.value) - 1)}
          />
          <span className="number">{now ? words.count(place + 1, steps.length) : words.whole}</span>
        </label>
        <div className="adds">
          <button type="button" disabled={place === 0} onClick={() => put(place - 1)}>
            {words.before}
          </button>
          <button type="button" disabled={!now} onClick={() => put(place + 1)}>
            {words.after}
          </button>
          <button type="button" className="quiet" disabled={!now} onClick={() => showStep(null)}>
            {words.all}
          </button>
        </div>
        <p className="caution">{words.caution}</p>
      </div>
      <div className="step-now" aria-live="polite">
        {now && (
          <>
            <h3>{name}</h3>
            <StepParts step={now} />
          </>
        )}
      </div>
    </>
  );
}

const stepName = ({ enclosures, runs }: Design, { stage, of }: AssemblyStep): string =>
  texts.space.steps.name(stage, of === null ? null : ([...enclosures, ...runs].find((t) => t.id === of)?.name ?? of));

/** What a step brings: marks, items and counts. */
function StepParts({ step }: { readonly step: AssemblyStep }) {
  const itemNames = useWorkbench((s) => s.computed?.itemNames);
  return (
    <ul>
      {[...partLines(step.parts).values()].flat().map((line) => (
        <li key={line.key}>
          <span className="count">{line.count}</span>
          {line.mark && <span className="mark">{line.mark}</span>}
          <span>{itemNames?.[line.item] ?? line.item}</span>
        </li>
      ))}
    </ul>
  );
}
