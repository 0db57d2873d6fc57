import { type Dimension, parseQuantity } from '@cloche/engine';
import { useId } from 'react';

interface QuantityFieldProps {
  readonly label: string;
  readonly text: string;
  readonly set: (text: string) => void;
  readonly dimension: Dimension;
}

/** A quantity that is only used when its button is pressed. */
export function QuantityField({ label, text, set, dimension }: QuantityFieldProps) {
  const id = useId();
  const read = parseQuantity(text, dimension);
  return (
    <span className="small-field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        autoComplete="off"
        spellCheck={false}
        value={text}
        onChange={(e) => set(e.target.value)}
        aria-invalid={!read.ok}
        title={read.ok ? label : `${read.problems[0]?.message ?? ''} ${read.problems[0]?.hint ?? ''}`}
      />
    </span>
  );
}

/** The number in SI, or null while the text is none. */
export const siOf = (text: string, dimension: Dimension): number | null => {
  const read = parseQuantity(text, dimension);
  return read.ok ? read.value : null;
};
