import { editObject, editValue, useWorkbench } from '../state/store.js';
import type { FieldProps } from './field-props.js';
import { namedOf } from './references.js';
import { Told } from './told.js';

/** Any number of words or things, each with its tick. */
export function SeveralField({ id, path, field, value, problem }: FieldProps) {
  const data = useWorkbench((s) => s.data);
  const { shape } = field;
  const chosen = Array.isArray(value) ? value.map(String) : [];
  const known =
    'several' in shape
      ? shape.several.map((word) => ({ id: word, name: word }))
      : 'references' in shape
        ? namedOf(data, shape.references)
        : [];
  const odd = chosen.filter((each) => !known.some((k) => k.id === each)).map((each) => ({ id: each, name: each }));
  const tick = (which: string, on: boolean) => {
    const next = on ? [...chosen, which] : chosen.filter((each) => each !== which);
    if (next.length === 0) editValue(path, undefined);
    else editObject(path, next);
  };
  return (
    <fieldset className="several" aria-describedby={problem ? `${id}-told` : undefined}>
      <legend>{field.label}</legend>
      {[...known, ...odd].map((each) => (
        <label key={each.id}>
          <input type="checkbox" checked={chosen.includes(each.id)} onChange={(e) => tick(each.id, e.target.checked)} />
          {each.name}
        </label>
      ))}
      <Told id={`${id}-told`} problem={problem} />
    </fieldset>
  );
}
