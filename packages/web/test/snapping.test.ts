import { add2, distance2, rectangle, type Vec2 } from '@cloche/engine';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { snapBox } from '../src/drawing/snap/box.js';
import { snapField } from '../src/drawing/snap/field.js';
import { snapPoint } from '../src/drawing/snap/point.js';
import type { SnapKind } from '../src/drawing/snap/types.js';
import { designOf, exampleText } from './design-of.js';

/** A room of 8 m by 6 m with a table of 2.4 m by 1.2 m about (3, 2) and a smaller one about (6, 4). */
const plain = `cloche: 1
project: { name: Snap }
room:
  name: Room
  outline: [[0 m, 0 m], [8 m, 0 m], [8 m, 6 m], [0 m, 6 m]]
  height: 3 m
tables:
  - { id: table-1, at: [3 m, 2 m], length: 2.4 m, width: 1.2 m, height: 0.9 m }
  - { id: table-2, at: [6 m, 4 m], length: 1.2 m, width: 0.6 m, height: 0.9 m }
`;
const design = designOf(plain);
const field = snapField(design, []);
const options = { reach: 0.08, grid: 0.01 };
const coordinate = (max: number) => fc.double({ min: 0, max, noNaN: true });
const inRoom = fc.tuple(coordinate(8), coordinate(6));

describe('a point', () => {
  test('rests on the corner of a table, and says so', () => {
    const { at, reasons } = snapPoint(field, [1.83, 1.37], options);
    expect(at[0]).toBeCloseTo(1.8, 9);
    expect(at[1]).toBeCloseTo(1.4, 9);
    expect(reasons.map(({ kind, text }) => [kind, text])).toEqual([['end', 'corner of table-1']]);
  });

  test('rests on the middle of a wall', () => {
    expect(snapPoint(field, [4.05, 0.03], options)).toEqual({
      at: [4, 0],
      reasons: [{ kind: 'middle', text: 'middle of the south wall' }],
    });
  });

  test('rests 900 mm from a wall, in whole steps along it', () => {
    const { at, reasons } = snapPoint(field, [0.93, 4.453], options);
    expect(at[0]).toBeCloseTo(0.9, 9);
    expect(at[1]).toBeCloseTo(4.45, 9);
    expect(reasons[0]).toMatchObject({ kind: 'offset', text: '900 mm from the west wall' });
  });

  test('runs straight east of the point before, and stops in line with a table', () => {
    const { at, reasons } = snapPoint(field, [4.18, 5.36], { ...options, from: [0.77, 5.33] });
    expect(at[1]).toBeCloseTo(5.33, 9);
    expect(at[0]).toBeCloseTo(4.2, 9);
    expect(reasons.map(({ kind }) => kind).sort()).toEqual(['angle', 'axis']);
  });

  test('stays where it is while Alt is held', () => {
    expect(snapPoint(field, [1.83, 1.37], { ...options, free: true })).toEqual({ at: [1.83, 1.37], reasons: [] });
  });

  test('takes no notice of kinds that are switched off', () => {
    const kinds = new Set<SnapKind>(['grid']);
    const { at, reasons } = snapPoint(field, [1.834, 1.371], { ...options, kinds });
    expect(at[0]).toBeCloseTo(1.83, 9);
    expect(at[1]).toBeCloseTo(1.37, 9);
    expect(reasons.map(({ kind }) => kind)).toEqual(['grid']);
  });

  test('is never drawn aside further than the reach', () => {
    fc.assert(
      fc.property(inRoom, inRoom, fc.double({ min: 0.002, max: 0.3, noNaN: true }), (at, from, reach) => {
        const to = snapPoint(field, at, { reach, grid: 0.01, from }).at;
        expect(distance2(to, at)).toBeLessThanOrEqual(reach + 1e-12);
      }),
    );
  });

  test('rests on the nearest corner or middle', () => {
    fc.assert(
      fc.property(
        fc.nat(field.spots.length - 1),
        fc.double({ min: -0.05, max: 0.05, noNaN: true }),
        fc.double({ min: -0.05, max: 0.05, noNaN: true }),
        (n, dx, dy) => {
          const at = add2(field.spots[n]!.at, [dx, dy]);
          const nearest = Math.min(...field.spots.map((spot) => distance2(spot.at, at)));
          const { at: to, reasons } = snapPoint(field, at, options);
          expect(['end', 'middle']).toContain(reasons[0]?.kind);
          expect(distance2(to, at)).toBeCloseTo(nearest, 12);
        },
      ),
    );
  });
});

