import { groupDigits, parseQuantity } from '@cloche/engine';
import { type CSSProperties, useEffect, useLayoutEffect, useRef, useState } from 'react';
import { lengthText, unitsOf } from '../drawing/length-text.js';
import type { Vec2 } from '../engine/contract.js';
import { useWorkbench } from '../state/store.js';

interface TypedLengthProps {
  /** What the length is, for its name and its tip. */
  readonly label: string;
  readonly metres: number;
  readonly put: (metres: number) => void;
  /** Middle of the field on the sheet, pixels; in the flow of a form when left out. */
  readonly at?: Vec2;
  /** Turned with its dimension line, degrees. */
  readonly angle?: number;
  /** Without its unit while it is only read, as on a drawing in millimetres. */
  readonly bare?: boolean;
}

/** A length in the units of the project without spaces between its digits, as people type it. */
export const useShownLength = (metres: number): string => {
  const units = useWorkbench((s) => unitsOf(s.data));
  return lengthText(metres, units).replace(/(\d)\s(?=\d{3}\b(?! ?\/))/g, '$1');
};

/** Millimetres as a drawing has them, without their name; feet and inches as they are. */
const withoutUnit = (text: string): string => (text.endsWith(' mm') ? groupDigits(Number(text.slice(0, -3))) : text);

/** A dimension that is read like any other, and typed where it stands. */
export function TypedLength({ label, metres, put, at, angle = 0, bare = false }: TypedLengthProps) {
  const shown = useShownLength(metres);
  const [draft, setDraft] = useState<string | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another length takes the place of what was typed
  useEffect(() => setDraft(null), [shown]);
  const [focused, setFocused] = useState(false);
  const field = useRef<HTMLInputElement>(null);
  // With its unit the text is another one: what is typed next replaces the whole of it.
  useLayoutEffect(() => {
    if (focused) field.current?.select();
  }, [focused]);
  const text = draft ?? (bare && !focused ? withoutUnit(shown) : shown);
  const read = parseQuantity(draft ?? shown, 'length');
  const leave = () => {
    if (draft !== null && draft !== shown && read.ok) put(read.value);
    if (read.ok) setDraft(null);
  };
  const style: CSSProperties = at
    ? { left: at[0], top: at[1], width: `${text.length + 2.5}ch`, ...(angle === 0 ? {} : { rotate: `${angle}deg` }) }
    : {};
  return (
    <input
      ref={field}
      type="text"
      autoComplete="off"
      spellCheck={false}
      aria-label={label}
      aria-invalid={!read.ok}
      title={read.ok ? label : (read.problems[0]?.message ?? '')}
      style={style}
      value={text}
      onChange={(e) => setDraft(e.target.value)}
      onFocus={() => setFocused(true)}
      onBlur={() => {
        leave();
        setFocused(false);
      }}
      onKeyDown={(e) => {
        if (e.key === 'Enter') leave();
        if (e.key === 'Escape') setDraft(null);
      }}
    />
  );
}
