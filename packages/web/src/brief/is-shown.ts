import { type Path, valueAt } from './path.js';
import type { Field } from './shapes.js';

/** Whether a field belongs to its thing as it stands: the power of a continuous laser, not of a pulsed one. */
export function isShown(data: unknown, base: Path, { when }: Field): boolean {
  if (!when) return true;
  const value = valueAt(data, [...base, ...when[0]]);
  return typeof when[1] === 'boolean' ? (value !== undefined) === when[1] : value === when[1];
}
