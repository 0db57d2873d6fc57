import { expect, test } from 'vitest';
import { hashOf, placeOf } from './address.js';

const id = '0123456789abcdef0123456789abcdef';

test('an address leads to its place and back', () => {
  for (const hash of ['#/', `#/project/${id}/checks`]) expect(hashOf(placeOf(hash)!)).toBe(hash);
});

test('a project without a step, or with one that there is not, opens at the survey', () => {
  expect(placeOf(`#/project/${id}`)).toEqual({ at: 'project', id, step: 'survey' });
  expect(placeOf(`#/project/${id}/nowhere`)).toEqual({ at: 'project', id, step: 'survey' });
});

test('anything else names no place', () => {
  for (const hash of ['', '#', '#middle', '#/project/../../etc', '#/elsewhere']) expect(placeOf(hash)).toBeNull();
});
