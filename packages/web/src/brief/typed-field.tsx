import { useEffect, useState } from 'react';
import { editValue, endEdit, renameThing, useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';
import type { FieldProps } from './field-props.js';
import { idsInUse } from './find.js';
import { shownText } from './path.js';
import { readBack } from './read-back.js';
import { type Read, readTyped, right, type Trouble, wrong } from './read-typed.js';
import type { Field } from './shapes.js';
import { Told } from './told.js';

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
