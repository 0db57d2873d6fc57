import { expect, test } from 'vitest';
import { takenOut } from '../arrange/taken-out.js';
import { briefData } from './document.js';
import { distanceEndsOn, keptIn } from './kept-distances.js';

const text = `cloche: 1
tables:
  - { id: table-1, length: 2 m }
  - { id: table-2, length: 2 m }
distances:
  - { id: distance-1, from: { at: [0 m, 2 m] }, to: { of: table-1, at: [0.5 m, 0 m] } }
  - { id: distance-4, from: { of: table-2, at: [0 m, 0 m] }, to: { at: [4, 1 m] } }
  - { id: distance-5, from: { of: table-1, at: [0 m, 0 m] }, to: { of: table-2, at: [0 m, 0 m] } }
`;
const data = briefData(text);

test('kept distances are read from the brief with their numbers; one that cannot be read is left out', () => {
  expect(keptIn(data)).toEqual([
    {
      index: 0,
      number: 1,
      a: { on: null, at: [0, 2] },
      b: { on: 'table-1', at: [0.5, 0] },
    },
    {
      index: 2,
      number: 5,
      a: { on: 'table-1', at: [0, 0] },
      b: { on: 'table-2', at: [0, 0] },
    },
  ]);
});

test('the ends on a thing are found, so that they go along with its name', () => {
  expect(distanceEndsOn(data, 'table-2')).toEqual([
    ['distances', 1, 'from', 'of'],
    ['distances', 2, 'to', 'of'],
  ]);
});

test('a distance goes with the thing that it ends on', () => {
  const left = briefData(takenOut(text, ['table-2']).text) as {
    readonly distances: readonly { readonly id: string }[];
  };
  expect(left.distances.map((each) => each.id)).toEqual(['distance-1']);
});
