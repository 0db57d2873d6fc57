import { expect, test } from 'vitest';
import { arcPath, partPath } from './path-text.js';

test('an upright bar is seen as its section, turned as it stands', () => {
  const path = partPath({ shape: 'bar', from: [1, 1, 0], to: [1, 1, 2], width: 0.04, height: 0.08, across: [0, 1] });
  expect(path).toBe('M1.04 0.98L1.04 1.02L0.96 1.02L0.96 0.98Z');
});

test('a lying bar is seen as a strip of its width', () => {
  const path = partPath({ shape: 'bar', from: [0, 0, 2], to: [2, 0, 2], width: 0.04, height: 0.08 });
  expect(path).toBe('M0 -0.02L2 -0.02L2 0.02L0 0.02Z');
});

test('a quarter of a circle runs the short way', () => {
  expect(arcPath([0, 0], 1, 0, Math.PI / 2)).toBe('M1 0A1 1 0 0 1 0 1');
  expect(arcPath([0, 0], 1, Math.PI / 2, 0)).toBe('M0 1A1 1 0 0 0 1 0');
});

test('loose parts are only counted', () => {
  expect(partPath({ shape: 'loose', at: [0, 0, 0] })).toBe('');
});
