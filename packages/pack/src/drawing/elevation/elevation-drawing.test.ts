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

test('many equal pieces carry one mark with their count, a piece behind a bar of its outline none', () => {
  const box = design.enclosures[0]!;
  const post = design.parts.find((p) => p.of === box.id && p.role === 'post')!;
  const strip = (i: number) => ({
    ...post,
    ...{ id: `strip-${i}`, group: 'curtains', role: 'strip panel', mark: 'Q1' },
    shape: {
      shape: 'cloth',
      line: [
        [box.centre[0] - 1.2 + i * 0.3, box.centre[1] - box.width / 2],
        [box.centre[0] - 1.0 + i * 0.3, box.centre[1] - box.width / 2],
      ],
      top: 2,
      bottom: 0.1,
      fullness: 1,
    },
  });
  const far = { ...post, id: 'far', mark: 'Z9' };
  const parts = [far, ...design.parts, ...Array.from({ length: 8 }, (_, i) => strip(i))] as typeof design.parts;
  const drawn = elevationDrawing({ ...design, parts }, box, sheetFacts({ design, revision, issued }, 2));
  const front = drawn.layers.find((l) => l.id === 'front')!.marks.flatMap((m) => (m.mark === 'text' ? [m.text] : []));
  expect(front.filter((t) => t.includes('Q1'))).toEqual(['8 × Q1']);
  expect(front).not.toContain('Z9');
});
