import { parseQuantity } from '@cloche/engine';
import { useId, useLayoutEffect, useRef, useState } from 'react';
import { drawingTexts } from '../texts/drawing.js';
import { happen, putHere, scene, useHand } from './hand.js';
import { lengthText, typedLength, type Units } from './length-text.js';
import { angleText } from './polar.js';
import { isSettled } from './session.js';
import type { ToolField } from './tool.js';

const { hand: say } = drawingTexts;

const words: Readonly<Record<string, number>> = {
  east: 0,
  north: Math.PI / 2,
  west: Math.PI,
  south: -Math.PI / 2,
};

/** Degrees from east when it is a number alone. */
function typedAngle(text: string): number | null {
  const word = words[text.trim().toLowerCase()];
  if (word !== undefined) return word;
  const alone = /^-?[\d.,]+$/.test(text.trim());
  const read = parseQuantity(alone ? `${text.trim()} deg` : text, 'angle');
  return read.ok ? read.value : null;
}

/** A number for the next point: live while the pointer moves, fixed once it is typed. */
export function HandField({ field, units }: { readonly field: ToolField; readonly units: Units }) {
  const fixed = useHand((s) => s.session?.typed[field.id]);
  const [draft, setDraft] = useState('');
  const input = useRef<HTMLInputElement>(null);
  const id = useId();
  const read = field.kind === 'length' ? typedLength(draft, units) : typedAngle(draft);
  const wrong = draft.trim() !== '' && read === null;
  const change = (text: string) => {
    setDraft(text);
    const value = field.kind === 'length' ? typedLength(text, units) : typedAngle(text);
    happen({ kind: 'type', field: field.id, value });
  };
  // The next point has its own numbers, before the next key is pressed.
  useLayoutEffect(() => {
    if (fixed === undefined && document.activeElement !== input.current) setDraft('');
  }, [fixed]);
  return (
    <label className="hand-field" htmlFor={id}>
      <span>{field.label}</span>
      <input
        id={id}
        ref={input}
        type="text"
        autoComplete="off"
        spellCheck={false}
        data-field={field.id}
        aria-invalid={wrong}
        placeholder={field.kind === 'length' ? lengthText(field.value, units) : angleText(field.value)}
        title={wrong ? (field.kind === 'length' ? say.notLength : say.notAngle) : field.label}
        value={draft}
        onChange={(event) => change(event.target.value)}
        onKeyDown={(event) => {
          if (event.key === 'Escape') change('');
          else if (event.key !== 'Enter' || wrong) return;
          event.preventDefault();
          event.stopPropagation();
          toSheet();
          const { session } = useHand.getState();
          const now = scene();
          if (event.key === 'Enter' && session && now && isSettled(session, now)) {
            setDraft('');
            putHere();
          }
        }}
      />
    </label>
  );
}

/** Back to the sheet, where points are set. */
const toSheet = (): void => document.querySelector<SVGElement>('.in-hand-sheet')?.focus();
