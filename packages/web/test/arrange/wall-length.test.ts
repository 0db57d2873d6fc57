import { describe, expect, test } from 'vitest';
import { arrangedText } from '../../src/arrange/arranged.js';
import { withWallLength } from '../../src/arrange/wall-length.js';
import { lengthOfWall, outlineOf } from '../../src/arrange/walls.js';
import { briefData } from '../../src/brief/document.js';
import { threeTables } from './briefs.js';

const data = briefData(threeTables);
const after = (wall: number, length: number) =>
  outlineOf(briefData(arrangedText(threeTables, withWallLength(data, wall, length))));

describe('a wall of another length', () => {
  test('moves the wall after it; the wall beside it takes up the difference', () => {
    // An L: 11 m in the south, 7.5 m in the east, then 8, 1.5, 3 and 6 m.
    const outline = after(0, 11.5);
    expect(outline.map((_, i) => Number(lengthOfWall(outline, i).toFixed(6)))).toEqual([11.5, 7.5, 8.5, 1.5, 3, 6]);
    expect(outline[0]).toEqual([0, 0]);
    expect(withWallLength(data, 0, 11.5).told[0]).toBe('The east wall moved by 500 mm; the north wall took it up.');
  });
  test('leaves a window in the wall that took it up where it is in the room', () => {
    // The north wall starts in the east: its corner went 0.5 m further, so the window is 0.5 m further from it.
    const { changes } = withWallLength(data, 0, 11.5);
    expect(changes).toContainEqual([['room', 'windows', 0, 'at'], '2.5 m']);
  });
  test('is refused where a wall would vanish or walls would cross', () => {
    for (const [wall, length] of [
      [0, 2.9],
      [1, 1],
      [0, 0],
      [9, 1],
    ] as const) {
      const { changes, told } = withWallLength(data, wall, length);
      expect([changes, told.length]).toEqual([[], 1]);
    }
  });
  test('turns the next wall where none runs beside it, and tells so', () => {
    const triangle = {
      room: {
        outline: [
          ['0 m', '0 m'],
          ['4 m', '0 m'],
          ['0 m', '3 m'],
        ],
      },
    };
    const { changes, told } = withWallLength(triangle, 0, 5);
    expect(changes).toEqual([[['room', 'outline', 1, 0], '5 m']]);
    expect(told[0]).toContain('turned');
  });
});
