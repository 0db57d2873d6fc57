import { gripOf } from './grips.js';

type Grip = ReturnType<typeof gripOf>;

const known = new WeakMap<object, Map<string, Grip>>();

/** `gripOf` for a state of the brief that never changes: every thing on the sheet asks for its own several times an edit. */
export function knownGrip(data: unknown, thing: string): Grip {
  if (typeof data !== 'object' || data === null) return [];
  const grips = known.get(data) ?? new Map<string, Grip>();
  known.set(data, grips);
  const grip = grips.get(thing) ?? gripOf(data, thing);
  grips.set(thing, grip);
  return grip;
}
