import { z } from 'zod';
import { id, money, q, size, sourceSchema } from '../reading/quantity.js';
import type { Amendments } from './amend.js';

export const catalogueVersion = 1;

/** A ring of an outline in whole or decimal millimetres. */
const ring = z.array(z.tuple([z.number(), z.number()])).min(3);
const rectangleSize = z.tuple([size('length'), size('length')]);
const boxSize = z.tuple([size('length'), size('length'), size('length')]);

const common = {
  id,
  /** Noun first: `Profile, 40 x 40`. */
  name: z.string().min(1),
  partNumber: z.string().optional(),
  price: money.optional(),
  note: z.string().optional(),
};
const piece = { ...common, mass: size('mass') };

const profile = z.strictObject({
  ...common,
  kind: z.literal('profile'),
  /** Width (local y) by height (local z) of the envelope. */
  size: rectangleSize,
  outline: z.strictObject({ unit: z.literal('mm'), outer: ring, holes: z.array(ring).default([]) }),
  alloy: z.string(),
  /** 0.2 % proof strength. */
  proofStrength: size('stress'),
  proofStrengthSource: sourceSchema,
  slot: z.strictObject({ width: size('length'), depth: size('length'), series: z.string() }),
  massPerLength: size('mass per length'),
  stockLengths: z.array(size('length')).min(1),
  /** Price is for one metre. */
});

/** Corner blocks, brackets, joiners and the like: what joins two members. */
const joint = z.strictObject({
  ...piece,
  kind: z.enum(['corner block', 'angle bracket', 'joiner', 'end cap']),
  series: z.string(),
  /** Slot nuts and screws that one piece needs. */
  needs: z.array(z.strictObject({ item: id, count: z.int().min(1) })).default([]),
  size: boxSize,
  slipForce: size('force').optional(),
  moment: size('torque').optional(),
  rotationStiffness: size('torque per angle').optional(),
  dataSource: sourceSchema.optional(),
});

const foot = z.strictObject({
  ...piece,
  kind: z.enum(['foot plate', 'levelling foot', 'caster']),
  series: z.string(),
  size: boxSize,
  height: size('length'),
  adjustment: q('length', { min: 0 }).optional(),
  capacity: size('mass'),
  plateArea: size('area').optional(),
  swivelOffset: q('length', { min: 0 }).optional(),
  loweringFoot: z.boolean().optional(),
  needs: z.array(z.strictObject({ item: id, count: z.int().min(1) })).default([]),
});

const fastener = z.strictObject({
  ...piece,
  kind: z.enum(['slot nut', 'screw', 'cable clip', 'hinge', 'handle']),
  series: z.string().optional(),
  torque: size('torque').optional(),
  packSize: z.int().min(1).default(1),
});

/** Sold by length: slot covers, panel inserts, hem weights, fascia. Price is for one metre. */
const strip = z.strictObject({
  ...common,
  kind: z.enum(['slot cover', 'panel insert', 'hem weight', 'fascia', 'edge brush']),
  series: z.string().optional(),
  massPerLength: size('mass per length'),
  stockLengths: z.array(size('length')).min(1),
});

const sheet = z.strictObject({
  ...common,
  kind: z.literal('sheet'),
  material: z.string(),
  thickness: size('length'),
  massPerArea: size('mass per area'),
  sheetSize: rectangleSize,
  expansion: size('expansion').optional(),
  transparent: z.boolean(),
  ratings: z.lazy(() => z.array(rating)).default([]),
  fireClass: z.string().optional(),
  /** Price is for one square metre. */
});

/**
 * What a cloth, sheet or window withstands: the band, the time and the pulse regime of the test. Outside of them nothing is known.
 */
const rating = z.strictObject({
  from: size('length'),
  to: size('length'),
  regime: z.enum(['continuous', 'long pulses', 'nanosecond pulses', 'ultrashort pulses']),
  /** Irradiance withstood (continuous) ... */
  irradiance: size('irradiance').optional(),
  /** ... or radiant exposure of a pulse. */
  radiantExposure: size('radiant exposure').optional(),
  /** Spot diameter at 1/e in the test. */
  spot: size('length').optional(),
  /** How long it withstands; absent when not stated. */
  time: size('time').optional(),
  opticalDensity: z.number().min(0).optional(),
  standard: z.string().optional(),
});
export type Rating = z.output<typeof rating>;

