import { texts } from '../texts.js';
import type { Written } from './document.js';
import type { FieldProps } from './field-props.js';
import { shownText } from './path.js';
import { Told } from './told.js';

export interface Option {
  readonly value: Written;
  readonly text: string;
}

/** One of some words or things. What stands in the brief is shown even when it is none of them. */
export function ChoiceField({
  id,
  field,
  value,
  problem,
  assumed,
  options,
  choose,
  needed = false,
}: FieldProps & {
  readonly options: readonly Option[];
  readonly choose: (value: Written | undefined) => void;
  readonly needed?: boolean;
}) {
  const place = options.findIndex((option) => option.value === value);
  const odd = place < 0 ? shownText(value) : '';
  return (
    <>
      <label htmlFor={id}>{field.label}</label>
      <select
        id={id}
        value={odd === '' ? place : 'odd'}
        onChange={(e) => choose(options[Number(e.target.value)]?.value)}
        aria-invalid={problem !== undefined}
        aria-describedby={problem ? `${id}-told` : undefined}
      >
        {!needed && <option value={-1}>{assumed ? texts.forms.assumed(assumed) : texts.forms.empty}</option>}
        {odd !== '' && <option value="odd">{odd}</option>}
        {options.map((option, i) => (
          <option key={String(option.value)} value={i}>
            {option.text}
          </option>
        ))}
      </select>
      <Told id={`${id}-told`} problem={problem} />
    </>
  );
}
