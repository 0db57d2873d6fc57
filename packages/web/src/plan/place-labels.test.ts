import fc from 'fast-check';
import { expect, test } from 'vitest';
import { boxOfSpot, type Label, overlaps, placeLabels, type Spot } from './place-labels.js';

const label = (key: string, ...spots: Spot[]): Label => ({ key, text: key, width: 40, height: 14, spots });

test('a label whose place is taken goes to its next one', () => {
  const placed = placeLabels([label('a', { at: [0, 0] }), label('b', { at: [10, 5] }, { at: [0, 30] })], [], []);
  expect(placed.map((p) => p.at)).toEqual([
    [0, 0],
    [0, 30],
  ]);
});

test('a label without a free place is left out, one that must be kept is not', () => {
  const two = [label('a', { at: [0, 0] }), label('b', { at: [10, 5] })];
  expect(placeLabels(two, [], []).map((p) => p.key)).toEqual(['a']);
  expect(placeLabels([two[0]!, { ...two[1]!, kept: true }], [], []).map((p) => p.key)).toEqual(['a', 'b']);
});

test('a place without a line through it is better than an earlier one with two', () => {
  const lines = [
    [
      [-50, 0],
      [50, 0],
    ],
    [
      [0, -50],
      [0, 50],
    ],
  ] as const;
  const [placed] = placeLabels([label('a', { at: [0, 0] }, { at: [60, 60] })], [], lines);
  expect(placed!.at).toEqual([60, 60]);
});

test('a label that would cross three lines is left out, one that must be kept is not', () => {
  const lines = [-10, 0, 10].map(
    (x) =>
      [
        [x, -50],
        [x, 50],
      ] as const,
  );
  const crossing = label('a', { at: [0, 0], rank: 4 });
  expect(placeLabels([crossing], [], lines)).toEqual([]);
  expect(placeLabels([crossing], [], lines.slice(1)).map((p) => p.key)).toEqual(['a']);
  expect(placeLabels([{ ...crossing, kept: true }], [], lines).map((p) => p.key)).toEqual(['a']);
});

test('a line that leads away does not run through a name that stands already', () => {
  const name = label('name', { at: [0, 0] });
  const led = label('led', { at: [0, -40], leadsTo: [0, 40] }, { at: [60, 0], leadsTo: [60, 40] });
  expect(placeLabels([name, led], [], [])[1]!.at).toEqual([60, 0]);
});

test('a place beyond the room for writing is not taken', () => {
  const within = { min: [-50, -50], max: [50, 50] } as const;
  const [placed] = placeLabels([label('a', { at: [45, 0] }, { at: [20, 0] })], [], [], within);
  expect(placed!.at).toEqual([20, 0]);
});

test('a place may have words of its own, and takes their room', () => {
  const written = { text: 'in two\nlines', width: 20, height: 30 };
  const [placed] = placeLabels([label('a', { at: [0, 0], written })], [], []);
  expect(placed).toMatchObject({ text: 'in two\nlines', box: { min: [-10, -15], max: [10, 15] } });
});

test('the box of a turned label is that of its corners', () => {
  expect(boxOfSpot({ at: [0, 0], angle: 90 }, 40, 14).max[1]).toBeCloseTo(20, 9);
  expect(boxOfSpot({ at: [0, 0], angle: 45 }, 40, 14).max[0]).toBeCloseTo(27 * Math.SQRT1_2, 9);
});

test('labels never lie on each other or on an obstacle', () => {
  const at = fc.tuple(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 0, max: 200 }));
  fc.assert(
    fc.property(fc.array(fc.array(at, { minLength: 1, maxLength: 5 }), { maxLength: 25 }), (all) => {
      const obstacle = { min: [50, 50], max: [90, 90] } as const;
      const placed = placeLabels(
        all.map((spots, i) => label(String(i), ...spots.map((p) => ({ at: p })))),
        [obstacle],
        [],
      );
      for (const [i, a] of placed.entries()) {
        expect(overlaps(a.box, obstacle)).toBe(false);
        for (const b of placed.slice(i + 1)) expect(overlaps(a.box, b.box)).toBe(false);
      }
    }),
    { seed: 11 },
  );
});
