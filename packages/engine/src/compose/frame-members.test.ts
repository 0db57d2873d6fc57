import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Profile } from '../catalogue/schema.js';
import type { DesignTable } from '../design/types.js';
import { rectangle } from '../floor/geometry/polygon.js';
import { axesOf } from './axes.js';
import type { PartDraft } from './draft.js';
import { frameMembers, innerPosts, mullions } from './frame-members.js';

interface Box {
  readonly low: readonly [number, number, number];
  readonly high: readonly [number, number, number];
}

/** Envelope of a bar along an axis of a frame that is not turned. */
function envelope(part: PartDraft): Box {
  const { shape } = part;
  if (shape.shape !== 'bar') throw new Error('not a bar');
  const { from, to, width, height } = shape;
  const upright = Math.abs(to[2] - from[2]) > 1e-9;
  const alongX = !upright && Math.abs(to[0] - from[0]) > 1e-9;
  const half = upright ? [width / 2, height / 2, 0] : alongX ? [0, width / 2, height / 2] : [width / 2, 0, height / 2];
  const axis = (i: 0 | 1 | 2) => [Math.min(from[i], to[i]) - half[i]!, Math.max(from[i], to[i]) + half[i]!] as const;
  const [x, y, z] = [axis(0), axis(1), axis(2)];
  return { low: [x[0], y[0], z[0]], high: [x[1], y[1], z[1]] };
}

const common = (a: Box, b: Box): number =>
  [0, 1, 2].reduce((v, i) => v * Math.max(0, Math.min(a.high[i]!, b.high[i]!) - Math.max(a.low[i]!, b.low[i]!)), 1);

const table = (length: number, width: number): DesignTable => ({
  id: 't',
  name: 't',
  outline: rectangle([0, 0], length, width),
  centre: [0, 0],
  turn: 0,
  length,
  width,
  height: 0.9,
  mass: null,
  travel: 0,
  equipment: [],
});

const frames = fc.record({
  length: fc.double({ min: 1, max: 5, noNaN: true }),
  width: fc.double({ min: 0.8, max: 2.5, noNaN: true }),
  gap: fc.double({ min: 0.05, max: 1, noNaN: true }),
  size: fc.constantFrom<readonly [number, number]>([0.03, 0.03], [0.04, 0.08], [0.08, 0.08]),
  spacing: fc.double({ min: 0.8, max: 3, noNaN: true }),
  rigid: fc.subarray(['south', 'east', 'north', 'west'] as const),
  panelHeight: fc.constantFrom(0.6, 1.2, 2.4),
});

const built = (f: {
  length: number;
  width: number;
  gap: number;
  size: readonly [number, number];
  spacing: number;
  rigid: readonly ('south' | 'east' | 'north' | 'west')[];
  panelHeight: number;
}) => {
  const profile = { id: 'p', size: f.size, massPerLength: 2 } as unknown as Profile;
  const t = table(Math.max(f.length, f.width), Math.min(f.length, f.width));
  const axes = axesOf([t], { south: f.gap, east: f.gap, north: f.gap, west: f.gap });
  const crossBeams = [-0.25, 0.25].map((share) => share * axes.length);
  const members = frameMembers({
    of: 'e',
    axes,
    profile,
    clearHeight: 2.1,
    footHeight: 0.06,
    hemGap: 0.1,
    postSpacing: f.spacing,
    crossBeams,
    rigidSides: new Map(f.rigid.map((side) => [side, { width: 1.25, height: f.panelHeight }])),
  });
  return { members, t, axes };
};

test('no member cuts another', () => {
  fc.assert(
    fc.property(frames, (f) => {
      const boxes = built(f).members.parts.map(envelope);
      boxes.forEach((a, i) => {
        for (const b of boxes.slice(i + 1)) expect(common(a, b)).toBeLessThan(1e-9);
      });
    }),
    { numRuns: 150 },
  );
});

test('no member comes nearer to the table than the gap', () => {
  fc.assert(
    fc.property(frames, (f) => {
      const { members, t } = built(f);
      const around: Box = {
        low: [-t.length / 2 - f.gap, -t.width / 2 - f.gap, 0],
        high: [t.length / 2 + f.gap, t.width / 2 + f.gap, 2],
      };
      for (const part of members.parts) expect(common(envelope(part), around)).toBeLessThan(1e-9);
    }),
    { numRuns: 150 },
  );
});

test('length along a side is posts and beams, nothing else', () => {
  const { members, axes } = built({
    length: 2.4,
    width: 1.2,
    gap: 0.1,
    size: [0.04, 0.04],
    spacing: 1.4,
    rigid: [],
    panelHeight: 2.4,
  });
  const south = members.bays.filter((b) => b.side === 'south').reduce((sum, b) => sum + b.to - b.from, 0);
  // One post of 40 mm stands between the corners: 2.6 m inside, split in two fields of at most 1.4 m.
  expect(south).toBeCloseTo(axes.length - 0.04, 12);
  expect(members.posts).toHaveLength(4 + 2);
});

test('posts and mullions divide evenly and never exceed the limit', () => {
  expect(innerPosts(1.3, 2.6)).toEqual([]);
  expect(innerPosts(1.3, 1.4)).toEqual([0]);
  expect(mullions(0, 2.5, 1.25)).toEqual([1.25]);
  expect(mullions(0, 3, 1)).toHaveLength(2);
});
