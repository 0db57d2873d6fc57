import type { Problem } from '../engine/contract.js';
import type { Path } from './path.js';
import type { Field } from './shapes.js';

/** What every kind of field is given. */
export interface FieldProps {
  readonly id: string;
  readonly path: Path;
  readonly field: Field;
  readonly value: unknown;
  readonly problem: Problem | undefined;
  /** What is taken while the value is left open. */
  readonly assumed: string | undefined;
}
