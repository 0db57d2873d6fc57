import { z } from 'zod';
import { id, point, q, size } from '../reading/quantity.js';
import { sideName } from './needs.js';

const closure = z.strictObject({
  closure: z.enum(['curtain', 'strip', 'rigid panel', 'open']),
  /** Catalogue item; chosen by rule when left out. */
  item: id.optional(),
});

export const layoutSchema = z.strictObject({
  enclosures: z
    .array(
      z.strictObject({
        id,
        name: z.string().optional(),
        kind: z.enum(['close', 'walk-in']),
        around: z.array(id).min(1),
        /** Clear distance from the table tops to the inside of the frame. */
        gap: size('length').optional(),
        /** Distance on single sides, where it differs from `gap`. */
        gaps: z.partialRecord(sideName, size('length')).optional(),
        /** Underside of the roof beams above the floor. */
        clearHeight: size('length').optional(),
        sides: z.partialRecord(sideName, closure).optional(),
        hemGap: q('length', { min: 0 }).optional(),
        profile: id.optional(),
        unit: id.optional(),
        unitCount: z.int().min(0).optional(),
        light: id.optional(),
        lightCount: z.int().min(0).optional(),
        feet: z.enum(['levelling', 'foot plate', 'caster']).optional(),
      }),
    )
    .optional(),
  runs: z
    .array(
      z.strictObject({
        id,
        name: z.string().optional(),
        kind: z.enum(['bay', 'partition', 'shelf']),
        /** Corners of the track line in plan, in order; a closed run returns to the first by itself. */
        path: z.array(point).min(2),
        closed: z.boolean().optional(),
        corner: z.enum(['curve', 'connector']).optional(),
        hung: z.enum(['ceiling', 'wall', 'floor post', 'frame', 'shelf']),
        /** Enclosure that carries a run hung from a frame, or table that carries the shelf. */
        on: id.optional(),
        /** Underside of the track above the floor. */
        trackHeight: size('length'),
        hemGap: q('length', { min: 0 }).optional(),
        cloth: id.optional(),
        track: id.optional(),
        /** Where panels part: distance along the path to the middle, and the free width. */
        openings: z.array(z.strictObject({ at: q('length', { min: 0 }), width: size('length') })).optional(),
        /** Where no support may be fixed, along the path. */
        noSupport: z
          .array(z.strictObject({ from: q('length', { min: 0 }), to: size('length'), because: z.string() }))
          .optional(),
      }),
    )
    .optional(),
  covers: z.array(z.strictObject({ id, over: id, item: id.optional() })).optional(),
  signs: z
    .array(
      z.strictObject({
        id,
        door: id,
        item: id.optional(),
        lit: z.boolean().optional(),
        height: size('length').optional(),
      }),
    )
    .optional(),
  stops: z.array(z.strictObject({ id, at: point, height: size('length').optional(), item: id.optional() })).optional(),
  interlocks: z
    .array(z.strictObject({ id, on: id, item: id.optional(), defeatable: z.boolean().optional() }))
    .optional(),
  sensors: z
    .array(z.strictObject({ id, where: id, at: point, height: size('length').optional(), item: id.optional() }))
    .optional(),
});
