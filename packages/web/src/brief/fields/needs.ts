import {
  choice,
  type Field,
  idField,
  type Kind,
  money,
  only,
  placeField,
  plainNumber,
  quantity,
  type Rows,
  reference,
  references,
  several,
  whole,
  words,
  yesNo,
} from '../shapes.js';

const where = reference('where', 'where', 'enclosures', 'runs', 'tables', 'room');
const made: readonly Kind[] = ['enclosures', 'runs', 'devices'];
export const sides = ['south', 'east', 'north', 'west'] as const;

/** What can be typed for each need and for the site rules, by its list. */
export const needsFields: Readonly<Record<string, readonly Field[]>> = {
  site: [
    { path: ['rules'], label: 'site rules', shape: { profile: true } },
    choice('edition', 'exposure limits', ['IEC2014', 'EU2006', 'stricter of both']),
    yesNo('seismic', 'earthquake zone'),
  ],
  cleanliness: [
    where,
    plainNumber('isoClass', 'ISO class'),
    quantity('size', 'particles from'),
    choice('state', 'state', ['as-built', 'at-rest', 'operational']),
    whole('people', 'people inside'),
    choice('clothing', 'clothing', ['indoor', 'cleanroom']),
    quantity('recoveryWithin', 'clean again within', 'time'),
  ],
  background: [
    quantity('concentration', 'particles', 'concentration'),
    quantity('size', 'counted from'),
    yesNo('measured', 'measured'),
  ],
  darkness: [
    where,
    quantity('illuminance', 'at most', 'illuminance'),
    quantity('outside', 'light outside', 'illuminance'),
  ],
  access: [
    reference('to', 'to', 'tables', 'enclosures'),
    several('sides', 'sides', sides),
    quantity('width', 'clear width'),
  ],
  ways: [
    placeField('from', 'from', 'tables', 'enclosures', 'runs', 'doors'),
    placeField('to', 'to', 'doors', 'tables', 'enclosures', 'runs'),
    quantity('width', 'clear width'),
    whole('persons', 'persons'),
  ],
  light: [
    where,
    quantity('illuminance', 'at least', 'illuminance'),
    words('colour', 'colour'),
    yesNo('dimmable', 'can be dimmed'),
  ],
  noise: [
    quantity('limit', 'at most', 'sound level'),
    only('at', true, quantity('at.0', 'heard from west')),
    only('at', true, quantity('at.1', 'heard from south')),
  ],
  temperature: [
    where,
    quantity('target', 'target', 'temperature'),
    quantity('rise', 'rise at most', 'temperature difference'),
    quantity('stability', 'steady within', 'temperature difference'),
  ],
  electricalSupply: [quantity('available', 'available', 'power'), quantity('voltage', 'voltage', 'voltage')],
  monitoring: [yesNo('particles', 'particles'), yesNo('pressure', 'pressure'), yesNo('temperature', 'temperature')],
  phases: [idField, words('name', 'name'), references('includes', 'includes', ...made)],
  needs: [
    references('movable', 'must be movable', 'enclosures', 'tables'),
    several('hazards', 'other hazards', ['fume', 'gas', 'biological', 'cryogen']),
    yesNo('accessibleRoute', 'accessible route'),
    money('budget', 'budget'),
  ],
};

export const needsRows: Readonly<Record<string, readonly Rows[]>> = {
  site: [
    {
      path: ['overrides'],
      title: 'Rules changed for this project',
      one: 'a change',
      columns: [
        { path: ['rule'], label: 'rule', shape: { rule: true } },
        { path: ['value'], label: 'value', shape: { ruleValue: true } },
        words('because', 'because'),
      ],
      row: () => ({ rule: 'way.clear-width', value: '0.9 m', because: 'Say why.' }),
    },
  ],
};
