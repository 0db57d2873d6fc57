import { expect, test } from 'vitest';
import { uprightBox } from './boxes.js';
import { isHidden, pickedPiece } from './pick.js';
import type { Piece } from './pieces.js';

const cube = (id: string, x: number): Piece => ({
  id,
  thing: id,
  kind: 'body',
  boxes: [uprightBox([x, 0, 0], 1, 1, 1, 0.3)],
});
const two = [cube('far', 5), cube('near', 2)];
const sight = { from: [-1, 0, 0], along: [1, 0, 0] } as const;

test('what stands in front is picked', () => {
  expect(pickedPiece(sight, two, [])?.id).toBe('near');
});

test('what is cut away is not picked, and a cut body is picked at what is left', () => {
  expect(pickedPiece(sight, two, [{ axis: 0, at: 3, keeps: 'greater' }])?.id).toBe('far');
  expect(pickedPiece(sight, two, [{ axis: 0, at: 2, keeps: 'greater' }])?.id).toBe('near');
});

test('a look beside everything picks nothing', () => {
  expect(pickedPiece({ from: [-1, 3, 0], along: [1, 0, 0] }, two, [])).toBeNull();
  expect(pickedPiece({ from: [9, 0, 0], along: [1, 0, 0] }, two, [])).toBeNull();
});

test('a body hides what is behind it, not what is before it; a cut or a clear pane gives it free', () => {
  const eye = [-1, 0, 0] as const;
  expect(isHidden(eye, [4, 0, 0], two, [])).toBe(true);
  expect(isHidden(eye, [1, 0, 0], two, [])).toBe(false);
  expect(isHidden(eye, [4, 0, 0], two, [{ axis: 0, at: 3, keeps: 'greater' }])).toBe(false);
  expect(isHidden(eye, [4, 0, 0], [{ ...two[1]!, kind: 'plate' }], [])).toBe(false);
});
