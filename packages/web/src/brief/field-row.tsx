import { type Dimension, parseQuantity } from '@cloche/engine';
import { useEffect, useId, useState } from 'react';
import type { Problem } from '../engine/contract.js';
import { editValue, endEdit, useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';
import type { Written } from './document.js';
import type { Field } from './fields.js';
import { type Path, pathKey, shownText, valueAt } from './path.js';
import { readBack } from './read-back.js';

/** One typed value of the brief: its name, its field, what it reads as, and what is wrong with it. */
export function FieldRow({ base, field }: { readonly base: Path; readonly field: Field }) {
  const path = [...base, ...field.path];
  const hidden = useWorkbench(
    (s) => field.when !== undefined && valueAt(s.data, [...base, ...field.when[0]]) !== field.when[1],
  );
  const value = useWorkbench((s) => valueAt(s.data, path));
  const problem = useWorkbench((s) => s.problems.find((p) => pathKey(p.path) === pathKey(path)));
  const id = useId();
  if (hidden) return null;
  const { shape } = field;
  if ('choice' in shape)
    return <ChoiceRow id={id} path={path} label={field.label} words={shape.choice} value={value} problem={problem} />;
  if ('yesNo' in shape)
    return <ChoiceRow id={id} path={path} label={field.label} words={[true, false]} value={value} problem={problem} />;
  return <TypedRow key={pathKey(path)} id={id} path={path} field={field} value={value} problem={problem} />;
}

interface RowProps {
  readonly id: string;
  readonly path: Path;
  readonly value: unknown;
  readonly problem: Problem | undefined;
}

function ChoiceRow({
  id,
  path,
  label,
  words,
  value,
  problem,
}: RowProps & { readonly label: string; readonly words: readonly Written[] }) {
  const shown = (word: Written) => (word === true ? texts.forms.yes : word === false ? texts.forms.no : String(word));
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={words.indexOf(value as Written)}
        onChange={(e) => {
          editValue(path, words[Number(e.target.value)]);
          endEdit();
        }}
        aria-describedby={problem ? `${id}-told` : undefined}
      >
        <option value={-1}>{texts.forms.empty}</option>
        {words.map((word, i) => (
          <option key={String(word)} value={i}>
            {shown(word)}
          </option>
        ))}
      </select>
      <Told id={`${id}-told`} problem={problem?.message} hint={problem?.hint} />
    </div>
  );
}

type Read =
  | { readonly ok: true; readonly value: Written | undefined }
  | { readonly ok: false; readonly message: string; readonly hint: string };

/** What a typed text becomes in the brief, or why it cannot stand there. */
function readTyped(field: Field, text: string): Read {
  const { shape } = field;
  if (text.trim() === '') return { ok: true, value: undefined };
  if ('quantity' in shape) {
    const read = parseQuantity(text, shape.quantity);
    return read.ok ? { ok: true, value: text.trim() } : { ok: false, ...firstOf(read.problems) };
  }
  if ('whole' in shape)
    return /^\d+$/.test(text.trim())
      ? { ok: true, value: Number(text) }
      : { ok: false, message: texts.forms.whole, hint: '' };
  if ('number' in shape)
    return Number.isFinite(Number(text))
      ? { ok: true, value: Number(text) }
      : { ok: false, message: texts.forms.number, hint: '' };
  return { ok: true, value: text };
}

const firstOf = (problems: readonly Problem[]) => ({
  message: problems[0]?.message ?? '',
  hint: problems[0]?.hint ?? '',
});

function TypedRow({ id, path, field, value, problem }: RowProps & { readonly field: Field }) {
  const written = shownText(value);
  const [draft, setDraft] = useState<string | null>(null);
  // An edit from elsewhere (undo, a drag) takes the place of what was typed and accepted.
  useEffect(() => setDraft((now) => (now !== null && now.trim() === written ? now : null)), [written]);
  const text = draft ?? written;
  const read = readTyped(field, text);
  const dimension: Dimension | undefined = 'quantity' in field.shape ? field.shape.quantity : undefined;
  const told = read.ok ? problem : read;
  const type = (typed: string) => {
    setDraft(typed);
    const next = readTyped(field, typed);
    if (next.ok) editValue(path, next.value);
  };
  return (
    <div className={'text' in field.shape ? 'field words' : 'field'}>
      <label htmlFor={id}>{field.label}</label>
      <input
        id={id}
        type="text"
        autoComplete="off"
        spellCheck={false}
        className={dimension ? 'quantity' : undefined}
        value={text}
        placeholder={texts.forms.empty}
        onChange={(e) => type(e.target.value)}
        onBlur={endEdit}
        aria-invalid={told !== undefined}
        aria-describedby={`${id}-told`}
      />
      <Told
        id={`${id}-told`}
        problem={told?.message}
        hint={told?.hint}
        back={dimension && read.ok ? readBack(text, dimension) : null}
      />
    </div>
  );
}

interface ToldProps {
  readonly id: string;
  readonly problem: string | undefined;
  readonly hint?: string | undefined;
  readonly back?: string | null | undefined;
}

function Told({ id, problem, hint, back }: ToldProps) {
  return (
    <span id={id} className={problem ? 'told problem' : 'told'} aria-live="polite">
      {problem ? `${problem} ${hint ?? ''}` : back ? `= ${back}` : ''}
    </span>
  );
}
