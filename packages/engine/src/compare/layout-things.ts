import type { Design, DesignDevice, DesignEnclosure, DesignLaser, DesignRun, DesignTable } from '../design/types.js';
import { at3 } from '../floor/geometry/vec.js';
import { solidThing } from './room-things.js';
import { type Fact, fact, type Thing } from './thing.js';

type Equipment = Design['equipment'][number];

/** Tables and what stands on them, lasers, and everything that the layout puts into the room. */
export const layoutThings = (design: Design): Thing[] => [
  ...design.tables.flatMap((table) => [tableThing(table), ...table.equipment.map((e) => equipmentThing(e, table.id))]),
  ...design.equipment.map((e) => equipmentThing(e, null)),
  ...design.lasers.map(laserThing),
  ...design.enclosures.map(enclosureThing),
  ...design.runs.map(runThing),
  ...design.covers.map(
    (cover): Thing => ({
      id: cover.id,
      kind: 'cover',
      name: cover.id,
      points: [],
      carrier: cover.over,
      surface: 0,
      sizes: [fact('width', cover.width, 'length'), fact('height', cover.height, 'length')],
      facts: [fact('over', cover.over), fact('item', cover.item)],
    }),
  ),
  ...design.devices.map(deviceThing),
];

const tableThing = (table: DesignTable): Thing => ({
  id: table.id,
  kind: 'table',
  name: table.name,
  points: table.outline.map((p) => at3(p, 0)),
  pose: { at: at3(table.centre, 0), turn: table.turn },
  carrier: null,
  surface: table.height,
  sizes: [
    fact('length', table.length, 'length'),
    fact('width', table.width, 'length'),
    fact('height', table.height, 'length'),
  ],
  facts: [fact('name', table.name), fact('mass', table.mass, 'mass'), fact('travel', table.travel, 'length')],
});

function equipmentThing(equipment: Equipment, carrier: string | null): Thing {
  const thing = solidThing('equipment', equipment);
  return {
    ...thing,
    carrier,
    facts: [
      ...thing.facts,
      fact('stands on', carrier),
      fact('mass', equipment.mass, 'mass'),
      fact('heat', equipment.heat, 'power'),
      fact('electrical load', equipment.electricalLoad, 'power'),
      fact('noise', equipment.noise, 'sound level'),
    ],
  };
}

function emissionFacts({ emission }: DesignLaser): Fact[] {
  const pulsed = emission.kind === 'pulsed' ? emission : null;
  return [
    fact('emission', emission.kind),
    fact('power', emission.kind === 'continuous' ? emission.power : null, 'power'),
    fact('pulse energy', pulsed?.energy ?? null, 'energy'),
    fact('pulse duration', pulsed?.duration ?? null, 'pulse duration'),
    fact('pulse rate', pulsed?.rate ?? null, 'pulse rate'),
  ];
}

const laserThing = (laser: DesignLaser): Thing => ({
  id: laser.id,
  kind: 'laser',
  name: laser.name,
  points: laser.path,
  corners: 'point',
  carrier: laser.table,
  surface: 0,
  sizes: [],
  facts: [
    fact('name', laser.name),
    fact('stands on', laser.table),
    fact('wavelength', laser.wavelength, 'wavelength'),
    fact('shortest wavelength', laser.wavelengthRange?.[0] ?? null, 'wavelength'),
    fact('longest wavelength', laser.wavelengthRange?.[1] ?? null, 'wavelength'),
    ...emissionFacts(laser),
    fact('mean power', laser.meanPower, 'power'),
    fact('tolerance on power or energy', laser.tolerance, 'share'),
    fact('beam diameter', laser.diameter, 'beam width'),
    fact('diameter measured at', laser.measuredAt),
    fact('divergence', laser.divergence, 'divergence'),
    fact('beam profile', laser.profile),
    fact('declared class', laser.declaredClass),
    fact('foreseeable tilt', laser.foreseeableTilt, 'angle'),
    ...laser.legs.flatMap((leg, i) => [
      fact(`leg ${i + 1} carried`, leg.carried),
      fact(`leg ${i + 1} ends on`, leg.endsOn),
    ]),
    fact('heat', laser.heat, 'power'),
    fact('electrical load', laser.electricalLoad, 'power'),
    fact('settling time', laser.settlingTime, 'time'),
  ],
});

const enclosureThing = (enclosure: DesignEnclosure): Thing => ({
  id: enclosure.id,
  kind: 'enclosure',
  name: enclosure.name,
  points: enclosure.outline.map((p) => at3(p, 0)),
  pose: { at: at3(enclosure.centre, 0), turn: enclosure.turn },
  carrier: enclosure.tables[0] ?? null,
  surface: 0,
  sizes: [
    fact('length', enclosure.length, 'length'),
    fact('width', enclosure.width, 'length'),
    fact('clear height', enclosure.clearHeight, 'length'),
    fact('top of the frame', enclosure.frameTop, 'length'),
    fact('top', enclosure.top, 'length'),
  ],
  facts: [
    fact('name', enclosure.name),
    fact('kind', enclosure.kind),
    fact('around', enclosure.tables.join(', ')),
    ...(['south', 'east', 'north', 'west'] as const).map((side) => fact(`${side} gap`, enclosure.gaps[side], 'length')),
    fact('hem gap', enclosure.hemGap, 'length'),
    ...enclosure.sides.flatMap((side) => [
      fact(`${side.name} side`, side.closure),
      fact(`${side.name} side item`, side.item),
    ]),
    fact('profile', enclosure.profile),
    fact('fan filter unit', enclosure.unit),
    fact('fan filter units', enclosure.unitCount),
    fact('lights', enclosure.lightCount),
    fact('feet', enclosure.feet),
  ],
});

const runThing = (run: DesignRun): Thing => ({
  id: run.id,
  kind: 'curtain run',
  name: run.name,
  points: run.corners.map((p) => at3(p, 0)),
  corners: 'corner',
  carrier: run.on,
  surface: 0,
  sizes: [
    fact('length of track', run.pathLength, 'length'),
    fact('track height', run.trackHeight, 'length'),
    fact('drop', run.drop, 'length'),
  ],
  facts: [
    fact('name', run.name),
    fact('kind', run.kind),
    fact('closed', run.closed),
    fact('hung from', run.hung),
    fact('hangs on', run.on),
    fact('hem gap', run.hemGap, 'length'),
    fact('cloth', run.cloth),
    fact('track', run.track),
    fact('support', run.supportItem),
    fact('supports', run.supports.length),
    fact('support spacing', run.supportSpacing, 'length'),
    fact('openings', run.openings.length),
    ...run.openings.flatMap((opening, i) => [
      fact(`opening ${i + 1} from the start`, opening.at, 'length'),
      fact(`opening ${i + 1} width`, opening.width, 'length'),
    ]),
  ],
});

const deviceThing = (device: DesignDevice): Thing => ({
  id: device.id,
  kind: device.kind,
  name: device.id,
  points: [device.at],
  carrier: device.on,
  surface: 0,
  sizes: [],
  facts: [fact('item', device.item), fact('on', device.on), fact('text', device.text)],
});
