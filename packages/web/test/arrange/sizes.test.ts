import { describe, expect, test } from 'vitest';
import { besideShift, boxIn } from '../../src/arrange/boxes.js';
import { framed } from '../../src/arrange/framed.js';
import { anchored, placeOf } from '../../src/arrange/measure/anchor.js';
import { sizeLines } from '../../src/arrange/sizes.js';
import { betweenTwo } from '../../src/arrange/two-gap.js';
import { wallDimensions } from '../../src/arrange/wall-dimensions.js';
import { briefData, withValues } from '../../src/brief/document.js';
import { designOf } from '../design-of.js';
import { threeTables } from './briefs.js';

const data = briefData(threeTables);
const design = designOf(threeTables);
const line = (id: string, label: RegExp) => sizeLines(data, design, id).find((each) => label.test(each.label))!;
const written = (id: string, label: RegExp, metres: number) =>
  line(id, label)
    .put(metres)
    .map(([path, value]) => [path.slice(-2).join('.'), value]);

describe('sizes of the thing in hand', () => {
  test('a table has its length and width, in the unit that the brief uses', () => {
    expect(sizeLines(data, design, 'table-3').map(({ metres }) => metres)).toEqual([3, 1.5]);
    expect(written('table-3', /length/, 3.2)).toEqual([['2.length', '3.2 m']]);
    expect(written('table-3', /length/, 0)).toEqual([]);
  });
  test('a door has its width and the way to both corners; the far one moves it as well', () => {
    // The wall is 11 m long, the door stands from 9.2 m to 10.4 m.
    expect(sizeLines(data, design, 'door-1').map(({ metres }) => Number(metres.toFixed(6)))).toEqual([9.2, 1.2, 0.6]);
    expect(written('door-1', /after it/, 0.5)).toEqual([['0.at', '9.3 m']]);
    expect(written('door-1', /after it/, 10.5)).toEqual([]);
  });
  test('an enclosure has its clear distances as the brief gives them', () => {
    const gaps = Object.fromEntries(
      sizeLines(data, design, 'enclosure-1').map(({ label, metres }) => [
        /its (\w+)/.exec(label)![1],
        Number(metres.toFixed(6)),
      ]),
    );
    expect(gaps).toEqual({ south: 0.05, east: 0.8, north: 0.09, west: 0.05 });
    expect(written('enclosure-1', /east/, 0.9)).toEqual([['gaps.east', '900 mm']]);
    expect(written('enclosure-1', /south/, 0.1)).toEqual([['gaps.south', '0.1 m']]);
  });
});

test('walls of the same length that face each other have one dimension', () => {
  expect(
    wallDimensions(design)
      .map(({ wall }) => wall)
      .sort(),
  ).toEqual([0, 1, 2, 3, 4, 5]);
  const rectangle = {
    ...design,
    room: {
      ...design.room,
      outline: [
        [0, 0],
        [0, 4],
        [6, 4],
        [6, 0],
      ] as const,
    },
  };
  const found = wallDimensions(rectangle);
  expect(found.map(({ metres }) => metres).sort()).toEqual([4, 6]);
  // The corners run clockwise: the wall in the south starts at the last of them.
  expect(found.find(({ metres }) => metres === 6)!.wall).toBe(3);
});

test('a frame takes what it touches or holds, but not what it lies inside of', () => {
  const ids = ['table-3', 'enclosure-1', 'partition-1', 'column-1', 'smoke-1'];
  expect(framed(design, ids, { min: [4, 5], max: [5.3, 6.5] })).toEqual(['partition-1', 'column-1', 'smoke-1']);
  expect(framed(design, ids, { min: [7, 3.4], max: [7.1, 3.5] })).toEqual(['table-3']);
  expect(framed(design, ids, { min: [3.3, 2], max: [3.4, 2.1] })).toEqual([]);
});

test('copies go where they are inside the room and on nothing else', () => {
  const box = boxIn(design)('table-3')!;
  const by = besideShift(design, ['table-3']);
  for (const k of [0, 1] as const) expect(box.min[k] + by[k]).toBeGreaterThanOrEqual(0);
  expect(Math.hypot(...by)).toBeGreaterThan(0.3);
  // East of it shelves are in the way: 3 m long from 6.1 m, the next would end beyond the wall at 11 m.
  expect(by[0]).toBeLessThanOrEqual(0);
});

test('the way between two things is the shortest, and none when they touch', () => {
  // From the table in the south, 1.1 m to 2 m, to the one that starts at 2.92 m.
  expect(betweenTwo(design, ['table-1', 'table-2'])!.metres).toBeCloseTo(0.92, 9);
  expect(betweenTwo(design, ['enclosure-1', 'bench-1'])!.metres).toBeGreaterThan(0);
  expect(betweenTwo(design, ['table-1'])).toBeNull();
});

test('a measured point on a thing goes along with it', () => {
  const point = anchored(design, ['table-3', 'enclosure-1'], [6.1, 3.6]);
  expect(point.on).toBe('table-3');
  const moved = designOf(withValues(threeTables, [[['tables', 2, 'at', 0], '7.5 m']]));
  expect(placeOf(moved, point).map((v) => Number(v.toFixed(9)))).toEqual([6, 3.6]);
  expect(anchored(design, ['table-3'], [0.5, 0.5]).on).toBeNull();
});
