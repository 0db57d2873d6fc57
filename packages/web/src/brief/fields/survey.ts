import { lengthLike, metresOf } from '../lengths.js';
import { listAt, valueAt } from '../path.js';
import {
  choice,
  type Field,
  footprint,
  further,
  heart,
  idField,
  onCard,
  only,
  place,
  placeOnTable,
  quantity,
  type Rows,
  reference,
  variants,
  whole,
  words,
  yesNo,
} from '../shapes.js';

const onWall = [whole('wall', 'wall'), quantity('at', 'from corner'), quantity('width', 'width')];
const turned = quantity('turn', 'turned', 'angle');

const loads = [
  quantity('heat', 'heat', 'power'),
  quantity('electricalLoad', 'electrical load', 'power'),
  quantity('noise', 'noise', 'sound level'),
];
const equipment = [...footprint, quantity('size.2', 'height'), turned, quantity('mass', 'mass', 'mass')];

/** What can be typed for each thing of the survey, by its list. */
export const surveyFields: Readonly<Record<string, readonly Field[]>> = {
  project: [
    words('name', 'name'),
    words('number', 'number'),
    words('owner', 'owner'),
    words('author', 'author'),
    words('laserSafetyOfficer', 'laser safety officer'),
    choice('units', 'units', ['metric', 'imperial']),
    ...further(words('contact', 'contact'), words('note', 'note')),
  ],
  room: [
    words('name', 'name'),
    quantity('height', 'height'),
    whole('people', 'people'),
    heart(
      'ceiling',
      choice('ceiling.kind', 'ceiling', ['concrete slab', 'steel deck', 'timber', 'suspended grid', 'unknown']),
    ),
    only('ceiling.kind', true, quantity('ceiling.structureHeight', 'what carries, at')),
    choice('floor.kind', 'floor', ['concrete', 'raised', 'vinyl on concrete', 'timber', 'unknown']),
    quantity('floor.pointLoad', 'point load', 'force'),
    ...further(
      quantity('floor.distributedLoad', 'spread load', 'pressure'),
      quantity('floor.fall', 'fall of the floor'),
      quantity('tolerance', 'measured within'),
      quantity('meanAbsorption', 'sound absorption', 'ratio'),
      quantity('wallReflectance', 'wall reflectance', 'ratio'),
    ),
  ],
  wayIn: [quantity('width', 'width'), quantity('height', 'height'), quantity('longestPiece', 'longest piece')],
  tables: [
    idField,
    words('name', 'name'),
    choice('kind', 'kind', ['optical table', 'breadboard', 'bench']),
    ...onCard(
      ...place,
      turned,
      quantity('length', 'length'),
      quantity('width', 'width'),
      quantity('height', 'top above floor'),
    ),
    quantity('mass', 'mass', 'mass'),
    ...further(
      quantity('travel', 'travel of the top'),
      quantity('tolerance', 'measured within'),
      yesNo('onCasters', 'on casters'),
    ),
  ],
  tableEquipment: [idField, words('name', 'name'), ...placeOnTable, ...equipment, ...further(...loads)],
  equipment: [idField, words('name', 'name'), ...onCard(...place, ...equipment), ...further(...loads)],
  doors: [
    idField,
    words('name', 'name'),
    ...onCard(
      ...onWall,
      quantity('height', 'height'),
      choice('swing', 'swing', ['in', 'out', 'sliding', 'none']),
      choice('hinge', 'hinge, from inside', ['left', 'right']),
    ),
    yesNo('exit', 'exit'),
    ...further(choice('leaves', 'leaves', [1, 2]), quantity('angle', 'opens by', 'angle')),
  ],
  windows: [
    idField,
    words('name', 'name'),
    ...onCard(...onWall, quantity('height', 'height'), quantity('sill', 'sill')),
    yesNo('inDoor', 'pane in a door'),
  ],
  boards: [
    idField,
    words('name', 'name'),
    ...onCard(...onWall, quantity('voltsToGround', 'to ground', 'voltage')),
    choice('opposite', 'opposite', ['nothing grounded', 'grounded', 'live']),
  ],
  columns: [
    idField,
    ...onCard(
      ...place,
      ...footprint.map((side) => only('size', true, side)),
      only('diameter', true, quantity('diameter', 'diameter')),
    ),
    only('size', true, turned),
  ],
  obstructions: [
    idField,
    words('name', 'name'),
    ...onCard(...place, ...footprint, quantity('from', 'bottom'), quantity('to', 'top')),
    turned,
    yesNo('movable', 'can be moved'),
  ],
  sprinklers: [idField, ...onCard(...place, quantity('deflector', 'deflector at'))],
  detectors: [idField, ...onCard(...place, choice('kind', 'kind', ['smoke', 'heat', 'gas', 'oxygen', 'flame']))],
  exitSigns: [idField, ...onCard(...place, quantity('height', 'height'))],
  airTerminals: [
    idField,
    ...onCard(choice('kind', 'kind', ['supply', 'return']), ...place, ...footprint, quantity('flow', 'flow', 'flow')),
  ],
  luminaires: [idField, ...onCard(...place, ...footprint, quantity('underside', 'underside'))],
  beams: [
    idField,
    ...onCard(
      quantity('from.0', 'from, from west'),
      quantity('from.1', 'from, from south'),
      quantity('to.0', 'to, from west'),
      quantity('to.1', 'to, from south'),
      quantity('width', 'width'),
      quantity('underside', 'underside'),
    ),
  ],
  lasers: [
    idField,
    words('name', 'name'),
    reference('table', 'on table', 'tables'),
    ...onCard(
      ...placeOnTable.map((coordinate) => only('table', true, coordinate)),
      ...place.map((coordinate) => only('table', false, coordinate)),
      quantity('beamHeight', 'beam height'),
      quantity('direction', 'direction', 'angle'),
    ),
    ...onCard(
      quantity('wavelength', 'wavelength'),
      choice('class', 'class declared', ['1', '1M', '2', '2M', '3R', '3B', '4']),
    ),
    variants('emission.kind', 'emission', {
      continuous: { power: '1 W' },
      pulsed: { energy: '1 mJ', duration: '10 ns', rate: '10 Hz' },
      scanned: { power: '10 mW', scanRate: '100 Hz', scanAngle: '20 deg' },
      'irregular pulses': { pulses: [{ at: '0 s', energy: '1 mJ', duration: '10 ns' }] },
    }),
    ...onCard(
      only('emission.power', true, quantity('emission.power', 'power', 'power')),
      only('emission.kind', 'pulsed', quantity('emission.energy', 'pulse energy', 'energy')),
      only('emission.kind', 'pulsed', quantity('emission.duration', 'pulse duration', 'time')),
      only('emission.kind', 'pulsed', quantity('emission.rate', 'pulse rate', 'frequency')),
    ),
    only('emission.kind', 'scanned', quantity('emission.scanRate', 'scan rate', 'frequency')),
    only('emission.kind', 'scanned', quantity('emission.scanAngle', 'scan angle', 'angle')),
    only('emission.kind', 'scanned', yesNo('emission.failureMonitor', 'scan failure monitored')),
    quantity('beam.diameter', 'beam diameter'),
    choice('beam.measuredAt', 'measured at', ['1/e', '1/e2', 'fwhm']),
    quantity('beam.divergence', 'full divergence', 'angle'),
    ...further(
      choice('role', 'role', ['main', 'pump', 'harmonic', 'alignment', 'seed']),
      quantity('elevation', 'elevation', 'angle'),
      only('emission.kind', 'pulsed', quantity('emission.tolerance', 'tolerance', 'ratio')),
      only('emission.kind', 'continuous', quantity('emission.tolerance', 'tolerance', 'ratio')),
      choice('beam.profile', 'profile', ['gaussian', 'top-hat']),
      quantity('beam.waistAt', 'waist at'),
      quantity('foreseeableTilt', 'foreseeable tilt', 'angle'),
      quantity('alignmentPower', 'power to align', 'power'),
      quantity('settlingTime', 'settles in', 'time'),
      quantity('heat', 'heat', 'power'),
      quantity('electricalLoad', 'electrical load', 'power'),
    ),
  ],
};

