import { z } from 'zod';
import { id, point, q, size } from '../reading/quantity.js';

/** A place on a wall: the wall is the edge of the outline that starts at the corner of this number (counted from 0). */
const onWall = {
  id,
  name: z.string().optional(),
  wall: z.int().min(0),
  /** From the wall's first corner to the near edge. */
  at: q('length', { min: 0 }),
  width: size('length'),
};

const tolerance = { tolerance: q('length', { min: 0 }).optional() };

export const roomSchema = z.strictObject({
  name: z.string().min(1),
  /** Corners of the inside of the walls, in order. */
  outline: z.array(point).min(3),
  height: size('length'),
  ...tolerance,
  /** Diagonals as measured, between two corners by number. */
  diagonals: z.array(z.strictObject({ from: z.int().min(0), to: z.int().min(0), measured: size('length') })).optional(),
  ceiling: z
    .strictObject({
      kind: z.enum(['concrete slab', 'steel deck', 'timber', 'suspended grid', 'unknown']),
      /** Underside of what can carry, when the room height is that of a suspended ceiling. */
      structureHeight: size('length').optional(),
      note: z.string().optional(),
    })
    .optional(),
  floor: z
    .strictObject({
      kind: z.enum(['concrete', 'raised', 'vinyl on concrete', 'timber', 'unknown']).optional(),
      fall: q('length', { min: 0 }).optional(),
      pointLoad: size('force').optional(),
      distributedLoad: size('pressure').optional(),
    })
    .optional(),
  /** Least clear opening on the way in: what a piece must pass. */
  wayIn: z
    .strictObject({ width: size('length'), height: size('length'), longestPiece: size('length').optional() })
    .optional(),
  doors: z
    .array(
      z.strictObject({
        ...onWall,
        height: size('length'),
        swing: z.enum(['in', 'out', 'sliding', 'none']),
        /** Seen from inside the room. */
        hinge: z.enum(['left', 'right']).optional(),
        exit: z.boolean().optional(),
        leaves: z.union([z.literal(1), z.literal(2)]).optional(),
        angle: q('angle', { min: 0 }).optional(),
      }),
    )
    .optional(),
  windows: z
    .array(
      z.strictObject({
        ...onWall,
        height: size('length'),
        sill: q('length', { min: 0 }),
        inDoor: z.boolean().optional(),
      }),
    )
    .optional(),
  columns: z
    .array(
      z.strictObject({
        id,
        at: point,
        size: z.tuple([size('length'), size('length')]).optional(),
        diameter: size('length').optional(),
        turn: q('angle').optional(),
      }),
    )
    .optional(),
  /** Beams and ducts under the ceiling. */
  beams: z
    .array(z.strictObject({ id, from: point, to: point, width: size('length'), underside: size('length') }))
    .optional(),
  obstructions: z
    .array(
      z.strictObject({
        id,
        name: z.string().optional(),
        at: point,
        size: z.tuple([size('length'), size('length')]),
        turn: q('angle').optional(),
        from: q('length', { min: 0 }).optional(),
        to: size('length'),
        movable: z.boolean().optional(),
      }),
    )
    .optional(),
  sprinklers: z.array(z.strictObject({ id, at: point, deflector: size('length') })).optional(),
  detectors: z
    .array(z.strictObject({ id, at: point, kind: z.enum(['smoke', 'heat', 'gas', 'oxygen', 'flame']) }))
    .optional(),
  exitSigns: z.array(z.strictObject({ id, at: point, height: size('length') })).optional(),
  /** Electrical boards that need clear space in front. */
  boards: z
    .array(
      z.strictObject({
        ...onWall,
        voltsToGround: size('voltage'),
        opposite: z.enum(['nothing grounded', 'grounded', 'live']).optional(),
      }),
    )
    .optional(),
  airTerminals: z
    .array(
      z.strictObject({
        id,
        kind: z.enum(['supply', 'return']),
        at: point,
        size: z.tuple([size('length'), size('length')]),
        flow: size('flow').optional(),
      }),
    )
    .optional(),
  luminaires: z
    .array(
      z.strictObject({
        id,
        at: point,
        size: z.tuple([size('length'), size('length')]),
        underside: size('length').optional(),
      }),
    )
    .optional(),
  meanAbsorption: q('ratio', { above: 0, max: 0.99 }).optional(),
  wallReflectance: q('ratio', { min: 0, max: 0.99 }).optional(),
  people: z.int().min(0).optional(),
});

