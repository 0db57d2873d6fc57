import { z } from 'zod';
import { id } from '../reading/quantity.js';
import { amendmentFields } from './amendments.js';
import { backgroundSchema } from './background.js';
import { distanceSchema } from './distances.js';
import { layoutSchema } from './layout.js';
import { needsSchema } from './needs.js';
import { equipmentSchema, laserSchema, roomSchema, tableSchema } from './survey.js';

/** The version of the brief that this engine reads. */
export const briefVersion = 1;

export const briefSchema = z.strictObject({
  cloche: z.literal(briefVersion),
  project: z.strictObject({
    name: z.string().min(1),
    number: z.string().max(16).optional(),
    owner: z.string().optional(),
    author: z.string().max(20).optional(),
    contact: z.string().optional(),
    laserSafetyOfficer: z.string().optional(),
    note: z.string().optional(),
    /** True for examples and other data that describe no real room. */
    invented: z.boolean().optional(),
    units: z.enum(['metric', 'imperial']).optional(),
  }),
  site: z
    .strictObject({
      /** Name of the rule profile in force. */
      rules: id.optional(),
      overrides: z
        .array(
          z.strictObject({
            rule: z.string(),
            value: z.union([z.string(), z.number(), z.boolean()]),
            because: z.string().min(1),
          }),
        )
        .optional(),
      ...amendmentFields,
      seismic: z.boolean().optional(),
      edition: z.enum(['IEC2014', 'EU2006', 'stricter of both']).optional(),
    })
    .optional(),
  room: roomSchema,
  tables: z.array(tableSchema).optional(),
  equipment: z.array(equipmentSchema).optional(),
  lasers: z.array(laserSchema).optional(),
  needs: needsSchema.optional(),
  layout: layoutSchema.optional(),
  background: backgroundSchema.optional(),
  distances: z.array(distanceSchema).max(200).optional(),
});

/** What is asked, with every quantity in SI; still without defaults. */
export type Brief = z.output<typeof briefSchema>;
export type BriefLaser = NonNullable<Brief['lasers']>[number];
export type BriefTable = NonNullable<Brief['tables']>[number];
export type BriefEnclosure = NonNullable<NonNullable<Brief['layout']>['enclosures']>[number];
export type BriefRun = NonNullable<NonNullable<Brief['layout']>['runs']>[number];
export type SideName = 'south' | 'east' | 'north' | 'west';