describe('what is in hand', () => {
  test('is nothing to snap to, nor is what it carries', () => {
    const whole = designOf(exampleText('three-tables.yaml'));
    const ids = [...whole.tables, ...whole.runs, ...whole.enclosures, ...whole.room.doors].map(({ id }) => id);
    expect(ids.length).toBeGreaterThan(4);
    for (const id of ids) {
      const gone = new Set([id, ...(whole.tables.find((t) => t.id === id)?.equipment ?? []).map((part) => part.id)]);
      const left = snapField(whole, [id]);
      expect([...left.spots, ...left.edges, ...left.boxes].filter(({ of }) => gone.has(of))).toEqual([]);
    }
  });

  test('leaves the other corners of its own line to align with', () => {
    const run = `${plain}layout:
  runs:
    - { id: bay-1, kind: partition, path: [[1 m, 4 m], [2 m, 4 m], [2 m, 5 m], [4 m, 5 m]], hung: ceiling, trackHeight: 2.4 m }
`;
    const ends = snapField(designOf(run), ['bay-1#1']).spots.filter(({ of, kind }) => of === 'bay-1' && kind === 'end');
    expect(ends.map(({ at }) => at)).toEqual([
      [1, 4],
      [2, 5],
      [4, 5],
    ]);
  });
});

describe('a dragged table', () => {
  const small = rectangle([6, 4], 1.2, 0.6);
  const others = snapField(design, ['table-2']);

  test('comes to rest against a wall', () => {
    const { by, reasons } = snapBox(others, small, [1.36, 0.403], options);
    expect(by[0]).toBeCloseTo(1.4, 9);
    expect(by[1]).toBeCloseTo(0.4, 9);
    expect(reasons[0]).toMatchObject({ kind: 'wall', text: 'against the east wall' });
  });

  test('comes to rest 900 mm from a wall', () => {
    const { by, reasons } = snapBox(others, small, [0.47, 0.5], options);
    expect(by[0]).toBeCloseTo(0.5, 9);
    expect(reasons[0]).toMatchObject({ kind: 'offset', text: '900 mm from the east wall' });
  });

  test('comes to rest in line with another table', () => {
    const { by, reasons } = snapBox(others, small, [0.13, -2.03], options);
    expect(by[1]).toBeCloseTo(-2, 9);
    expect(reasons.some(({ kind, text }) => kind === 'axis' && text === 'in line with middle of table-1')).toBe(true);
  });

  test('leaves equal gaps to what stands on both sides', () => {
    // Between the east edge of table-1 (4.2 m) and the east wall (8 m) a table of 1.2 m leaves 1.3 m on each side.
    const { by, reasons } = snapBox(others, small, [0.12, -1.71], options);
    expect(by[0]).toBeCloseTo(0.1, 9);
    expect(reasons[0]).toMatchObject({ text: 'equal gaps, 1300 mm' });
  });

  test('comes to rest against a slanting wall', () => {
    const slanted = designOf(plain.replace('[8 m, 0 m], [8 m, 6 m]', '[9 m, 0 m], [7 m, 6 m]'));
    const { by, reasons } = snapBox(snapField(slanted, ['table-2']), small, [1.02, 0], options);
    expect(reasons).toMatchObject([{ kind: 'wall', text: 'against the east wall' }]);
    // Corner (6.6, 4.3) + by on the line from (9, 0) to (7, 6): 3 x + y = 27.
    expect(3 * (6.6 + by[0]) + 4.3 + by[1]).toBeCloseTo(27, 9);
  });

  test('is moved no further than the reach in each direction, and never on its own account', () => {
    fc.assert(
      fc.property(inRoom, (to) => {
        const wanted: Vec2 = [to[0] - 6, to[1] - 4];
        const { by, reasons } = snapBox(others, small, wanted, options);
        expect(Math.abs(by[0] - wanted[0])).toBeLessThanOrEqual(options.reach + 1e-12);
        expect(Math.abs(by[1] - wanted[1])).toBeLessThanOrEqual(options.reach + 1e-12);
        for (const { text } of reasons) expect(text).not.toContain('table-2');
      }),
    );
  });
});
