import { type QuantityName, quantities, sameLength, sameNumber } from './quantities.js';
import type { Fact, FactValue } from './thing.js';

/** One field of a thing, as it was and as it is; null where it was not said. SI; `quantity` names what the number is. */
export interface FieldChange {
  readonly field: string;
  readonly before: FactValue;
  readonly after: FactValue;
  readonly quantity: QuantityName | null;
}

/** Fields in the order of the later state, then those that only the earlier one had. */
export function fieldChanges(before: readonly Fact[], after: readonly Fact[]): FieldChange[] {
  const old = new Map(before.map((f) => [f.field, f]));
  const now = new Map(after.map((f) => [f.field, f]));
  return [...new Set([...now.keys(), ...old.keys()])].flatMap((field): FieldChange[] => {
    const [was, is] = [old.get(field), now.get(field)];
    const quantity = is?.quantity ?? was?.quantity ?? null;
    const [a, b] = [was?.value ?? null, is?.value ?? null];
    return sameValue(a, b, quantity) ? [] : [{ field, before: a, after: b, quantity }];
  });
}

function sameValue(a: FactValue, b: FactValue, quantity: QuantityName | null): boolean {
  if (typeof a === 'number' && typeof b === 'number')
    return sameNumber(a, b, quantity === null ? 0 : quantities[quantity].slack);
  if (Array.isArray(a) && Array.isArray(b))
    return a.length === b.length && a.every((v, i) => Math.abs(v - b[i]) <= sameLength);
  return a === b;
}
