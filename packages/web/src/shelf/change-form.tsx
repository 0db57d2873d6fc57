import { type FormEvent, useId, useState } from 'react';
import { shelfTexts as say } from '../texts/shelf.js';

/** A new value with the reason for it; neither is written without the other. */
export function ChangeForm({
  what,
  value,
  because,
  choices,
  check,
  keep,
  leave,
}: {
  readonly what: string;
  readonly value: string;
  readonly because: string;
  readonly choices?: readonly string[];
  /** Why a value cannot stand here; null when it can. */
  readonly check: (value: string) => string | null;
  readonly keep: (value: string, because: string) => void;
  readonly leave: () => void;
}) {
  const id = useId();
  const [typed, setTyped] = useState(value);
  const [reason, setReason] = useState(because);
  const [told, setTold] = useState<string | null>(null);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const wrong = check(typed.trim()) ?? (reason.trim() === '' ? say.becauseNeeded : null);
    setTold(wrong);
    if (wrong === null) keep(typed.trim(), reason.trim());
  };
  return (
    <form
      className="change-form"
      aria-label={say.changeWhat(what)}
      onSubmit={submit}
      onKeyDown={(e) => {
        if (e.key !== 'Escape') return;
        e.preventDefault();
        leave();
      }}
    >
      <label htmlFor={`${id}-value`}>{say.value}</label>
      {choices ? (
        <select id={`${id}-value`} value={typed} onChange={(e) => setTyped(e.target.value)}>
          {choices.map((each) => (
            <option key={each}>{each}</option>
          ))}
        </select>
      ) : (
        <input
          id={`${id}-value`}
          // biome-ignore lint/a11y/noAutofocus: the person has just asked to change this value
          autoFocus
          autoComplete="off"
          spellCheck={false}
          value={typed}
          onChange={(e) => setTyped(e.target.value)}
          aria-describedby={`${id}-told`}
        />
      )}
      <label htmlFor={`${id}-because`}>{say.because}</label>
      <input
        id={`${id}-because`}
        autoComplete="off"
        value={reason}
        onChange={(e) => setReason(e.target.value)}
        aria-describedby={`${id}-told`}
      />
      <span className="buttons">
        <button type="submit" className="main-action">
          {say.keep}
        </button>
        <button type="button" onClick={leave}>
          {say.cancel}
        </button>
      </span>
      <span id={`${id}-told`} className="trouble-text" role="status">
        {told}
      </span>
    </form>
  );
}