const fanFilterUnit = z.strictObject({
  ...piece,
  kind: z.literal('fan filter unit'),
  /** Footprint and height. */
  size: boxSize,
  /** Clear filter face. */
  face: rectangleSize,
  filterClass: z.enum(['E10', 'E11', 'E12', 'H13', 'H14', 'U15', 'U16', 'U17']),
  /** Flow against outside static pressure with a clean filter, falling pressure. */
  curve: z.array(z.strictObject({ flow: q('flow', { min: 0 }), pressure: q('pressure', { min: 0 }) })).min(2),
  /** A-weighted sound power level at the nominal flow. */
  soundPower: size('sound level'),
  power: size('power'),
  voltage: size('voltage'),
  nominalFlow: size('flow'),
  fanSpeed: size('frequency').optional(),
});

const light = z.strictObject({
  ...piece,
  kind: z.literal('light strip'),
  length: size('length'),
  flux: size('luminous flux'),
  power: size('power'),
  voltage: size('voltage'),
  colour: z.string(),
});

const track = z.strictObject({
  ...common,
  kind: z.literal('track'),
  system: z.string(),
  size: rectangleSize,
  massPerLength: size('mass per length'),
  /** Stock pieces, each with its price. */
  stock: z.array(z.strictObject({ length: size('length'), price: money.optional() })).min(1),
  secondMoment: z.number().positive(),
  secondMomentNote: z.string(),
  runnerDrop: q('length', { min: 0 }),
  /** Largest distance between supports by kind of hanging. */
  supportSpacing: z.strictObject({
    ceiling: size('length'),
    wall: size('length'),
    'floor post': size('length'),
    frame: size('length'),
    shelf: size('length'),
  }),
  shortestPiece: size('length'),
});

const trackCurve = z.strictObject({
  ...piece,
  kind: z.literal('track curve'),
  system: z.string(),
  radius: size('length'),
  angle: size('angle'),
});
const trackConnector = z.strictObject({
  ...piece,
  kind: z.literal('track connector'),
  system: z.string(),
  ways: z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4)]),
  angle: q('angle').optional(),
  passesRunners: z.boolean(),
  size: boxSize,
});
const trackEnd = z.strictObject({ ...piece, kind: z.literal('end stop'), system: z.string(), length: size('length') });
const runner = z.strictObject({
  ...piece,
  kind: z.literal('runner'),
  system: z.string(),
  length: size('length'),
  pitch: size('length'),
  capacity: size('mass'),
  packSize: z.int().min(1).default(1),
});

const trackSupport = z.strictObject({
  ...piece,
  kind: z.literal('track support'),
  system: z.string(),
  hung: z.enum(['ceiling', 'wall', 'floor post', 'frame', 'shelf']),
  /** Rod or post length range that it spans. */
  reach: z.tuple([q('length', { min: 0 }), size('length')]),
  capacity: size('force'),
  capacityFactor: z.number().positive(),
  size: boxSize,
  needs: z.array(z.strictObject({ item: id, count: z.int().min(1) })).default([]),
});

const cloth = z.strictObject({
  ...common,
  kind: z.literal('cloth'),
  purpose: z.enum(['laser barrier', 'blackout', 'clear strip', 'clean-room curtain']),
  joining: z.enum(['magnets', 'hook-and-loop', 'overlap']),
  /** Width lost in each joint of two panels. */
  jointLoss: q('length', { min: 0 }),
  massPerArea: size('mass per area'),
  thickness: size('length'),
  hem: z.strictObject({ height: q('length', { min: 0 }), massPerLength: q('mass per length', { min: 0 }) }),
  /** Standard panels, price each at the largest drop they come in. */
  widths: z.array(z.strictObject({ width: size('length'), price: money.optional() })).min(1),
  drops: z.array(size('length')).min(1),
  ratings: z.array(rating).default([]),
  lightTransmittance: q('ratio', { min: 0, max: 1 }).optional(),
  fireClass: z.string().optional(),
  fireTest: z.string().optional(),
});

