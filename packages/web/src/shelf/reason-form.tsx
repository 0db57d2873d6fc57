import { type FormEvent, useId, useState } from 'react';
import { versionTexts as say } from '../texts/shelf-versions.js';

/** Asks why before something on the shelf changes; what went wrong is told where the reason was typed. */
export function ReasonForm({
  what,
  run,
  leave,
}: {
  readonly what: string;
  /** @returns what is wrong, or null when it was done */
  readonly run: (because: string) => Promise<string | null>;
  readonly leave: () => void;
}) {
  const id = useId();
  const [because, setBecause] = useState('');
  const [told, setTold] = useState<string | null>(null);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (because.trim() === '') return setTold(say.needsReason);
    const wrong = await run(because.trim());
    setTold(wrong === null ? null : `${say.failed}\n${wrong}`);
  };
  return (
    <form
      className="change-form"
      aria-label={what}
      onSubmit={submit}
      onKeyDown={(e) => {
        if (e.key !== 'Escape') return;
        e.preventDefault();
        e.stopPropagation();
        leave();
      }}
    >
      <label htmlFor={`${id}-because`}>{say.reason}</label>
      <input
        id={`${id}-because`}
        className="reason"
        // biome-ignore lint/a11y/noAutofocus: the person has just asked for it
        autoFocus
        autoComplete="off"
        maxLength={1000}
        value={because}
        aria-describedby={`${id}-told`}
        onChange={(e) => setBecause(e.target.value)}
      />
      <span className="buttons">
        <button type="submit" className="main-action">
          {say.doIt}
        </button>
        <button type="button" onClick={leave}>
          {say.leave}
        </button>
      </span>
      <span className="second whole">{say.safe}</span>
      <span id={`${id}-told`} className="trouble-text lines whole" role="status">
        {told}
      </span>
    </form>
  );
}
