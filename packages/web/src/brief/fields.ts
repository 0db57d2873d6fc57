import type { Dimension } from '@cloche/engine';
import type { Path } from './path.js';

export type FieldShape =
  | { readonly quantity: Dimension }
  | { readonly choice: readonly (string | number)[] }
  | { readonly text: true }
  | { readonly whole: true }
  | { readonly number: true }
  | { readonly yesNo: true };

/** One value of the brief that can be typed: where it stands under its thing, what it is called, what it may be. */
export interface Field {
  readonly path: Path;
  readonly label: string;
  readonly shape: FieldShape;
  /** Only shown while the value at this path is this word. */
  readonly when?: readonly [Path, string];
}

const quantity = (path: string, label: string, dimension: Dimension = 'length'): Field => ({
  path: steps(path),
  label,
  shape: { quantity: dimension },
});
const choice = (path: string, label: string, words: readonly (string | number)[]): Field => ({
  path: steps(path),
  label,
  shape: { choice: words },
});
const words = (path: string, label: string): Field => ({ path: steps(path), label, shape: { text: true } });
const whole = (path: string, label: string): Field => ({ path: steps(path), label, shape: { whole: true } });
const yesNo = (path: string, label: string): Field => ({ path: steps(path), label, shape: { yesNo: true } });
const only = (when: string, word: string, field: Field): Field => ({ ...field, when: [steps(when), word] });

/** `at.0` as a path: numbers are places in lists. */
const steps = (path: string): Path => path.split('.').map((s) => (/^\d+$/.test(s) ? Number(s) : s));

const place = [quantity('at.0', 'from west'), quantity('at.1', 'from south')];
const onWall = [whole('wall', 'wall'), quantity('at', 'from corner'), quantity('width', 'width')];
const footprint = [quantity('size.0', 'length'), quantity('size.1', 'width')];

