import { bounds, type Vec2 } from '@cloche/engine';
import type { Design } from '../engine/contract.js';
import { freeId } from './find.js';
import { firstFit, freeStretch, groundOf } from './ground.js';
import { metresOf } from './lengths.js';
import { listAt, type Path, valueAt } from './path.js';
import { idsOf } from './references.js';
import type { Kind } from './shapes.js';

/** What a new thing is placed by: the brief and the drawn state of it. */
export interface Site {
  readonly data: unknown;
  readonly design: Design | undefined;
}

/** One way to add to a list (or to make an object of its own), with an entry that can be read and composed at once. */
export interface Adding {
  readonly one: string;
  readonly entry: (site: Site) => unknown;
}

export interface Addable {
  readonly list: Path;
  readonly title: string;
  /** Stands under the title while the list is open. */
  readonly about?: string;
  readonly adds: readonly Adding[];
  /** An object with fields of its own, not a list. */
  readonly single?: true;
  /** Things that must be in the brief first, and what to say while they are not. */
  readonly needs?: readonly [readonly Kind[], string];
}

const m = (metres: number): string => `${Number(metres.toFixed(3))} m`;
const point = ([x, y]: Vec2): string[] => [m(x), m(y)];

/** A free place for something of a size, and the ground that it was found on. */
function fit({ design }: Site, ...sizes: Vec2[]) {
  const ground = groundOf(design);
  return { ...firstFit(ground, sizes), ground };
}

const small: Vec2 = [0.6, 0.6];
const first = (site: Site, ...kinds: readonly Kind[]): string | undefined => idsOf(site.data, ...kinds)[0];
const where = (site: Site): string => first(site, 'enclosures', 'runs') ?? 'room';

/** A free point, for what hangs or stands at one. */
const freePoint = (site: Site): string[] => point(fit(site, small).at);

/** Inside the room before the first door, or at a free point. */
function byDoor(site: Site, aside: number): string[] {
  const door = site.design?.room.doors[0];
  if (!door) return freePoint(site);
  const length = Math.max(1e-6, Math.hypot(door.to[0] - door.from[0], door.to[1] - door.from[1]));
  const k = aside === 0 ? 0.5 : 1 + aside / length;
  const along = [0, 1].map((i) => door.from[i]! + (door.to[i]! - door.from[i]!) * k + door.inward[i]! * 0.05);
  return point([along[0]!, along[1]!]);
}

const height = (site: Site): number => groundOf(site.design).height;

/** The first of some ids that no entry of a list names yet; the first of all when each is named. */
function unnamed(site: Site, ids: readonly string[], list: Path, key: string): string | undefined {
  const named = new Set(listAt(site.data, list).flatMap((entry) => valueAt(entry, [key]) ?? []));
  return ids.find((id) => !named.has(id)) ?? ids[0];
}

/** From the edge of a table to the curtain of a bay round it: a way for people. */
const roundTable = 0.9;
/** From a wall to a track beside it. */
const offWall = 0.15;

/** Corners of a bay round the first table that has none, or round a free place; kept off the walls. */
function bayCorners(site: Site): string[][] {
  const tables = site.design?.tables ?? [];
  const box = tables[0] ? bounds(tables[0].outline) : undefined;
  const room = bounds(groundOf(site.design).outline);
  const low = (k: 0 | 1) => Math.max(room.min[k] + offWall, (box?.min[k] ?? room.min[k] + 0.5) - roundTable);
  const high = (k: 0 | 1) => Math.min(room.max[k] - offWall, (box?.max[k] ?? room.max[k] - 0.5) + roundTable);
  const [x0, y0, x1, y1] = [low(0), low(1), high(0), high(1)];
  return [point([x0, y0]), point([x1, y0]), point([x1, y1]), point([x0, y1])];
}

/** A straight partition across the room beside the table. */
function partitionEnds(site: Site): string[][] {
  const room = bounds(groundOf(site.design).outline);
  const box = site.design?.tables[0] ? bounds(site.design.tables[0].outline) : undefined;
  const x = Math.min(room.max[0] - offWall, (box?.max[0] ?? (room.min[0] + room.max[0]) / 2) + roundTable);
  return [point([x, room.min[1] + offWall]), point([x, room.max[1] - offWall])];
}

