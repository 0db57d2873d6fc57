import { parseQuantity } from '@cloche/engine';
import { useEffect, useState } from 'react';
import type { Problem } from '../engine/contract.js';
import { editValue, endEdit, renameThing, useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';
import type { Written } from './document.js';
import type { FieldProps } from './field-props.js';
import { idsInUse } from './find.js';
import { shownText } from './path.js';
import { readBack } from './read-back.js';
import type { Field } from './shapes.js';
import { Told } from './told.js';

type Trouble = Pick<Problem, 'message' | 'hint'>;
type Read = { readonly ok: true; readonly value: Written | undefined } | ({ readonly ok: false } & Trouble);

const wrong = (message: string, hint = ''): Read => ({ ok: false, message, hint });
const right = (value: Written | undefined): Read => ({ ok: true, value });

/** What a typed text becomes in the brief, or why it cannot stand there. */
function readTyped({ shape }: Field, text: string): Read {
  const typed = text.trim();
  if (typed === '') return right(undefined);
  if ('quantity' in shape) {
    const read = parseQuantity(typed, shape.quantity);
    return read.ok ? right(typed) : wrong(read.problems[0]?.message ?? '', read.problems[0]?.hint);
  }
  if ('whole' in shape) return /^\d+$/.test(typed) ? right(Number(typed)) : wrong(texts.forms.whole);
  if ('number' in shape) return Number.isFinite(Number(typed)) ? right(Number(typed)) : wrong(texts.forms.number);
  if ('money' in shape) return /^\d+(\.\d+)? [A-Z]{3}$/.test(typed) ? right(typed) : wrong(texts.forms.money);
  if ('ruleValue' in shape && Number.isFinite(Number(typed))) return right(Number(typed));
  if ('ruleValue' in shape && /^(true|false)$/.test(typed)) return right(typed === 'true');
  return right(text);
}

/** The name of a thing is written when it is whole: in between it would name nothing, and things would lose each other. */
function readId(text: string, before: string): Read {
  if (!/^[a-z][a-z0-9-]{0,39}$/.test(text)) return wrong(texts.forms.idForm);
  if (text !== before && idsInUse(useWorkbench.getState().data).has(text)) return wrong(texts.forms.idTaken(text));
  return right(text);
}

/** Figures stand at the right, where their units are. */
const isFigure = ({ shape }: Field): boolean =>
  'quantity' in shape || 'whole' in shape || 'number' in shape || 'money' in shape;

export function TypedField({ id, path, field, value, problem, assumed }: FieldProps) {
  const written = shownText(value);
  const [draft, setDraft] = useState<string | null>(null);
  const isId = 'id' in field.shape;
  // An edit from elsewhere (undo, a drag) takes the place of what was typed and accepted.
  useEffect(() => setDraft((now) => (now !== null && now.trim() === written ? now : null)), [written]);
  const text = draft ?? written;
  const read = isId ? readId(text, written) : readTyped(field, text);
  const told: Trouble | undefined = read.ok ? problem : read;
  const dimension = 'quantity' in field.shape ? field.shape.quantity : undefined;
  const type = (typed: string) => {
    setDraft(typed);
    const next = readTyped(field, typed);
    if (next.ok && !isId) editValue(path, next.value);
  };
  const leave = () => {
    if (isId && read.ok && text !== written) renameThing(path.slice(0, -1), text);
    endEdit();
  };
  return (
    <>
      <label htmlFor={id}>{field.label}</label>
      <input
        id={id}
        type="text"
        autoComplete="off"
        spellCheck={false}
        className={isFigure(field) ? 'quantity' : undefined}
        value={text}
        placeholder={assumed ? texts.forms.assumed(assumed) : texts.forms.empty}
        onChange={(e) => type(e.target.value)}
        onKeyDown={(e) => e.key === 'Enter' && isId && leave()}
        onBlur={leave}
        aria-invalid={told !== undefined}
        aria-describedby={`${id}-told`}
      />
      <Told id={`${id}-told`} problem={told} back={dimension && read.ok ? readBack(text, dimension) : null} />
    </>
  );
}
