import { expect, test } from 'vitest';
import { design, issued, revision } from '../../../test/fixture.js';
import { sheetFacts } from '../../make-pack.js';
import type { Mark } from '../types.js';
import { elevationDrawing } from './elevation-drawing.js';
import { inElevation } from './view.js';

const sheet = elevationDrawing(design, design.enclosures[0]!, sheetFacts({ design, revision, issued }, 2));
const words = (id: string) =>
  sheet.layers.find((l) => l.id === id)!.marks.flatMap((m: Mark) => (m.mark === 'text' ? [m.text] : []));

test('front and side carry length, width and the heights of the frame', () => {
  expect(words('front')).toEqual(expect.arrayContaining(['3600', '2360', '40', '320', '2720']));
  expect(words('side')).toEqual(expect.arrayContaining(['2100', '2720']));
});

test('members that the views show carry their marks', () => {
  expect(words('front')).toEqual(expect.arrayContaining(['P1', 'B1', 'F1', 'S1']));
  expect(words('side')).toEqual(expect.arrayContaining(['P1', 'B2']));
});

test('in a turned enclosure the front still looks along its own axis', () => {
  const turned = { ...design.enclosures[0]!, turn: Math.PI / 2, centre: [3, 2] as const };
  const [across, up, near] = inElevation(turned, 'front', [3, 3.5, 1.2]);
  expect(across).toBeCloseTo(1.5, 12);
  expect(up).toBe(1.2);
  expect(near).toBeCloseTo(0, 12);
});
