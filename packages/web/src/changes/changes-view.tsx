import { useEffect, useId, useState } from 'react';
import type { ComparisonAnswer, Problem } from '../engine/contract.js';
import { compareTexts } from '../state/store.js';
import { changesTexts } from '../texts/changes.js';
import { CompareSheet, type CompareSheetProps } from './compare-sheet.js';

/** A state of the project that can be compared: its brief, and what it is called in the choices; no two are called alike. */
export interface NamedState {
  readonly label: string;
  readonly text: string;
}

interface ChangesViewProps {
  /** The earliest first; at first the last two are laid beside each other. */
  readonly states: readonly NamedState[];
  /** Opens a finding when the later state is the last one of the list. */
  readonly onOpenFinding?: CompareSheetProps['onOpenFinding'];
}

/** Two states chosen from a list, and what differs between them. */
export function ChangesView({ states, onOpenFinding }: ChangesViewProps) {
  const [chosen, choose] = useState<{ readonly before?: string; readonly after?: string }>({});
  const named = (label: string | undefined) => states.find((s) => s.label === label);
  const before = named(chosen.before) ?? states.at(-2) ?? states[0];
  const last = states.at(-1);
  const after = named(chosen.after) ?? last;
  if (!before || !after) return null;
  return (
    <div className="changes">
      <h2 className="visually-hidden">{changesTexts.label}</h2>
      <div className="compare-choice">
        <StateChoice
          name={changesTexts.before}
          states={states}
          value={before.label}
          onChange={(label) => choose({ ...chosen, before: label })}
        />
        <StateChoice
          name={changesTexts.after}
          states={states}
          value={after.label}
          onChange={(label) => choose({ ...chosen, after: label })}
        />
        <button type="button" onClick={() => choose({ before: after.label, after: before.label })}>
          {changesTexts.turnRound}
        </button>
      </div>
      <Answered before={before} after={after} onOpenFinding={after === last ? onOpenFinding : undefined} />
    </div>
  );
}

interface StateChoiceProps {
  readonly name: string;
  readonly states: readonly NamedState[];
  readonly value: string;
  readonly onChange: (label: string) => void;
}

function StateChoice({ name, states, value, onChange }: StateChoiceProps) {
  const id = useId();
  return (
    <span className="state-choice">
      <label htmlFor={id}>{name}</label>
      <select id={id} value={value} onChange={(event) => onChange(event.target.value)}>
        {states.map(({ label }) => (
          <option key={label} value={label}>
            {label}
          </option>
        ))}
      </select>
    </span>
  );
}

interface AnsweredProps extends Pick<CompareSheetProps, 'onOpenFinding'> {
  readonly before: NamedState;
  readonly after: NamedState;
}

function Answered({ before, after, onOpenFinding }: AnsweredProps) {
  const answer = useComparison(before.text, after.text);
  if (!answer) return <p className="waiting">{changesTexts.waiting}</p>;
  if (answer.ok) return <CompareSheet {...answer.value} onOpenFinding={onOpenFinding} />;
  return (
    <div className="unreadable">
      <Unreadable label={before.label} problems={answer.problems.before} />
      <Unreadable label={after.label} problems={answer.problems.after} />
    </div>
  );
}

function Unreadable({ label, problems }: { readonly label: string; readonly problems: readonly Problem[] }) {
  if (problems.length === 0) return null;
  return (
    <section>
      <h3>{changesTexts.unreadable(label)}</h3>
      <ul>
        {problems.map((p) => (
          <li key={`${p.code} ${p.path.join('.')}`}>
            {p.message} <span className="second">{p.hint}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The newest answer of the worker; the one before stands until it comes. */
function useComparison(before: string, after: string): ComparisonAnswer | null {
  const [answer, setAnswer] = useState<ComparisonAnswer | null>(null);
  useEffect(() => {
    let gone = false;
    compareTexts([before, after], (given) => {
      if (!gone) setAnswer(given);
    });
    return () => {
      gone = true;
    };
  }, [before, after]);
  return answer;
}
