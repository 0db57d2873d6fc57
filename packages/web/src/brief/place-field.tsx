import type { ReactNode } from 'react';
import { editObject, editValue, endEdit, useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';
import { ChoiceField } from './choice-field.js';
import type { FieldProps } from './field-props.js';
import { groundOf } from './ground.js';
import { namedOf } from './references.js';
import type { Kind } from './shapes.js';

const aPoint = 'a point';

interface PlaceProps extends FieldProps {
  readonly kinds: readonly Kind[];
  /** The coordinates of the point. */
  readonly children: ReactNode;
}

/** A thing of the brief, or a point that is typed. */
export function PlaceField({ kinds, children, ...props }: PlaceProps) {
  const data = useWorkbench((s) => s.data);
  const isPoint = Array.isArray(props.value);
  const options = [
    ...namedOf(data, kinds).map(({ id, name }) => ({ value: id, text: name })),
    { value: aPoint, text: texts.forms.aPoint },
  ];
  return (
    <>
      <ChoiceField
        {...props}
        value={isPoint ? aPoint : props.value}
        needed
        options={options}
        choose={(chosen) => {
          if (chosen === aPoint) editObject(props.path, middle());
          else editValue(props.path, chosen);
          endEdit();
        }}
      />
      {isPoint && children}
    </>
  );
}

const middle = (): string[] => {
  const { outline } = groundOf(useWorkbench.getState().computed?.design);
  return [0, 1].map((k) => {
    const values = outline.map((p) => p[k]!);
    return `${((Math.min(...values) + Math.max(...values)) / 2).toFixed(2)} m`;
  });
};
