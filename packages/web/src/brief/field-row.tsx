import { useId } from 'react';
import type { Design } from '../engine/contract.js';
import { editObject, editValue, endEdit, useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';
import { ChoiceField, type Option } from './choice-field.js';
import type { Written } from './document.js';
import type { FieldProps } from './field-props.js';
import { isShown } from './is-shown.js';
import { type Path, pathKey, valueAt } from './path.js';
import { PlaceField } from './place-field.js';
import { namedOf } from './references.js';
import { SeveralField } from './several-field.js';
import { type Field, quantity } from './shapes.js';
import { TypedField } from './typed-field.js';

export { isShown };

/** One value of the brief: its name, its field, what it reads as, and what is wrong with it. */
export function FieldRow({ base, field }: { readonly base: Path; readonly field: Field }) {
  const path = [...base, ...field.path];
  const shown = useWorkbench((s) => isShown(s.data, base, field));
  const value = useWorkbench((s) => valueAt(s.data, path));
  const problem = useWorkbench((s) => s.problems.find((p) => saidBeside(p.path, path)));
  const assumed = useWorkbench((s) => (value === undefined ? assumedAt(s.computed?.design, base, field) : undefined));
  const id = useId();
  if (!shown) return null;
  const props = { id, path, field, value, problem, assumed };
  return (
    <div className={isWide(field) ? 'field wide' : 'field'} data-path={pathKey(path)}>
      <Control {...props} />
    </div>
  );
}

/** A problem with a whole point or list stands beside its first value. */
const saidBeside = (told: Path, path: Path): boolean =>
  pathKey(told) === pathKey(path) || (path.at(-1) === 0 && pathKey(told) === pathKey(path.slice(0, -1)));

/** What the design assumes for a value, or for the object that the value is the heart of. */
function assumedAt(design: Design | undefined, base: Path, { path, heart }: Field): string | undefined {
  if (!design) return undefined;
  const assumed = byPath(design.assumptions);
  const at = (each: Path) => assumed.get(pathKey([...base, ...each]));
  return at(path) ?? (heart ? at(heart) : undefined);
}

const indexed = new WeakMap<Design['assumptions'], ReadonlyMap<string, string>>();

/** Assumptions by their place: every empty field asks at every edit. */
function byPath(assumptions: Design['assumptions']): ReadonlyMap<string, string> {
  const before = indexed.get(assumptions);
  if (before) return before;
  const index = new Map([...assumptions].reverse().map((a) => [pathKey(a.path), a.value]));
  indexed.set(assumptions, index);
  return index;
}

const isWide = ({ shape }: Field): boolean =>
  'text' in shape || 'references' in shape || 'several' in shape || 'place' in shape;

function Control(props: FieldProps) {
  const { shape } = props.field;
  if ('choice' in shape)
    return <ChoiceField {...props} options={shape.choice.map(asOption)} choose={choosing(props)} />;
  if ('yesNo' in shape)
    return <ChoiceField {...props} options={[true, false].map(asOption)} choose={choosing(props)} />;
  if ('variants' in shape) return <VariantField {...props} objects={shape.variants} />;
  if ('reference' in shape || 'item' in shape || 'profile' in shape || 'rule' in shape)
    return <NamedField {...props} />;
  if ('references' in shape || 'several' in shape) return <SeveralField {...props} />;
  if ('place' in shape)
    return (
      <PlaceField {...props} kinds={shape.place}>
        {coordinates.map((each) => (
          <FieldRow key={each.label} base={props.path} field={each} />
        ))}
      </PlaceField>
    );
  return <TypedField key={pathKey(props.path)} {...props} />;
}

const coordinates = [quantity('0', texts.forms.fromWest), quantity('1', texts.forms.fromSouth)];

const asOption = (value: Written): Option => ({
  value,
  text: value === true ? texts.forms.yes : value === false ? texts.forms.no : String(value),
});

/** Writes a chosen word; left open, the object that cannot be without it goes as well. */
const choosing =
  ({ path, field }: FieldProps) =>
  (value: Written | undefined) => {
    const base = path.slice(0, path.length - field.path.length);
    editValue(value === undefined && field.heart ? [...base, ...field.heart] : path, value);
    endEdit();
  };

function VariantField({
  objects,
  ...props
}: FieldProps & { readonly objects: Readonly<Record<string, Readonly<Record<string, unknown>>>> }) {
  const [above, key] = [props.path.slice(0, -1), String(props.path.at(-1))];
  return (
    <ChoiceField
      {...props}
      needed
      options={Object.keys(objects).map(asOption)}
      choose={(word) => editObject(above, { [key]: word, ...objects[String(word)] })}
    />
  );
}

/** A choice from what there is: things of the brief, items of the catalogue, rules. */
function NamedField(props: FieldProps) {
  const data = useWorkbench((s) => s.data);
  const shelf = useWorkbench((s) => s.shelf);
  const { shape } = props.field;
  const named =
    'reference' in shape
      ? namedOf(data, shape.reference)
      : 'item' in shape
        ? shelf.items.filter((i) => shape.item.includes(i.kind) && (shape.of === undefined || i.use === shape.of))
        : 'profile' in shape
          ? shelf.profiles
          : shelf.rules;
  const options = named.map(({ id, name }) => ({ value: id, text: name }));
  return <ChoiceField {...props} options={options} choose={choosing(props)} />;
}
