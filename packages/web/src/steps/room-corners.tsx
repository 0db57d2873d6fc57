import { FieldRow } from '../brief/field-row.js';
import type { Field } from '../brief/fields.js';
import { listAt } from '../brief/path.js';
import { useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';

const coordinates: readonly Field[] = [
  { path: [0], label: texts.forms.fromWest, shape: { quantity: 'length' } },
  { path: [1], label: texts.forms.fromSouth, shape: { quantity: 'length' } },
];

/** The outline of the room, corner by corner. */
export function RoomCorners() {
  const count = useWorkbench((s) => listAt(s.data, ['room', 'outline']).length);
  return (
    <details className="group">
      <summary>
        <span className="title">{texts.forms.corners}</span>
        <span className="count">{count}</span>
      </summary>
      {Array.from({ length: count }, (_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a corner is its number
        <fieldset key={i} className="fields corner">
          <legend>{texts.forms.corner(i)}</legend>
          {coordinates.map((field) => (
            <FieldRow key={field.label} base={['room', 'outline', i]} field={field} />
          ))}
        </fieldset>
      ))}
    </details>
  );
}
