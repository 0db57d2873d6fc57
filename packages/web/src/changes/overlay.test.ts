import { expect, test } from 'vitest';
import type { Design, ThingChange, Vec2 } from '../engine/contract.js';
import { overlayOf } from './overlay.js';
import { drawnArrow, overlayLabels } from './overlay-labels.js';

const square = ([x, y]: Vec2, side: number): readonly Vec2[] => [
  [x - side / 2, y - side / 2],
  [x + side / 2, y - side / 2],
  [x + side / 2, y + side / 2],
  [x - side / 2, y + side / 2],
];
const table = (id: string, at: Vec2) => ({ id, name: id, outline: square(at, 1), equipment: [] });
const room = Object.fromEntries(
  ['doors', 'windows', 'boards', 'columns', 'beams', 'obstructions', 'sprinklers', 'detectors'].map((list) => [
    list,
    [],
  ]),
);
const design = (tables: readonly object[]): Design =>
  ({
    room: { ...room, outline: square([3, 3], 6), exitSigns: [], airTerminals: [], luminaires: [] },
    ...{ tables, equipment: [], enclosures: [], runs: [], covers: [], lasers: [], devices: [], barriers: [] },
  }) as unknown as Design;
const change = (id: string, over: Partial<ThingChange>): ThingChange =>
  ({
    ...{
      id,
      kind: 'table',
      name: id,
      change: 'changed',
      moved: null,
      turned: null,
      along: null,
      resized: [],
      changed: [],
    },
    ...over,
  }) as ThingChange;

const before = design([table('stays', [1, 1]), table('moves', [3, 3]), table('goes', [5, 5])]);
const after = design([table('stays', [1, 1]), table('moves', [3, 2.8]), table('comes', [5, 1])]);
const changes = [
  change('comes', { change: 'added' }),
  change('goes', { change: 'removed' }),
  change('moves', { moved: [0, -0.2, 0] }),
];
const sheet = ([x, y]: Vec2): Vec2 => [x * 100, 600 - y * 100];

test('what is unchanged is drawn once, what changed as it was and as it is', () => {
  const { shapes } = overlayOf(before, after, changes);
  expect(shapes.map(({ id, state }) => `${state} ${id}`).sort()).toEqual([
    'added comes',
    'now moves',
    'removed goes',
    'same stays',
    'was moves',
  ]);
});

test('an arrow leads from where a thing stood to where it stands', () => {
  const { arrows } = overlayOf(before, after, changes);
  expect(arrows).toEqual([{ id: 'moves', from: [3, 3], to: [3, 2.8] }]);
});

test('what only goes along, or only up, has no arrow', () => {
  const along = [change('moves', { moved: [0, -0.2, 0], along: 'stays' })];
  expect(overlayOf(before, after, along).arrows).toEqual([]);
  expect(overlayOf(before, after, [change('moves', { moved: [0, 0, 0.1] })]).arrows).toEqual([]);
});

test('a short move has an arrow that can be seen, its head in place and its true length written', () => {
  const arrow = drawnArrow({ id: 'a', from: [3, 3], to: [3.005, 3] }, sheet);
  expect(arrow.to[0]).toBeCloseTo(300.5, 9);
  expect(arrow.to[0] - arrow.from[0]).toBeGreaterThan(20);
  expect(arrow.text).toBe('5 mm');
});

test('names and lengths do not lie on each other and stay in the drawing', () => {
  const { arrows } = overlayOf(before, after, changes);
  const size = { width: 600, height: 600 };
  const drawn = arrows.map((a) => drawnArrow(a, sheet));
  const labels = overlayLabels({ before, after, changes, arrows: drawn, sheet, size });
  expect(labels.map((l) => l.text).sort()).toEqual(['200 mm', 'comes', 'goes', 'moves', 'stays']);
  for (const [i, { box }] of labels.entries()) {
    expect(box.min[0]).toBeGreaterThanOrEqual(0);
    expect(box.max[0]).toBeLessThanOrEqual(600);
    for (const other of labels.slice(i + 1))
      expect(
        box.min[0] >= other.box.max[0] ||
          other.box.min[0] >= box.max[0] ||
          box.min[1] >= other.box.max[1] ||
          other.box.min[1] >= box.max[1],
      ).toBe(true);
  }
});