const cover = z.strictObject({
  ...piece,
  kind: z.literal('cover'),
  purpose: z.enum(['laser barrier', 'blackout']),
  largest: rectangleSize,
  overlap: size('length'),
  ratings: z.array(rating).default([]),
  fixing: z.string(),
});
const sign = z.strictObject({
  ...piece,
  kind: z.literal('sign'),
  lit: z.boolean(),
  size: rectangleSize,
  power: q('power', { min: 0 }).optional(),
});
const sensor = z.strictObject({
  ...piece,
  kind: z.literal('sensor'),
  measures: z.enum(['particles', 'pressure', 'temperature', 'humidity']),
  sizes: z.array(size('length')).default([]),
  flow: size('flow').optional(),
  box: boxSize,
});
const interlock = z.strictObject({
  ...piece,
  kind: z.literal('interlock part'),
  role: z.enum([
    'door contact',
    'curtain contact',
    'stop button',
    'controller',
    'key pad',
    'exit button',
    'shutter',
    'lamp',
    'buzzer',
  ]),
  channels: z.int().min(1).optional(),
  box: boxSize,
});

export const itemSchema = z.union([
  profile,
  joint,
  foot,
  fastener,
  strip,
  sheet,
  fanFilterUnit,
  light,
  track,
  trackCurve,
  trackConnector,
  trackEnd,
  runner,
  trackSupport,
  cloth,
  cover,
  sign,
  sensor,
  interlock,
]);

export const catalogueFileSchema = z.strictObject({
  cloche: z.literal(catalogueVersion),
  catalogue: z.strictObject({
    group: z.string().min(1),
    invented: z.boolean(),
    priceDate: z.iso.date(),
    priceBasis: z.string(),
    note: z.string().optional(),
  }),
  items: z.array(z.unknown()).min(1),
});

export type Item = z.output<typeof itemSchema>;
export type ItemKind = Item['kind'];
export type ItemOf<K extends ItemKind> =
  Extract<Item, { readonly kind: K }> extends never ? Item & { readonly kind: K } : Extract<Item, { readonly kind: K }>;
export type Profile = z.output<typeof profile>;
export type Joint = z.output<typeof joint>;
export type Foot = z.output<typeof foot>;
export type Fastener = z.output<typeof fastener>;
export type Strip = z.output<typeof strip>;
export type Sheet = z.output<typeof sheet>;
export type FanFilterUnit = z.output<typeof fanFilterUnit>;
export type Light = z.output<typeof light>;
export type Track = z.output<typeof track>;
export type TrackCurve = z.output<typeof trackCurve>;
export type TrackConnector = z.output<typeof trackConnector>;
export type TrackEnd = z.output<typeof trackEnd>;
export type Runner = z.output<typeof runner>;
export type TrackSupport = z.output<typeof trackSupport>;
export type Cloth = z.output<typeof cloth>;
export type Cover = z.output<typeof cover>;
export type Sign = z.output<typeof sign>;
export type Sensor = z.output<typeof sensor>;
export type InterlockPart = z.output<typeof interlock>;

/** Schemas by kind, so that a wrong item is reported against the schema of its kind alone. */
export const schemasByKind: ReadonlyMap<string, z.ZodType<Item>> = new Map(
  [
    profile,
    joint,
    foot,
    fastener,
    strip,
    sheet,
    fanFilterUnit,
    light,
    track,
    trackCurve,
    trackConnector,
    trackEnd,
    runner,
    trackSupport,
    cloth,
    cover,
    sign,
    sensor,
    interlock,
  ].flatMap((schema) => {
    const kind = schema.shape.kind;
    const names: readonly string[] = kind instanceof z.ZodEnum ? kind.options : [...kind.values];
    return names.map((name) => [name, schema as unknown as z.ZodType<Item>] as const);
  }),
);

/** All parts that may be used, in the order of the files. */
export interface Catalogue {
  readonly items: readonly Item[];
  readonly byId: ReadonlyMap<string, Item>;
  readonly currency: string | null;
  readonly priceDate: string;
  readonly priceBasis: string;
  readonly invented: boolean;
  /** What a project put over it; absent where nothing. */
  readonly amendments?: Amendments;
  /** Content hash of the items. */
  readonly hash: string;
}
