import { describe, expect, test } from 'vitest';
import { carrierOf, cornerId, gripOf, movedGrip, shiftBetween } from './grips.js';

const data = {
  room: {
    outline: [
      ['0 m', '0 m'],
      ['6 m', '0 m'],
      ['6 m', '4 m'],
      ['0 m', '4 m'],
    ],
    doors: [{ id: 'door-1', wall: 1, at: '0.5 m', width: '1 m' }],
  },
  tables: [
    { id: 'table-1', at: ['3 m', '2 m'], turn: '90 deg', equipment: [{ id: 'part-1', at: ['0.1 m', '0 m'] }] },
    { id: 'table-2', at: ['60 in', '4 ft 6 in'] },
  ],
  lasers: [{ id: 'laser-1', table: 'table-1', at: ['-0.5 m', '0 m'], legs: [{ to: ['0.5 m', '0 m'] }] }],
  layout: {
    enclosures: [{ id: 'enclosure-1', around: ['table-1', 'table-2'] }],
    runs: [
      {
        id: 'run-1',
        path: [
          ['1 m', '1 m'],
          ['1 m', '3 m'],
        ],
      },
    ],
  },
};
const changes = (id: string, by: readonly [number, number], snap = false) =>
  movedGrip(gripOf(data, id), by, snap).map(([path, value]) => [path.join('.'), value]);

describe('a thing is moved by what the brief says about its place', () => {
  test('a table by its middle, on whole steps', () => {
    expect(changes('table-1', [0.123, -0.496], true)).toEqual([
      ['tables.0.at.0', '3.12 m'],
      ['tables.0.at.1', '1.5 m'],
    ]);
  });
  test('one written in inches stays in inches', () => {
    expect(changes('table-2', [0.0254, 0])).toEqual([
      ['tables.1.at.0', '61 in'],
      ['tables.1.at.1', '54 in'],
    ]);
  });
  test('a door along its wall only', () => {
    expect(changes('door-1', [5, 0.25])).toEqual([['room.doors.0.at', '0.75 m']]);
  });
  test('an enclosure with all its tables', () => {
    expect(changes('enclosure-1', [0, 0.254]).map(([, value]) => value)).toEqual(['3 m', '2.254 m', '60 in', '64 in']);
  });
  test('a run with all its corners, or by one of them', () => {
    expect(changes('run-1', [0.5, 0]).map(([, value]) => value)).toEqual(['1.5 m', '1 m', '1.5 m', '3 m']);
    expect(changes(cornerId('run-1', 1), [0.5, 0.25])).toEqual([
      ['layout.runs.0.path.1.0', '1.5 m'],
      ['layout.runs.0.path.1.1', '3.25 m'],
    ]);
  });
  test('a corner of a bay keeps its legs square: each neighbour goes along in one direction', () => {
    const bay = {
      layout: {
        runs: [
          {
            id: 'bay-1',
            closed: true,
            path: [
              ['0 m', '0 m'],
              ['4 m', '0 m'],
              ['4 m', '3 m'],
              ['0 m', '3 m'],
            ],
          },
        ],
      },
    };
    const moved = movedGrip(gripOf(bay, cornerId('bay-1', 2)), [0.5, 0.25], false);
    expect(moved.map(([path, value]) => [path.slice(4).join('.'), value])).toEqual([
      ['2.0', '4.5 m'],
      ['2.1', '3.25 m'],
      ['1.0', '4.5 m'],
      ['3.1', '3.25 m'],
    ]);
  });
  test('a laser and equipment in the axes of a turned table: north in the room is along it', () => {
    expect(changes('laser-1', [0, 0.2])).toEqual([
      ['lasers.0.at.0', '-0.3 m'],
      ['lasers.0.at.1', '0 m'],
      ['lasers.0.legs.0.to.0', '0.7 m'],
      ['lasers.0.legs.0.to.1', '0 m'],
    ]);
    expect(changes('part-1', [-0.1, 0])).toEqual([
      ['tables.0.equipment.0.at.0', '0.1 m'],
      ['tables.0.equipment.0.at.1', '0.1 m'],
    ]);
  });
  test('nothing for what is not there', () => {
    expect(gripOf(data, 'nobody')).toEqual([]);
    expect(gripOf(data, cornerId('run-1', 7))).toEqual([]);
  });
});

test('the shift between two states is that of all points, or none', () => {
  const later = structuredClone(data);
  later.layout.runs[0]!.path = [
    ['1.5 m', '1 m'],
    ['1.5 m', '3 m'],
  ];
  expect(shiftBetween(gripOf(data, 'run-1'), gripOf(later, 'run-1'))).toEqual([0.5, 0]);
  later.layout.runs[0]!.path[1] = ['1 m', '3 m'];
  expect(shiftBetween(gripOf(data, 'run-1'), gripOf(later, 'run-1'))).toBeNull();
  expect(shiftBetween([], [])).toBeNull();
});

test('a laser and equipment share the moves of their table', () => {
  expect(carrierOf(data, 'laser-1')).toBe('table-1');
  expect(carrierOf(data, 'part-1')).toBe('table-1');
  expect(carrierOf(data, 'table-1')).toBeNull();
});