const track = (site: Site) => ({ hung: 'ceiling', trackHeight: m(Math.min(2.5, height(site) - 0.3)) });
const id = (site: Site, stem: string) => ({ id: freeId(site.data, stem) });

const onFloor = (site: Site, stem: string, size: Vec2) => {
  const found = fit(site, size, [size[0] / 2, size[1] / 2]);
  return { ...id(site, stem), at: point(found.at), size: found.size.map(m) };
};

/** Half the length of a table, as it is written in the brief [m]. */
const halfLength = (data: unknown, table: string | undefined): number => {
  const entry = listAt(data, ['tables']).find((t) => valueAt(t, ['id']) === table);
  return (metresOf(valueAt(entry, ['length'])) ?? 1.2) / 2;
};

const newLaser = (site: Site, wavelength: string, emission: unknown) => {
  const table = first(site, 'tables');
  const reach = Math.max(0.1, halfLength(site.data, table) - 0.3);
  const on = table ? { table, at: [m(-reach), '0 m'] } : { at: freePoint(site) };
  return {
    ...id(site, 'laser'),
    ...on,
    beamHeight: table ? '100 mm' : '1 m',
    direction: '0 deg',
    wavelength,
    emission,
    beam: { diameter: '2 mm', measuredAt: '1/e2', divergence: '1 mrad' },
    ...(table ? { legs: [{ to: [m(reach), '0 m'], carried: 'open', endsOn: 'beam stop' }] } : {}),
  };
};

const list = (
  path: string,
  title: string,
  one: string,
  entry: Adding['entry'],
  more: Partial<Addable> = {},
): Addable => ({
  list: path.split('/'),
  title,
  adds: [{ one, entry }],
  ...more,
});

export const surveyLists = {
  tables: list('tables', 'Tables', 'a table', (site) => {
    const { at, size } = fit(site, [2.4, 1.2], [1.8, 0.9], [1.2, 0.6], [0.6, 0.3]);
    return {
      ...id(site, 'table'),
      kind: 'optical table',
      at: point(at),
      length: m(size[0]),
      width: m(size[1]),
      height: '0.9 m',
    };
  }),
  doors: list('room/doors', 'Doors', 'a door', (site) => {
    const { wall, at } = freeStretch(groundOf(site.design), 1);
    const tall = m(Math.min(2.1, height(site)));
    return {
      ...id(site, 'door'),
      wall,
      at: m(at),
      width: '1 m',
      height: tall,
      swing: 'out',
      hinge: 'left',
      exit: true,
    };
  }),
  windows: list('room/windows', 'Windows', 'a window', (site) => {
    const { wall, at } = freeStretch(groundOf(site.design), 1.2, [2]);
    const sill = Math.min(0.9, height(site) / 3);
    const tall = m(Math.min(1.2, height(site) / 3));
    return { ...id(site, 'window'), wall, at: m(at), width: '1.2 m', height: tall, sill: m(sill) };
  }),
  boards: list('room/boards', 'Electrical boards', 'a board', (site) => {
    const { wall, at } = freeStretch(groundOf(site.design), 0.6, [3, 1]);
    return { ...id(site, 'board'), wall, at: m(at), width: '0.6 m', voltsToGround: '230 V' };
  }),
  columns: {
    list: ['room', 'columns'],
    title: 'Columns',
    adds: [
      { one: 'a square column', entry: (site) => onFloor(site, 'column', [0.3, 0.3]) },
      { one: 'a round column', entry: (site) => ({ ...id(site, 'column'), at: freePoint(site), diameter: '0.3 m' }) },
    ],
  },
  obstructions: list('room/obstructions', 'Cabinets, racks, pipes', 'an obstruction', (site) => ({
    ...onFloor(site, 'cabinet', [0.8, 0.5]),
    to: m(Math.min(1.8, height(site))),
  })),
  equipment: list('equipment', 'Equipment on the floor', 'a machine', (site) => {
    const { size, ...rest } = onFloor(site, 'machine', small);
    return { ...rest, size: [...size, '0.8 m'] };
  }),
  sprinklers: list('room/sprinklers', 'Sprinklers', 'a sprinkler', (site) => ({
    ...id(site, 'sprinkler'),
    at: freePoint(site),
    deflector: m(height(site) - 0.1),
  })),
  detectors: list('room/detectors', 'Fire and gas detectors', 'a detector', (site) => ({
    ...id(site, 'detector'),
    at: freePoint(site),
    kind: 'smoke',
  })),
  exitSigns: list('room/exitSigns', 'Exit signs', 'an exit sign', (site) => ({
    ...id(site, 'exit-sign'),
    at: byDoor(site, 0),
    height: m(Math.min(2.3, height(site))),
  })),
  beams: list('room/beams', 'Beams and ducts', 'a beam or duct', (site) => {
    const { min, max } = bounds(groundOf(site.design).outline);
    const y = max[1] - Math.min(0.5, (max[1] - min[1]) / 4);
    return {
      ...id(site, 'duct'),
      from: point([min[0], y]),
      to: point([max[0], y]),
      width: '0.4 m',
      underside: m(height(site) - 0.4),
    };
  }),
  airTerminals: {
    list: ['room', 'airTerminals'],
    title: 'Supply and return air',
    adds: [
      { one: 'a supply', entry: (site) => ({ ...onFloor(site, 'supply', small), kind: 'supply' }) },
      { one: 'a return', entry: (site) => ({ ...onFloor(site, 'return', small), kind: 'return' }) },
    ],
  },
  luminaires: list('room/luminaires', 'Luminaires', 'a luminaire', (site) => onFloor(site, 'lamp', [1.2, 0.3])),
  wayIn: list('room/wayIn', 'Way in for parts', 'the way in', () => ({ width: '0.9 m', height: '2 m' }), {
    single: true,
  }),
} as const satisfies Readonly<Record<string, Addable>>;