const point = (name: string, x: string, y: string) => [quantity(`${name}.0`, x), quantity(`${name}.1`, y)];

/** A point a little further than the last one. */
const onward = (last: unknown, by: readonly [number, number]) =>
  [0, 1].map((k) => lengthLike(valueAt(last, [k]), (metresOf(valueAt(last, [k])) ?? 0) + by[k]!));

/** Small tables under the things of the survey. */
export const surveyRows: Readonly<Record<string, readonly Rows[]>> = {
  room: [
    {
      path: ['outline'],
      title: 'Corners, in order along the walls',
      folded: true,
      one: 'a corner',
      least: 3,
      columns: [quantity('0', 'from west'), quantity('1', 'from south')],
      row: (rows) => {
        const [a, b] = [rows.at(-1), rows[0]];
        return [0, 1].map((k) =>
          lengthLike(valueAt(a, [k]), ((metresOf(valueAt(a, [k])) ?? 0) + (metresOf(valueAt(b, [k])) ?? 0)) / 2),
        );
      },
    },
    {
      path: ['diagonals'],
      title: 'Diagonals as measured',
      folded: true,
      one: 'a diagonal',
      columns: [whole('from', 'from corner'), whole('to', 'to corner'), quantity('measured', 'measured')],
      row: (rows, data) => {
        const from = rows.length;
        const outline = listAt(data, ['room', 'outline']);
        const to = (from + 2) % Math.max(3, outline.length);
        const apart = [0, 1].map(
          (k) => (metresOf(valueAt(outline, [to, k])) ?? 0) - (metresOf(valueAt(outline, [from, k])) ?? 0),
        );
        return { from, to, measured: `${Math.hypot(...apart).toFixed(3)} m` };
      },
    },
  ],
  lasers: [
    {
      path: ['legs'],
      title: 'Way of the beam, leg by leg',
      one: 'a leg',
      columns: [
        ...point('to', 'to, along', 'to, across'),
        choice('endsOn', 'ends on', [
          'mirror',
          'splitter',
          'lens',
          'crystal',
          'sample',
          'detector',
          'beam stop',
          'target',
        ]),
        choice('carried', 'carried', ['open', 'tube', 'fibre']),
      ],
      row: (rows, data, base) => ({
        to: onward(valueAt(rows.at(-1), ['to']) ?? valueAt(data, [...base, 'at']), [0.3, 0]),
        endsOn: 'beam stop',
      }),
    },
    {
      path: ['emission', 'pulses'],
      title: 'Pulses',
      one: 'a pulse',
      columns: [
        quantity('at', 'at', 'time'),
        quantity('energy', 'energy', 'energy'),
        quantity('duration', 'lasts', 'time'),
      ],
      row: (rows) => rows.at(-1) ?? { at: '0 s', energy: '1 mJ', duration: '10 ns' },
    },
  ],
};
