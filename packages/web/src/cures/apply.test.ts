import { expect, test } from 'vitest';
import { briefData } from '../brief/document.js';
import { withCure } from './apply.js';

const text = `tables:
  - { id: t, at: [6 ft, 1.2 m] }
layout:
  enclosures:
    - id: e # round the table
`;

test('a length is written in the unit that stood there', () => {
  const cured = withCure(text, [{ path: ['tables', 0, 'at', 1], value: 1.45, as: 'length' }]);
  expect(cured).toContain('[6 ft, 1.45 m]');
});

test('a value that was not written is added, and comments stay', () => {
  const cured = withCure(text, [
    { path: ['layout', 'enclosures', 0, 'sides', 'west', 'item'], value: 'cloth-x', as: 'name' },
    { path: ['layout', 'enclosures', 0, 'unitCount'], value: 6, as: 'count' },
  ]);
  expect(cured).toContain('# round the table');
  expect(briefData(cured)).toMatchObject({
    layout: { enclosures: [{ id: 'e', sides: { west: { item: 'cloth-x' } }, unitCount: 6 }] },
  });
});
