import { expect, test } from 'vitest';
import { briefName } from './file-name.js';

test('a brief is saved under the name of its project, in letters that every file system takes', () => {
  expect(briefName('Bay for an ultrafast amplifier', 'cloche: 1')).toBe('bay-for-an-ultrafast-amplifier.yaml');
  expect(briefName('Käfig / Nr. 2 ', 'cloche: 1')).toBe('kafig-nr-2.yaml');
  expect(briefName('実験室', 'cloche: 1')).toBe('brief.yaml');
});

test('JSON stays JSON', () => {
  expect(briefName('Bay', '\n{ "cloche": 1 }')).toBe('bay.json');
});
