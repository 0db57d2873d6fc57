import { z } from 'zod';
import { id, point } from '../reading/quantity.js';

/** A point that stays in the room, or with `of` on a thing: then counted from the middle of the thing, east and north. */
const end = z.strictObject({ at: point, of: id.optional() });

/**
 * A distance that somebody wants to see on the plan whatever happens. Nothing is computed from it, and a design is the same with it
 * or without; an end on a thing that is gone is not drawn.
 */
export const distanceSchema = z.strictObject({ id, from: end, to: end });
