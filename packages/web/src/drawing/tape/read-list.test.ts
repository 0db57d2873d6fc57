import { expect, test } from 'vitest';
import { emptyWall, readDiagonals, readWalls, rowsOf } from './read-list.js';
import { traverse } from './traverse.js';

test('lengths are read in either system, turns by word or angle', () => {
  const { walls, troubles } = readWalls(
    [
      { length: '3.2 m', turn: 'left', angle: '' },
      { length: '4 ft 6 in', turn: 'right', angle: '' },
      { length: '900', turn: 'angle', angle: '45' },
      emptyWall,
    ],
    'metric',
  );
  expect(troubles).toEqual([]);
  expect(walls.map(({ length }) => Number(length.toFixed(6)))).toEqual([3.2, 1.3716, 0.9]);
  expect(walls.map(({ turn }) => Math.round((turn * 180) / Math.PI))).toEqual([90, -90, 45]);
});

test('what cannot be read is told with its row and cell', () => {
  const { walls, troubles } = readWalls(
    [
      { length: 'long', turn: 'left', angle: '' },
      { length: '2 m', turn: 'angle', angle: 'some' },
    ],
    'metric',
  );
  expect(walls).toEqual([]);
  expect(troubles.map(({ row, cell }) => [row, cell])).toEqual([
    [0, 'length'],
    [1, 'angle'],
  ]);
});

test('a row left empty between walls is asked for', () => {
  const wall = { length: '2 m', turn: 'left', angle: '' } as const;
  expect(readWalls([wall, emptyWall, wall], 'metric').troubles.map(({ row }) => row)).toEqual([1]);
});

test('diagonals name two corners that are there', () => {
  const row = (from: string, to: string, measured: string) => ({ from, to, measured });
  const rows = [row('1', '3', '5 m'), row('1', '9', '5 m'), row('2', '2', '5 m'), row('', '', '')];
  const { diagonals, troubles } = readDiagonals(rows, 4, 'metric');
  expect(diagonals).toEqual([{ from: 0, to: 2, measured: 5 }]);
  expect(troubles.map((t) => [t.row, t.cell])).toEqual([
    [1, 'to'],
    [2, 'to'],
  ]);
});

test('the walls of a room are a list that closes and gives the room again', () => {
  const outline = [
    [0, 0],
    [6, 0],
    [6, 2],
    [4, 3],
    [4, 5],
    [0, 5],
  ] as const;
  const { walls } = readWalls(rowsOf(outline, 'metric'), 'metric');
  const { corners, error } = traverse(walls);
  expect(Math.hypot(...error)).toBeLessThan(5e-4);
  for (const [i, corner] of outline.entries())
    for (const k of [0, 1] as const) expect(corners[i]![k]).toBeCloseTo(corner[k], 3);
});
