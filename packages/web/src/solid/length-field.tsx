import { millimetreText, parseQuantity } from '@cloche/engine';
import { type KeyboardEvent, useEffect, useId, useState } from 'react';
import { Told } from '../brief/told.js';
import type { Problem } from '../engine/contract.js';

interface LengthFieldProps {
  readonly label: string;
  /** What the field is, where its label alone does not say it. */
  readonly name?: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** What is said of a length outside its limits. */
  readonly outside: (low: string, high: string) => string;
  readonly outsideHint: string;
  readonly change: (metres: number) => void;
}

type Trouble = Pick<Problem, 'message' | 'hint'>;

/** One press of an arrow key, and with Shift [m]. */
export const keySteps = [0.01, 0.1] as const;

/** A length that is typed with its unit or stepped with the arrow keys; what cannot stand is told and not taken. */
export function LengthField({ label, name, value, low, high, outside, outsideHint, change }: LengthFieldProps) {
  const id = useId();
  const shown = millimetreText(value);
  const [draft, setDraft] = useState<string | null>(null);
  // A value from elsewhere (a drag) takes the place of what was typed and taken.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the shown value is what changes
  useEffect(() => setDraft((now) => (now !== null && readLength(now) === value ? now : null)), [shown]);
  const text = draft ?? shown;
  const trouble = troubleOf(text, low, high, outside, outsideHint);
  const type = (typed: string) => {
    setDraft(typed);
    const metres = readLength(typed);
    if (metres !== null && metres >= low && metres <= high) change(metres);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const sign = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : 0;
    if (event.key === 'Enter' && !trouble) setDraft(null);
    if (sign === 0) return;
    event.preventDefault();
    setDraft(null);
    change(Math.min(high, Math.max(low, value + sign * keySteps[event.shiftKey ? 1 : 0])));
  };
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        autoComplete="off"
        spellCheck={false}
        className="quantity"
        aria-label={name}
        value={text}
        onChange={(e) => type(e.target.value)}
        onKeyDown={onKeyDown}
        onBlur={() => !trouble && setDraft(null)}
        aria-invalid={trouble !== undefined}
        aria-describedby={`${id}-told`}
      />
      <Told id={`${id}-told`} problem={trouble} />
    </div>
  );
}

function readLength(text: string): number | null {
  const read = parseQuantity(text.trim(), 'length');
  return read.ok ? read.value : null;
}

function troubleOf(
  text: string,
  low: number,
  high: number,
  outside: LengthFieldProps['outside'],
  hint: string,
): Trouble | undefined {
  const read = parseQuantity(text.trim(), 'length');
  if (!read.ok) return { message: read.problems[0]?.message ?? '', hint: read.problems[0]?.hint ?? '' };
  if (read.value >= low - 5e-4 && read.value <= high + 5e-4) return undefined;
  return { message: outside(millimetreText(low), millimetreText(high)), hint };
}
