import type { Vec2 } from '@cloche/engine';
import { describe, expect, test } from 'vitest';
import { valueAt } from '../brief/path.js';
import { rewalled } from './rewall.js';

const box = (w: number, s: number, e: number, n: number): Vec2[] => [
  [w, s],
  [e, s],
  [e, n],
  [w, n],
];
const written = (outline: readonly Vec2[]) => outline.map((corner) => corner.map((v) => `${v} m`));
const brief = (things: object) => ({ room: { outline: written(box(0, 0, 8, 6)), ...things } });
const door = { id: 'door-1', wall: 1, at: '2 m', width: '1 m' };
/** Where a thing stands after all that is put. */
const placed = (put: ReturnType<typeof rewalled>['put'], list: string) =>
  Object.fromEntries(put.filter(([path]) => path[1] === list).map(([path, value]) => [path.at(-1), value]));

describe('doors, windows and boards', () => {
  test('stay as they are where their wall does', () => {
    expect(rewalled(brief({ doors: [door] }), box(0, 0, 8, 7))).toEqual({ put: [], told: [] });
  });

  test('go along with a wall that was measured again', () => {
    // The east wall is 30 mm farther out and starts 100 mm farther south.
    const { put, told } = rewalled(brief({ doors: [door] }), box(0, -0.1, 8.03, 6));
    expect(placed(put, 'doors')).toEqual({ wall: 1, at: '2.1 m' });
    expect(told).toEqual([]);
  });

  test('are counted anew where the walls are', () => {
    // A corner was put into the south wall: the east wall is now the third.
    const outline: Vec2[] = [
      [0, 0],
      [4, 0],
      [8, 0],
      [8, 6],
      [0, 6],
    ];
    expect(placed(rewalled(brief({ doors: [door] }), outline).put, 'doors')).toEqual({ wall: 2, at: '2 m' });
  });

  test('keep their place in a room that is drawn the other way round', () => {
    const outline = box(0, 0, 8, 6).reverse();
    // Clockwise from the north-west: the east wall runs from its north end, 6 m - 2 m - 1 m = 3 m from there.
    expect(placed(rewalled(brief({ boards: [door] }), outline).put, 'boards')).toEqual({ wall: 1, at: '3 m' });
  });

  test('are put on the nearest wall when theirs is gone, and told', () => {
    const { put, told } = rewalled(brief({ windows: [{ ...door, at: '4.5 m' }] }), box(0, 0, 5, 5));
    expect(placed(put, 'windows')).toEqual({ wall: 1, at: '4 m' });
    expect(told.join()).toContain('door-1');
  });

  test('stay as written when no wall is long enough, and are told', () => {
    const wide = { ...door, width: '5 m', at: '0.5 m' };
    const { put, told } = rewalled(brief({ doors: [wide] }), box(0, 0, 3, 3));
    expect(put).toEqual([]);
    expect(told.join()).toContain('No wall is long enough');
  });
});

describe('measured diagonals', () => {
  const diagonals = [
    { from: 0, to: 2, measured: '10 m' },
    { from: 1, to: 3, measured: '10.01 m' },
  ];

  test('keep their corners by their new numbers', () => {
    const outline: Vec2[] = [
      [0, 0],
      [4, 0],
      [8, 0],
      [8, 6],
      [0, 6],
    ];
    const { put, told } = rewalled(brief({ diagonals }), outline);
    expect(valueAt(put, [0, 1])).toEqual([
      { from: 0, to: 3, measured: '10 m' },
      { from: 2, to: 4, measured: '10.01 m' },
    ]);
    expect(told).toEqual([]);
  });

  test('are taken out when a corner is gone, and told', () => {
    const outline: Vec2[] = [
      [0, 0],
      [8, 0],
      [8, 5],
      [7, 6],
      [0, 6],
    ];
    const { put, told } = rewalled(brief({ diagonals }), outline);
    expect(valueAt(put, [0, 1])).toEqual([{ from: 1, to: 4, measured: '10.01 m' }]);
    expect(told.join()).toContain('10 m');
  });
});
