import { freeId } from './find.js';
import type { Path } from './path.js';

/** A list of the brief that things can be added to, with a first entry that can be read. */
export interface Addable {
  readonly list: Path;
  readonly title: string;
  readonly one: string;
  readonly entry: (data: unknown, middle: readonly [string, string]) => unknown;
}

export const addable = {
  doors: {
    list: ['room', 'doors'],
    title: 'Doors',
    one: 'a door',
    entry: (data) => ({
      id: freeId(data, 'door'),
      wall: 0,
      at: '0.5 m',
      width: '1 m',
      height: '2.1 m',
      swing: 'out',
      hinge: 'left',
      exit: true,
    }),
  },
  windows: {
    list: ['room', 'windows'],
    title: 'Windows',
    one: 'a window',
    entry: (data) => ({
      id: freeId(data, 'window'),
      wall: 2,
      at: '1 m',
      width: '1.2 m',
      height: '1.2 m',
      sill: '0.9 m',
    }),
  },
  columns: {
    list: ['room', 'columns'],
    title: 'Columns',
    one: 'a column',
    entry: (data, middle) => ({ id: freeId(data, 'column'), at: middle, size: ['0.3 m', '0.3 m'] }),
  },
  obstructions: {
    list: ['room', 'obstructions'],
    title: 'Obstructions',
    one: 'an obstruction',
    entry: (data, middle) => ({ id: freeId(data, 'cabinet'), at: middle, size: ['0.8 m', '0.5 m'], to: '1.8 m' }),
  },
  tables: {
    list: ['tables'],
    title: 'Tables',
    one: 'a table',
    entry: (data, middle) => ({
      id: freeId(data, 'table'),
      at: middle,
      length: '2.4 m',
      width: '1.2 m',
      height: '0.9 m',
    }),
  },
  lasers: {
    list: ['lasers'],
    title: 'Laser schedule',
    one: 'a laser',
    entry: (data, middle) => ({
      id: freeId(data, 'laser'),
      at: middle,
      beamHeight: '1 m',
      direction: '0 deg',
      wavelength: '1064 nm',
      emission: { kind: 'continuous', power: '1 W' },
      beam: { diameter: '2 mm', measuredAt: '1/e2', divergence: '1 mrad' },
    }),
  },
  ways: {
    list: ['needs', 'ways'],
    title: 'Ways',
    one: 'a way',
    entry: (_data, middle) => ({ from: middle, to: middle }),
  },
  runs: {
    list: ['layout', 'runs'],
    title: 'Curtain runs',
    one: 'a curtain run',
    entry: (data, [x, y]) => ({
      id: freeId(data, 'run'),
      kind: 'partition',
      path: [
        [x, '0.1 m'],
        [x, y],
      ],
      hung: 'ceiling',
      trackHeight: '2.5 m',
    }),
  },
} as const satisfies Readonly<Record<string, Addable>>;