/** Equipment that stands on a table: its list is under the table. */
export const onTable = (table: Path): Addable => ({
  list: [...table, 'equipment'],
  title: 'On this table',
  adds: [
    {
      one: 'equipment',
      entry: (site) => ({ ...id(site, 'part'), at: ['0 m', '0 m'], size: ['0.3 m', '0.2 m', '0.2 m'] }),
    },
  ],
});

export const needsLists = {
  lasers: {
    list: ['lasers'],
    title: 'Laser schedule',
    about: 'A new laser has start values. Put in those of its data sheet.',
    adds: [
      { one: 'a continuous laser', entry: (site) => newLaser(site, '532 nm', { kind: 'continuous', power: '1 W' }) },
      {
        one: 'a pulsed laser',
        entry: (site) =>
          newLaser(site, '1064 nm', { kind: 'pulsed', energy: '1 mJ', duration: '10 ns', rate: '10 Hz' }),
      },
    ],
  },
  cleanliness: list('needs/cleanliness', 'Cleanliness', 'a class', (site) => ({
    where: where(site),
    isoClass: 7,
    size: '0.5 um',
    state: 'at-rest',
  })),
  background: list(
    'needs/background',
    'Particles in the room today',
    'what was counted',
    () => ({ concentration: '1e7 /m3', size: '0.5 um', measured: false }),
    { single: true },
  ),
  darkness: list('needs/darkness', 'Darkness', 'a dark place', (site) => ({ where: where(site), illuminance: '1 lx' })),
  light: list('needs/light', 'Light', 'a lit place', (site) => ({ where: where(site), illuminance: '500 lx' })),
  access: list(
    'needs/access',
    'Sides to reach',
    'sides to reach',
    (site) => ({ to: first(site, 'tables', 'enclosures'), sides: ['south', 'north'] }),
    { needs: [['tables', 'enclosures'], 'Needs a table first.'] },
  ),
  ways: list(
    'needs/ways',
    'Ways',
    'a way',
    (site) => ({ from: first(site, 'tables') ?? freePoint(site), to: first(site, 'doors') ?? freePoint(site) }),
    { needs: [['tables', 'doors'], 'Needs a table or a door first.'] },
  ),
  temperature: list('needs/temperature', 'Temperature', 'a temperature', (site) => ({
    where: where(site),
    rise: '1 K',
  })),
  noise: list('needs/noise', 'Noise', 'a limit', () => ({ limit: '55 dB' }), { single: true }),
  electricalSupply: list('needs/electricalSupply', 'Electrical supply', 'the supply', () => ({ available: '3.6 kW' }), {
    single: true,
  }),
  monitoring: list('needs/monitoring', 'Monitoring', 'monitoring', () => ({ particles: true }), { single: true }),
  phases: list(
    'needs/phases',
    'Phases',
    'a phase',
    (site) => ({
      ...id(site, 'phase'),
      name: 'First phase',
      includes: idsOf(site.data, 'enclosures', 'runs', 'devices').slice(0, 1),
    }),
    { needs: [['enclosures', 'runs', 'devices'], 'Needs something in the layout first.'] },
  ),
} as const satisfies Readonly<Record<string, Addable>>;

