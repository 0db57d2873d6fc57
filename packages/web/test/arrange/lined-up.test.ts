import { type Bounds, bounds, rectangle } from '@cloche/engine';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arrangedText } from '../../src/arrange/arranged.js';
import { radiansOf } from '../../src/arrange/exact.js';
import { aligned, type BoxOf, distributed, lines } from '../../src/arrange/lined-up.js';
import { briefData } from '../../src/brief/document.js';
import { pathOfThing } from '../../src/brief/find.js';
import { metresOf } from '../../src/brief/lengths.js';
import { valueAt } from '../../src/brief/path.js';
import { briefs } from './briefs.js';

/** Boxes of tables of 1.2 m by 0.8 m, from the brief alone. */
const boxesIn =
  (data: unknown): BoxOf =>
  (id) => {
    const path = pathOfThing(data, id)!;
    const [x, y] = [0, 1].map((k) => metresOf(valueAt(data, [...path, 'at', k]))!);
    return bounds(rectangle([x!, y!], 1.2, 0.8, radiansOf(valueAt(data, [...path, 'turn']))));
  };
const close = 2e-5;

test('lining up leaves one coordinate equal and the other as it was', () => {
  fc.assert(
    fc.property(briefs, fc.constantFrom(...lines), ({ text, ids }, line) => {
      const data = briefData(text);
      const after = briefData(arrangedText(text, aligned(data, ids, line, boxesIn(data))));
      const [before, now] = [ids.map((id) => boxesIn(data)(id)!), ids.map((id) => boxesIn(after)(id)!)];
      const k = ['west', 'centre', 'east'].includes(line) ? 0 : 1;
      const edge = (box: (typeof now)[number]) =>
        ({
          west: box.min[0],
          south: box.min[1],
          east: box.max[0],
          north: box.max[1],
          centre: (box.min[0] + box.max[0]) / 2,
          middle: (box.min[1] + box.max[1]) / 2,
        })[line];
      for (const box of now) expect(Math.abs(edge(box) - edge(now[0]!))).toBeLessThan(close);
      for (const [i, box] of now.entries()) expect(box.min[1 - k]).toBe(before[i]!.min[1 - k]);
    }),
    { numRuns: 30 },
  );
});

describe('equal gaps', () => {
  test('the gaps between neighbours become equal, the outermost stay', () => {
    fc.assert(
      fc.property(briefs, fc.constantFrom(0 as const, 1 as const), ({ text, ids }, axis) => {
        const data = briefData(text);
        const after = briefData(arrangedText(text, distributed(data, ids, axis, boxesIn(data))));
        const middle = (id: string) => boxesIn(data)(id)!.min[axis] + boxesIn(data)(id)!.max[axis];
        const order = [...ids].sort((a, b) => middle(a) - middle(b));
        const [before, now] = [data, after].map((d) => order.map((id) => boxesIn(d)(id)!)) as [Bounds[], Bounds[]];
        const gaps = now.slice(1).map((box, i) => box.min[axis] - now[i]!.max[axis]);
        for (const gap of gaps) expect(Math.abs(gap - gaps[0]!)).toBeLessThan(2 * close);
        expect(now[0]!.min[axis]).toBeCloseTo(before[0]!.min[axis], 9);
        expect(now.at(-1)!.max[axis]).toBeCloseTo(before.at(-1)!.max[axis], 9);
      }),
      { numRuns: 30 },
    );
  });
  test('too few things are told', () => {
    expect(distributed({}, ['a', 'b'], 0, () => undefined).told).toHaveLength(1);
    expect(aligned({}, ['a'], 'west', () => undefined).told).toHaveLength(1);
  });
});
