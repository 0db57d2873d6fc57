import { z } from 'zod';
import { point, q, size } from '../reading/quantity.js';

/**
 * A picture or drawing of the room that lies under the sheet while one draws. Nothing is computed from it, and a design is the
 * same with it or without.
 */
export const backgroundSchema = z.strictObject({
  /** SHA-256 of the file, in hexadecimal digits: the file itself is kept beside the brief. */
  file: z.string().regex(/^[0-9a-f]{64}$/, { error: 'The file is named by its SHA-256 in 64 hexadecimal digits.' }),
  name: z.string().min(1).max(200),
  /** Its lower left corner in the room. */
  at: point,
  /** Along its lower edge. */
  width: size('length'),
  /** About its lower left corner, counter-clockwise. */
  turn: q('angle').optional(),
  shown: z.boolean().optional(),
});
