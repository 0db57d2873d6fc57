import { z } from 'zod';
import { id, money, point, q, size } from '../reading/quantity.js';

/** Sides of a table or enclosure, along its own axes: south and north are the long sides of one that is not turned. */
export const sideName = z.enum(['south', 'east', 'north', 'west']);

const place = z.union([id, point]);

export const needsSchema = z.strictObject({
  cleanliness: z
    .array(
      z.strictObject({
        where: id,
        isoClass: z.number().min(1).max(9),
        size: size('length'),
        state: z.enum(['as-built', 'at-rest', 'operational']),
        people: z.int().min(0).optional(),
        clothing: z.enum(['indoor', 'cleanroom']).optional(),
        /** Longest wait from opening or switching on until the class is reached. */
        recoveryWithin: size('time').optional(),
      }),
    )
    .optional(),
  background: z
    .strictObject({ concentration: size('concentration'), size: size('length'), measured: z.boolean().optional() })
    .optional(),
  darkness: z
    .array(
      z.strictObject({ where: id, illuminance: q('illuminance', { min: 0 }), outside: size('illuminance').optional() }),
    )
    .optional(),
  /** Sides that people must reach. */
  access: z
    .array(z.strictObject({ to: id, sides: z.array(sideName).min(1), width: size('length').optional() }))
    .optional(),
  ways: z
    .array(
      z.strictObject({ from: place, to: place, width: size('length').optional(), persons: z.int().min(1).optional() }),
    )
    .optional(),
  light: z
    .array(
      z.strictObject({
        where: id,
        illuminance: size('illuminance'),
        colour: z.string().optional(),
        dimmable: z.boolean().optional(),
      }),
    )
    .optional(),
  noise: z.strictObject({ limit: size('sound level'), at: point.optional() }).optional(),
  temperature: z
    .array(
      z.strictObject({
        where: id,
        target: size('temperature').optional(),
        rise: size('temperature difference').optional(),
        stability: size('temperature difference').optional(),
      }),
    )
    .optional(),
  electricalSupply: z.strictObject({ available: size('power'), voltage: size('voltage').optional() }).optional(),
  movable: z.array(id).optional(),
  budget: money.optional(),
  phases: z.array(z.strictObject({ id, name: z.string(), includes: z.array(id).min(1) })).optional(),
  monitoring: z
    .strictObject({
      particles: z.boolean().optional(),
      pressure: z.boolean().optional(),
      temperature: z.boolean().optional(),
    })
    .optional(),
  accessibleRoute: z.boolean().optional(),
  hazards: z.array(z.enum(['fume', 'gas', 'biological', 'cryogen'])).optional(),
});
