import { expect, test } from 'vitest';
import type { CompleteBrief } from '../brief/complete.js';
import { distance2 } from '../floor/geometry/vec.js';
import { composeRoom } from './room.js';

type Door = CompleteBrief['room']['doors'][number];

const room = (door: Partial<Door>, outline: [number, number][] = [[0, 0], [6, 0], [6, 4], [0, 4]]) =>
  composeRoom({
    room: {
      name: 'Lab', outline, height: 3, meanAbsorption: 0.15, diagonals: [], windows: [], columns: [{ id: 'c', at: [3, 2], diameter: 0.4 }], beams: [], obstructions: [],
      sprinklers: [], detectors: [], exitSigns: [], boards: [], airTerminals: [], luminaires: [],
      doors: [{ id: 'd', wall: 0, at: 1, width: 0.9, height: 2.1, swing: 'in', ...door }],
    },
  } as unknown as CompleteBrief); // biome-ignore format: one record

const tip = (leaf: { hinge: readonly [number, number]; leaf: number; open: number }) => [
  leaf.hinge[0] + leaf.leaf * Math.cos(leaf.open),
  leaf.hinge[1] + leaf.leaf * Math.sin(leaf.open),
];

// Standing in the room and looking south at a door in the south wall, east is on the left hand.
test('a door hinged left, seen from inside, turns about its left end into the room', () => {
  const [leaf] = room({ hinge: 'left' }).doors[0]!.leaves;
  expect(leaf!.hinge).toEqual([1.9, 0]);
  expect(tip(leaf!)[0]).toBeCloseTo(1.9, 12);
  expect(tip(leaf!)[1]).toBeCloseTo(0.9, 12);
});

test('a door hinged right turns about its right end, and one that swings out leaves the room', () => {
  const [inward] = room({ hinge: 'right' }).doors[0]!.leaves;
  expect(inward!.hinge).toEqual([1, 0]);
  const [outward] = room({ hinge: 'right', swing: 'out' }).doors[0]!.leaves;
  expect(tip(outward!)[1]).toBeCloseTo(-0.9, 12);
});

test('a door of two leaves has one at each end, half as long; a sliding door has none', () => {
  const { leaves } = room({ leaves: 2 }).doors[0]!;
  expect(leaves.map((l) => l.leaf)).toEqual([0.45, 0.45]);
  expect(distance2(leaves[0]!.hinge, leaves[1]!.hinge)).toBeCloseTo(0.9, 12);
  expect(room({ swing: 'sliding' }).doors[0]!.leaves).toEqual([]);
});

test('walls keep the numbers of the brief when the outline runs clockwise, and openings face inwards', () => {
  const clockwise = room({ wall: 3 }, [
    [0, 0],
    [0, 4],
    [6, 4],
    [6, 0],
  ]);
  const door = clockwise.doors[0]!;
  // Wall 3 runs from [6, 0] to [0, 0]: the south wall, 1 m from its first corner.
  expect(door.from).toEqual([5, 0]);
  expect(door.inward[1]).toBeCloseTo(1, 12);
});

test('a round column comes out no smaller than it is', () => {
  const { outline } = room({}).columns[0]!;
  const nearest = Math.min(
    ...outline.map((p, i) => {
      const q = outline[(i + 1) % outline.length]!;
      return distance2([(p[0] + q[0]) / 2, (p[1] + q[1]) / 2], [3, 2]);
    }),
  );
  expect(nearest).toBeGreaterThanOrEqual(0.2 - 1e-12);
});
