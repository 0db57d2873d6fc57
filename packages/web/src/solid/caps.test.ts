import { expect, test } from 'vitest';
import type { Design, Vec2, Vec3 } from '../engine/contract.js';
import { uprightBox } from './boxes.js';
import { capsOf } from './caps.js';
import type { Piece } from './pieces.js';
import { type Cut, inPlane } from './section.js';
import { wallBlocks } from './walls.js';

const room = (outline: readonly Vec2[]) =>
  ({ outline, height: 2.5, doors: [], windows: [] }) as unknown as Design['room'];
const hall = room([
  [0, 0],
  [4, 0],
  [4, 3],
  [0, 3],
]);
const cube: Piece = { id: 'cube', thing: 'cube', kind: 'body', boxes: [uprightBox([2, 1.5, 0.5], 1, 1, 1, 0)] };
const bar: Piece = { id: 'bar', thing: 'bar', kind: 'body', boxes: [uprightBox([1, 1.5, 1], 0.04, 0.04, 2, 0)] };

const area = (faces: readonly (readonly Vec3[])[], cut: Cut): number =>
  faces.reduce((sum, face) => {
    const flat = face.map((p) => inPlane(cut.axis, p));
    const twice = flat.reduce((s, a, i) => {
      const b = flat[(i + 1) % flat.length]!;
      return s + a[0] * b[1] - a[1] * b[0];
    }, 0);
    return sum + Math.abs(twice) / 2;
  }, 0);

const caps = (cuts: readonly Cut[], space = hall, pieces = [cube, bar]) =>
  capsOf({ room: space, walls: wallBlocks(space), pieces, ceiling: false }, cuts);

// The drawn wall is 0.15 m thick: two walls of 2.5 m height, and the face of the cube.
test('an upright cut shows both walls and the body between them, a thin bar filled', () => {
  const cut: Cut = { axis: 1, at: 1.5, keeps: 'greater' };
  const shown = caps([cut]);
  expect(area(shown.wide, cut)).toBeCloseTo(2 * 0.15 * 2.5 + 1, 6);
  expect(area(shown.narrow, cut)).toBeCloseTo(0.04 * 2, 6);
  expect(shown.hatching.length).toBeGreaterThan(10);
});

test('a level cut shows the band of the walls', () => {
  const cut: Cut = { axis: 2, at: 2.2, keeps: 'lesser' };
  // Ring between 4 x 3 and 4.3 x 3.3.
  expect(area(caps([cut]).wide, cut)).toBeCloseTo(4.3 * 3.3 - 12, 6);
});

test('two cuts shorten each other', () => {
  const [a, b]: [Cut, Cut] = [
    { axis: 1, at: 1.5, keeps: 'greater' },
    { axis: 0, at: 2, keeps: 'lesser' },
  ];
  const both = caps([a, b], hall, [cube]);
  // Half the cube's face and one wall in the first, a quarter of the cube and the north wall in the second.
  expect(
    area(
      both.wide.filter((f) => f.every((p) => p[1] === 1.5)),
      a,
    ),
  ).toBeCloseTo(0.5 + 0.15 * 2.5, 6);
  expect(
    area(
      both.wide.filter((f) => f.every((p) => p[0] === 2)),
      b,
    ),
  ).toBeCloseTo(0.5 + 0.15 * 2.5, 6);
  expect(both.lines.flat().every((p) => p[1] >= 1.5 - 1e-9 && p[0] <= 2 + 1e-9)).toBe(true);
});

test('the floor line stops at a corner that goes into the room', () => {
  const angle = room([
    [0, 0],
    [4, 0],
    [4, 3],
    [3, 3],
    [3, 1],
    [1, 1],
    [1, 3],
    [0, 3],
  ]);
  const floor = caps([{ axis: 1, at: 2, keeps: 'greater' }], angle, []).lines.filter(
    ([p, q]) => p[2] === 0 && q[2] === 0,
  );
  const lengths = floor.map(([p, q]) => Math.abs(p[0] - q[0])).filter((l) => l > 0.2);
  expect(lengths.map((l) => Number(l.toFixed(6))).sort()).toEqual([1, 1]);
});

test('cut cloth is its line: upright in an upright cut, its wave in a level one', () => {
  const cloth = {
    id: 'cloth',
    thing: 'run',
    kind: 'cloth',
    boxes: [],
    part: {
      shape: {
        shape: 'cloth',
        line: [
          [1, 2],
          [3, 2],
        ],
        top: 2.1,
        bottom: 0.1,
        fullness: 1.3,
      },
    },
  } as unknown as Piece;
  const upright = caps([{ axis: 0, at: 2, keeps: 'lesser' }], hall, [cloth]).lines.filter(
    ([p, q]) => p[0] === q[0] && p[1] === q[1] && Math.abs(p[1] - 2) < 0.1,
  );
  expect(upright.map(([p, q]) => [p[2], q[2]])).toEqual([[0.1, 2.1]]);
  const wave = caps([{ axis: 2, at: 1, keeps: 'lesser' }], hall, [cloth]).lines.filter(
    ([p]) => p[1] > 1.8 && p[1] < 2.2 && p[0] >= 1 && p[0] <= 3,
  );
  const length = wave.reduce((sum, [p, q]) => sum + Math.hypot(p[0] - q[0], p[1] - q[1]), 0);
  expect(length).toBeGreaterThan(2.2);
});
