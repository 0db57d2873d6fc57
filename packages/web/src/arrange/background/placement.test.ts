import { signedArea, type Vec2 } from '@cloche/engine';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { kindOf } from './file-kind.js';
import { outlineFrom } from './outline-from.js';
import { inRoom, onBackground, type Placement, placementIn, scaledTo } from './placement.js';

const placement: Placement = { file: 'f', name: 'n', at: [1, 2], width: 4, turn: 0, shown: true };
const number = fc.double({ min: -20, max: 20, noNaN: true });
const point = fc.tuple(number, number);

describe('the place of a background', () => {
  test('after its scale is set two of its points are as far apart as was said, and the first has not moved', () => {
    fc.assert(
      fc.property(
        point,
        point,
        fc.double({ min: 0.1, max: 50, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        (a, b, metres, turn) => {
          fc.pre(Math.hypot(b[0] - a[0], b[1] - a[1]) > 0.01);
          const before = { ...placement, turn };
          const after = { ...before, ...scaledTo(before, a, b, metres)! };
          const [p, q] = [a, b].map((each) => inRoom(after, onBackground(before, each)));
          expect(Math.hypot(q![0] - p![0], q![1] - p![1])).toBeCloseTo(metres, 6);
          expect(Math.hypot(p![0] - a[0], p![1] - a[1])).toBeLessThan(1e-6);
        },
      ),
    );
  });
  test('one point twice gives no scale', () => {
    expect(scaledTo(placement, [1, 1], [1, 1], 2)).toBeNull();
  });
  test('is read from the brief; without a width there is none', () => {
    const background = { file: 'a', name: 'room.png', at: ['1 m', '2 m'], width: '4 m', turn: '90 deg', shown: false };
    expect(placementIn({ background })).toMatchObject({ at: [1, 2], width: 4, turn: Math.PI / 2, shown: false });
    expect(placementIn({ background: { ...background, width: 'wide' } })).toBeNull();
    expect(placementIn({})).toBeNull();
  });
});

describe('a closed line as the outline of a room', () => {
  const ring: readonly Vec2[] = [
    [1000, 1000],
    [1000, 6000],
    [9000, 6000],
    [9000, 1000],
  ];
  test('runs counter-clockwise from the south-west corner, and the background stays under it', () => {
    const made = outlineFrom(ring, { ...placement, width: 8 }, [1000, 1000], 8000);
    if (typeof made === 'string') throw new Error(made);
    expect(made.outline.map((p) => p.map((v) => Number(v.toFixed(9))))).toEqual([
      [0, 0],
      [8, 0],
      [8, 5],
      [0, 5],
    ]);
    expect(signedArea(made.outline)).toBeCloseTo(40, 9);
    expect(made.at).toEqual([0, 0]);
  });
  test('is refused when it crosses itself, is tiny, or is a curve', () => {
    const bow: readonly Vec2[] = [
      [0, 0],
      [8000, 5000],
      [8000, 0],
      [0, 4000],
    ];
    expect(outlineFrom(bow, { ...placement, width: 8 }, [0, 0], 8000)).toContain('crosses');
    expect(outlineFrom(ring, { ...placement, width: 0.1 }, [1000, 1000], 8000)).toContain('small');
    const curve = Array.from(
      { length: 200 },
      (_, i): Vec2 => [Math.cos((i * Math.PI) / 100), Math.sin((i * Math.PI) / 100)],
    );
    expect(outlineFrom(curve, placement, [-1, -1], 2)).toContain('200 corners');
  });
});

test('a file is known by its first bytes, whatever it is called', () => {
  const bytes = (...values: number[]) => new Uint8Array(values);
  const text = (words: string) => new TextEncoder().encode(words);
  expect(kindOf(bytes(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a))).toBe('image/png');
  expect(kindOf(bytes(0xff, 0xd8, 0xff, 0xe0))).toBe('image/jpeg');
  expect(kindOf(text('RIFF    WEBPVP8 '))).toBe('image/webp');
  expect(kindOf(text('999\r\nmade by hand\r\n  0\r\nSECTION\r\n  2\r\n'))).toBe('image/vnd.dxf');
  for (const other of ['', 'SECTION', 'GIF89a', '<svg/>', '0\nSECTIONS\n']) expect(kindOf(text(other))).toBeNull();
});
