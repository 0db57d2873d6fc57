import { type FieldChange, factText, movedText, turnedText } from '@cloche/engine';
import type { ThingChange } from '../engine/contract.js';
import { changesTexts } from '../texts/changes.js';
import { Swatch } from './swatch.js';

interface CompareThingsProps {
  readonly changes: readonly ThingChange[];
  readonly pointed: string | null;
  readonly onPoint: (id: string | null) => void;
}

/** What became of each thing; what only went along with another stands under it. */
export function CompareThings({ changes, pointed, onPoint }: CompareThingsProps) {
  return (
    <ul className="compare-things">
      {changes
        .filter((c) => !onlyAlong(c, changes))
        .map((change) => (
          <ThingRow
            key={`${change.kind} ${change.id} ${change.change}`}
            change={change}
            along={changes.filter((c) => c.along === change.id && onlyAlong(c, changes))}
            pointed={pointed === change.id}
            onPoint={onPoint}
          />
        ))}
    </ul>
  );
}

/** True when all there is to say of a thing is said with its carrier. */
const onlyAlong = (c: ThingChange, all: readonly ThingChange[]): boolean =>
  c.along !== null && c.resized.length === 0 && c.changed.length === 0 && all.some((other) => other.id === c.along);

interface ThingRowProps {
  readonly change: ThingChange;
  readonly along: readonly ThingChange[];
  readonly pointed: boolean;
  readonly onPoint: (id: string | null) => void;
}

function ThingRow({ change, along, pointed, onPoint }: ThingRowProps) {
  const { geometry } = changesTexts;
  return (
    <li className={pointed ? 'thing-change pointed' : 'thing-change'} data-change={change.id}>
      <button
        type="button"
        title={geometry.show(change.id)}
        onPointerEnter={() => onPoint(change.id)}
        onPointerLeave={() => onPoint(null)}
        onFocus={() => onPoint(change.id)}
        onBlur={() => onPoint(null)}
        onClick={() => onPoint(change.id)}
      >
        <Swatch of={swatchOf(change)} />
        <span className="what">
          {change.name}
          <span className="second">
            {' '}
            {change.id === change.name || change.id === change.kind ? change.kind : `${change.kind} ${change.id}`}
          </span>
        </span>
        <span className="told-change">{headOf(change)}</span>
      </button>
      {[...change.resized, ...change.changed].map((field) => (
        <FieldRow key={field.field} field={field} />
      ))}
      {along.length > 0 && <p className="field-change second">{geometry.along(along.map((c) => c.name).join(', '))}</p>}
    </li>
  );
}

/** One field as it is and as it was. */
export function FieldRow({ field }: { readonly field: FieldChange }) {
  const { before, after } = factText(field);
  return (
    <p className="field-change">
      <span>{field.field}</span> {after} <span className="second">{changesTexts.geometry.was(before)}</span>
    </p>
  );
}

function swatchOf({ change, moved }: ThingChange): 'added' | 'removed' | 'moved' | 'now' {
  if (change !== 'changed') return change;
  return moved ? 'moved' : 'now';
}

function headOf({ change, moved, turned }: ThingChange): string {
  const { geometry } = changesTexts;
  if (change !== 'changed') return geometry[change];
  return [
    ...(moved ? [geometry.moved(movedText(moved))] : []),
    ...(turned === null ? [] : [geometry.turned(turnedText(turned))]),
  ].join(', ');
}