export const equipmentSchema = z.strictObject({
  id,
  name: z.string().optional(),
  /** From the middle of the table, along its length and width; on a plan without table: in the room. */
  at: point,
  size: z.tuple([size('length'), size('length'), size('length')]),
  turn: q('angle').optional(),
  mass: size('mass').optional(),
  heat: q('power', { min: 0 }).optional(),
  electricalLoad: q('power', { min: 0 }).optional(),
  noise: q('sound level').optional(),
});

export const tableSchema = z.strictObject({
  id,
  name: z.string().optional(),
  kind: z.enum(['optical table', 'breadboard', 'bench']).optional(),
  /** Middle of the table top in the room. */
  at: point,
  turn: q('angle').optional(),
  length: size('length'),
  width: size('length'),
  /** Top of the table above the floor. */
  height: size('length'),
  ...tolerance,
  mass: size('mass').optional(),
  /** How far the isolated top can move. */
  travel: q('length', { min: 0 }).optional(),
  onCasters: z.boolean().optional(),
  equipment: z.array(equipmentSchema).optional(),
});

const wavelength = q('length', { above: 0, example: '1064 nm, 1.55 um' });

export const laserSchema = z.strictObject({
  id,
  name: z.string().optional(),
  table: id.optional(),
  /** Where the beam leaves: from the middle of the table along its length and width, or in the room. */
  at: point,
  /** Above the table top; above the floor without table. */
  beamHeight: size('length'),
  /** Counter-clockwise from the table's length (from east without table). */
  direction: q('angle'),
  elevation: q('angle').optional(),
  role: z.enum(['main', 'pump', 'harmonic', 'alignment', 'seed']).optional(),
  wavelength,
  wavelengthRange: z.tuple([wavelength, wavelength]).optional(),
  emission: z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('continuous'),
      power: size('power'),
      tolerance: q('ratio', { min: 0 }).optional(),
    }),
    z.strictObject({
      kind: z.literal('pulsed'),
      energy: size('energy'),
      duration: size('time'),
      durationRange: z.tuple([size('time'), size('time')]).optional(),
      rate: size('frequency'),
      tolerance: q('ratio', { min: 0 }).optional(),
    }),
    z.strictObject({
      kind: z.literal('irregular pulses'),
      pulses: z
        .array(z.strictObject({ at: q('time', { min: 0 }), energy: size('energy'), duration: size('time') }))
        .min(1),
    }),
    z.strictObject({
      kind: z.literal('scanned'),
      power: size('power'),
      scanRate: size('frequency'),
      scanAngle: size('angle'),
      failureMonitor: z.boolean().optional(),
    }),
  ]),
  beam: z.strictObject({
    diameter: size('length'),
    /** Where the diameter and divergence are measured on the profile. */
    measuredAt: z.enum(['1/e', '1/e2', 'fwhm']),
    /** Full angle. */
    divergence: q('angle', { min: 0 }),
    profile: z.enum(['gaussian', 'top-hat']).optional(),
    waistAt: q('length').optional(),
  }),
  /** Class as declared by the maker. */
  class: z.enum(['1', '1M', '2', '2M', '3R', '3B', '4']).optional(),
  /** The way of the beam, leg by leg, from where it leaves. */
  legs: z
    .array(
      z.strictObject({
        to: point,
        /** Above the table top (or the floor); the height of the leg before when left out. */
        height: size('length').optional(),
        carried: z.enum(['open', 'tube', 'fibre']).optional(),
        endsOn: z
          .enum(['mirror', 'splitter', 'lens', 'crystal', 'sample', 'detector', 'beam stop', 'target'])
          .optional(),
        share: q('ratio', { min: 0, max: 1 }).optional(),
      }),
    )
    .optional(),
  /** Largest foreseeable tilt of the beam out of its path (knocked mirror). */
  foreseeableTilt: q('angle', { min: 0 }).optional(),
  alignmentPower: size('power').optional(),
  settlingTime: q('time', { min: 0 }).optional(),
  heat: q('power', { min: 0 }).optional(),
  electricalLoad: q('power', { min: 0 }).optional(),
});