const enclosure = (site: Site, kind: 'close' | 'walk-in') => ({
  ...id(site, 'enclosure'),
  kind,
  around: [unnamed(site, idsOf(site.data, 'tables'), ['layout', 'enclosures'], 'around')],
});
const needsTable = [['tables'], 'Needs a table first.'] as const satisfies Addable['needs'];

export const layoutLists = {
  enclosures: {
    list: ['layout', 'enclosures'],
    title: 'Enclosures',
    adds: [
      { one: 'a close enclosure', entry: (site) => enclosure(site, 'close') },
      { one: 'a walk-in enclosure', entry: (site) => enclosure(site, 'walk-in') },
    ],
    needs: needsTable,
  },
  runs: {
    list: ['layout', 'runs'],
    title: 'Curtain runs',
    adds: [
      {
        one: 'a bay',
        entry: (site) => ({
          ...id(site, 'bay'),
          kind: 'bay',
          path: bayCorners(site),
          closed: true,
          ...track(site),
          openings: [{ at: '1.2 m', width: '0.9 m' }],
        }),
      },
      {
        one: 'a partition',
        entry: (site) => ({ ...id(site, 'partition'), kind: 'partition', path: partitionEnds(site), ...track(site) }),
      },
    ],
  },
  covers: list(
    'layout/covers',
    'Covers of windows and doors',
    'a cover',
    (site) => ({
      ...id(site, 'cover'),
      over: unnamed(site, idsOf(site.data, 'windows', 'doors'), ['layout', 'covers'], 'over'),
    }),
    { needs: [['windows', 'doors'], 'Needs a window or a door first.'] },
  ),
  signs: list(
    'layout/signs',
    'Signs',
    'a sign',
    (site) => ({
      ...id(site, 'sign'),
      door: unnamed(site, idsOf(site.data, 'doors'), ['layout', 'signs'], 'door'),
      lit: true,
    }),
    { needs: [['doors'], 'Needs a door first.'] },
  ),
  stops: list('layout/stops', 'Stop buttons', 'a stop button', (site) => ({
    ...id(site, 'stop'),
    at: byDoor(site, 0.3),
    height: '1.2 m',
  })),
  interlocks: list(
    'layout/interlocks',
    'Interlock contacts',
    'a contact',
    (site) => ({
      ...id(site, 'contact'),
      on: unnamed(site, idsOf(site.data, 'doors', 'enclosures', 'runs'), ['layout', 'interlocks'], 'on'),
    }),
    { needs: [['doors', 'enclosures', 'runs'], 'Needs a door, an enclosure or a bay first.'] },
  ),
  sensors: list('layout/sensors', 'Sensors', 'a sensor', (site) => {
    const { design } = site;
    const inside = design?.enclosures[0]?.centre ?? design?.tables[0]?.centre;
    return { ...id(site, 'sensor'), where: where(site), at: inside ? point(inside) : freePoint(site) };
  }),
} as const satisfies Readonly<Record<string, Addable>>;

/** True while everything that an entry of the list would name is there. */
export const canAdd = (data: unknown, { needs }: Addable): boolean => !needs || idsOf(data, ...needs[0]).length > 0;
