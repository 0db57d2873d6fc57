import { expect, test } from 'vitest';
import type { Finding } from '../engine/contract.js';
import { bundles } from './bundles.js';

const finding = (id: string, requirement: string) => ({ id, requirement }) as Finding;

test('findings of one requirement come together where the first of them stood, and none is lost', () => {
  const all = [finding('a', 'x'), finding('b', 'y'), finding('c', 'x')];
  expect(bundles(all).map(([requirement, list]) => [requirement, list.map((f) => f.id)])).toEqual([
    ['x', ['a', 'c']],
    ['y', ['b']],
  ]);
});
