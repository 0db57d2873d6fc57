import { expect, test } from 'vitest';
import { figuresOfItems } from './changed-figures.js';

const data = {
  site: {
    changes: [
      { item: 'profile-30x30', field: 'massPerLength', value: '1.25 kg/m', because: 'data sheet of 2026' },
      { item: 'cloth-a', field: 'jointLoss', value: '40 mm', because: 'measured' },
      'no entry yet',
    ],
  },
};

test('changed figures are found by their items, with value and reason as written', () => {
  expect(figuresOfItems(data, new Set(['profile-30x30', 'nut']))).toEqual([
    { item: 'profile-30x30', field: 'massPerLength', value: '1.25 kg/m', because: 'data sheet of 2026' },
  ]);
  expect(figuresOfItems({}, new Set(['profile-30x30']))).toEqual([]);
});
