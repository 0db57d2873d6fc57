import { expect, test } from 'vitest';
import type { Part } from '../engine/contract.js';
import { partLines } from './part-lines.js';

const part = (id: string, mark: string, count: number): Part => ({
  id,
  item: 'profile-40',
  group: 'profiles',
  role: 'post',
  of: 'enclosure-1',
  mark,
  shape: { shape: 'loose', at: [0, 0, 0] },
  count,
  length: 2,
  mass: 1.5 * count,
  placed: { rule: 'compose.enclosure.corner-post', because: 'A post stands at each corner.' },
});

test('equal pieces share a line, and none is lost', () => {
  const lines = partLines([part('a', 'A1', 1), part('b', 'A1', 3), part('c', 'A2', 1)]).get('profiles')!;
  expect(lines.map(({ mark, count, mass, ids }) => ({ mark, count, mass, ids }))).toEqual([
    { mark: 'A1', count: 4, mass: 6, ids: ['a', 'b'] },
    { mark: 'A2', count: 1, mass: 1.5, ids: ['c'] },
  ]);
});