/** What can be typed for each thing, by the list of the brief that it stands in. */
export const fieldsOf: Readonly<Record<string, readonly Field[]>> = {
  project: [
    words('name', 'name'),
    words('number', 'number'),
    words('owner', 'owner'),
    words('author', 'author'),
    words('laserSafetyOfficer', 'laser safety officer'),
    choice('units', 'units', ['metric', 'imperial']),
  ],
  site: [
    words('rules', 'site rules'),
    choice('edition', 'exposure limits', ['IEC2014', 'EU2006', 'stricter of both']),
    yesNo('seismic', 'earthquake zone'),
  ],
  room: [
    words('name', 'name'),
    quantity('height', 'height'),
    choice('ceiling.kind', 'ceiling', ['concrete slab', 'steel deck', 'timber', 'suspended grid', 'unknown']),
    choice('floor.kind', 'floor', ['concrete', 'raised', 'vinyl on concrete', 'timber', 'unknown']),
    whole('people', 'people'),
  ],
  tables: [
    words('name', 'name'),
    ...place,
    quantity('turn', 'turned', 'angle'),
    quantity('length', 'length'),
    quantity('width', 'width'),
    quantity('height', 'top above floor'),
    quantity('mass', 'mass', 'mass'),
    quantity('travel', 'travel of the top'),
  ],
  equipment: [words('name', 'name'), ...place, ...footprint, quantity('size.2', 'height')],
  doors: [
    words('name', 'name'),
    ...onWall,
    quantity('height', 'height'),
    choice('swing', 'swing', ['in', 'out', 'sliding', 'none']),
    choice('hinge', 'hinge', ['left', 'right']),
    choice('leaves', 'leaves', [1, 2]),
    yesNo('exit', 'exit'),
  ],
  windows: [words('name', 'name'), ...onWall, quantity('height', 'height'), quantity('sill', 'sill')],
  boards: [words('name', 'name'), ...onWall, quantity('voltsToGround', 'to ground', 'voltage')],
  columns: [...place, ...footprint, quantity('diameter', 'diameter')],
  obstructions: [words('name', 'name'), ...place, ...footprint, quantity('from', 'bottom'), quantity('to', 'top')],
  sprinklers: [...place, quantity('deflector', 'deflector')],
  detectors: [...place, choice('kind', 'kind', ['smoke', 'heat', 'gas', 'oxygen', 'flame'])],
  exitSigns: [...place, quantity('height', 'height')],
  airTerminals: [...place, ...footprint, quantity('flow', 'flow', 'flow')],
  luminaires: [...place, ...footprint],
  beams: [quantity('width', 'width'), quantity('underside', 'underside')],
  lasers: [
    words('name', 'name'),
    words('table', 'on table'),
    quantity('at.0', 'along table'),
    quantity('at.1', 'across table'),
    quantity('beamHeight', 'beam height'),
    quantity('direction', 'direction', 'angle'),
    quantity('wavelength', 'wavelength'),
    choice('class', 'class declared', ['1', '1M', '2', '2M', '3R', '3B', '4']),
    only('emission.kind', 'continuous', quantity('emission.power', 'power', 'power')),
    only('emission.kind', 'pulsed', quantity('emission.energy', 'pulse energy', 'energy')),
    only('emission.kind', 'pulsed', quantity('emission.duration', 'pulse duration', 'time')),
    only('emission.kind', 'pulsed', quantity('emission.rate', 'pulse rate', 'frequency')),
    quantity('emission.tolerance', 'tolerance', 'ratio'),
    quantity('beam.diameter', 'beam diameter'),
    choice('beam.measuredAt', 'measured at', ['1/e', '1/e2', 'fwhm']),
    quantity('beam.divergence', 'full divergence', 'angle'),
  ],
  cleanliness: [
    words('where', 'where'),
    { path: ['isoClass'], label: 'ISO class', shape: { number: true } },
    quantity('size', 'particles from'),
    choice('state', 'state', ['as-built', 'at-rest', 'operational']),
    whole('people', 'people inside'),
    quantity('recoveryWithin', 'clean again within', 'time'),
  ],
  darkness: [words('where', 'where'), quantity('illuminance', 'at most', 'illuminance')],
  ways: [words('from', 'from'), words('to', 'to'), quantity('width', 'clear width'), whole('persons', 'persons')],
  access: [words('to', 'to'), quantity('width', 'clear width')],
  light: [words('where', 'where'), quantity('illuminance', 'at least', 'illuminance'), words('colour', 'colour')],
  temperature: [
    words('where', 'where'),
    quantity('rise', 'rise at most', 'temperature difference'),
    quantity('stability', 'steady within', 'temperature difference'),
  ],
  needs: [
    words('budget', 'budget'),
    quantity('noise.limit', 'noise at most', 'sound level'),
    quantity('electricalSupply.available', 'electrical supply', 'power'),
    yesNo('accessibleRoute', 'accessible route'),
  ],
  enclosures: [
    words('name', 'name'),
    choice('kind', 'kind', ['close', 'walk-in']),
    quantity('gap', 'gap to table'),
    quantity('clearHeight', 'clear height'),
    quantity('hemGap', 'hem gap'),
    words('profile', 'profile'),
    words('unit', 'fan filter unit'),
    whole('unitCount', 'units'),
    choice('feet', 'feet', ['levelling', 'foot plate', 'caster']),
    ...(['south', 'east', 'north', 'west'] as const).map((side) =>
      choice(`sides.${side}.closure`, `${side} side`, ['curtain', 'strip', 'rigid panel', 'open']),
    ),
  ],
  runs: [
    words('name', 'name'),
    choice('kind', 'kind', ['bay', 'partition', 'shelf']),
    choice('hung', 'hung from', ['ceiling', 'wall', 'floor post', 'frame', 'shelf']),
    choice('corner', 'corners', ['curve', 'connector']),
    quantity('trackHeight', 'track height'),
    quantity('hemGap', 'hem gap'),
    words('cloth', 'cloth'),
    words('track', 'track'),
    yesNo('closed', 'closed'),
  ],
  covers: [words('over', 'over'), words('item', 'item')],
  signs: [words('door', 'at door'), quantity('height', 'height'), yesNo('lit', 'lit')],
  stops: [...place, quantity('height', 'height')],
  interlocks: [words('on', 'on'), yesNo('defeatable', 'can be bridged')],
  sensors: [words('where', 'where'), ...place, quantity('height', 'height')],
};

/** The fields of the thing at a path of the brief; its list is the last name on the way. */
export function fieldsAt(path: Path): readonly Field[] {
  const list = [...path].reverse().find((s) => typeof s === 'string');
  return fieldsOf[String(list)] ?? [];
}
