import { bounds, type Design, readBrief, type Vec2 } from '@cloche/engine';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arrangedText } from '../../src/arrange/arranged.js';
import { idsLike } from '../../src/arrange/members.js';
import { type Motion, mirroring, turning } from '../../src/arrange/motion.js';
import { middleOfPlaces, transformed } from '../../src/arrange/transformed.js';
import { briefData } from '../../src/brief/document.js';
import { metresOf } from '../../src/brief/lengths.js';
import { listAt, valueAt } from '../../src/brief/path.js';
import { designOf, exampleText } from '../design-of.js';
import { briefs, largestDifference, numbersOf, threeTables } from './briefs.js';

const everything = ['table-1', 'table-2', 'table-3', 'run-1', 'column-1', 'lamp-1', 'laser-2'];
const after = (text: string, ids: readonly string[], motion: (middle: Vec2) => Motion): string => {
  const data = briefData(text);
  return arrangedText(text, transformed(data, ids, motion(middleOfPlaces(data, ids)!)));
};
const at = (text: string, path: string) =>
  valueAt(
    briefData(text),
    path.split('.').map((s) => (/^\d+$/.test(s) ? Number(s) : s)),
  );

describe('properties', () => {
  test('four quarter turns bring everything back', () => {
    fc.assert(
      fc.property(briefs, fc.subarray(everything, { minLength: 1 }), ({ text }, ids) => {
        const quarter = (now: string) => after(now, ids, (middle) => turning(middle, Math.PI / 2));
        const back = quarter(quarter(quarter(quarter(text))));
        expect(largestDifference(numbersOf(briefData(back)), numbersOf(briefData(text)))).toBeLessThan(1e-9);
      }),
      { numRuns: 25 },
    );
  });

  test('the mirror image of the mirror image is the same', () => {
    fc.assert(
      fc.property(briefs, fc.subarray(everything, { minLength: 1 }), fc.boolean(), ({ text }, ids, upright) => {
        const mirror = (now: string) => after(now, ids, (middle) => mirroring(middle, upright ? Math.PI / 2 : 0));
        const once = mirror(text);
        const twice = briefData(mirror(once));
        expect(largestDifference(numbersOf(twice), numbersOf(briefData(text)))).toBeLessThan(1e-9);
        for (const path of [
          ['layout', 'enclosures', 0, 'gaps'],
          ['layout', 'enclosures', 0, 'sides'],
          ['needs', 'access'],
        ])
          expect(valueAt(twice, path)).toEqual(valueAt(briefData(text), path));
      }),
      { numRuns: 25 },
    );
  });

  test('a turn keeps all distances on the table and between the tables', () => {
    fc.assert(
      fc.property(briefs, fc.double({ min: -3, max: 3, noNaN: true }), ({ text }, angle) => {
        const turned = after(text, ['table-1', 'table-2'], (middle) => turning(middle, angle));
        const far = (t: string) => {
          const tables = listAt(briefData(t), ['tables']);
          const [a, b] = [0, 1].map((i) => [0, 1].map((k) => metresOf(valueAt(tables[i], ['at', k]))!));
          return Math.hypot(a![0]! - b![0]!, a![1]! - b![1]!);
        };
        expect(Math.abs(far(turned) - far(text))).toBeLessThan(5e-5);
        expect(at(turned, 'tables.0.equipment.0.at.0')).toBe(at(text, 'tables.0.equipment.0.at.0'));
      }),
      { numRuns: 20 },
    );
  });
});

describe('a quarter turn', () => {
  test('of one table turns it where it stands', () => {
    const turned = after(threeTables, ['table-3'], (middle) => turning(middle, Math.PI / 2));
    expect([at(turned, 'tables.2.turn'), at(turned, 'tables.2.at.0')]).toEqual(['90 deg', '7.6 m']);
  });
  test('of two tables goes about the middle between them', () => {
    // Middles (2.1, 1.55) and (2.1, 3.37): about (2.1, 2.46) the first comes to lie 0.91 m east of it.
    const turned = after(threeTables, ['table-1', 'table-2'], (middle) => turning(middle, Math.PI / 2));
    expect(['0.at.0', '0.at.1', '1.at.0', '1.at.1', '0.turn'].map((p) => at(turned, `tables.${p}`))).toEqual([
      '3.01 m',
      '2.46 m',
      '1.19 m',
      '2.46 m',
      '90 deg',
    ]);
  });
  test('of a luminaire changes its length for its width, and another angle only its place, which is told', () => {
    const turned = after(threeTables, ['lamp-1'], (middle) => turning(middle, Math.PI / 2));
    expect(at(turned, 'room.luminaires.0.size')).toEqual(['0.3 m', '1.5 m']);
    expect(transformed(briefData(threeTables), ['lamp-1'], turning([0, 0], 0.5)).told[0]).toContain('lamp-1');
  });
});

describe('the mirror image', () => {
  const mirrored = after(threeTables, ['table-3'], (middle) => mirroring(middle, Math.PI / 2));
  test('keeps a table where it stands and reverses what stands on it', () => {
    expect(at(mirrored, 'tables.2.at')).toEqual(['7.6 m', '3.6 m']);
    expect(at(mirrored, 'tables.2.equipment.0.at')).toEqual(['1 m', '-0.4 m']);
  });
  test('turns beams round: what ran east runs west', () => {
    expect([at(mirrored, 'lasers.1.direction'), at(mirrored, 'lasers.1.legs.0.to.0')]).toEqual(['180 deg', '-1.2 m']);
    expect(at(mirrored, 'lasers.2.direction')).toBe('0 deg');
  });
  test('of an enclosure changes the sides that are called east and west', () => {
    const text = after(threeTables, ['enclosure-1'], (middle) => mirroring(middle, Math.PI / 2));
    expect(at(text, 'layout.enclosures.0.gaps')).toEqual({ west: '800 mm', north: '90 mm' });
    expect(at(text, 'layout.enclosures.0.sides.east.closure')).toBe('rigid panel');
    expect(at(text, 'layout.enclosures.0.sides.west.closure')).toBe('strip');
    expect(readBrief(text).ok).toBe(true);
  });
  test('about the middle of its own wall takes a door along it and hangs it on the other side', () => {
    // The wall in the south is 11 m long: a door from 9.2 m to 10.4 m comes to lie from 0.6 m.
    const text = arrangedText(
      threeTables,
      transformed(briefData(threeTables), ['door-1'], mirroring([5.5, 0], Math.PI / 2)),
    );
    expect([at(text, 'room.doors.0.at'), at(text, 'room.doors.0.hinge')]).toEqual(['0.6 m', 'left']);
  });
  test('leaves a door in its wall where no wall lies on the other side, and tells it', () => {
    const { changes, told } = transformed(briefData(threeTables), ['door-1'], mirroring([5, 5], 0));
    expect(changes).toEqual([]);
    expect(told[0]).toContain('door-1');
  });
});

describe('a whole room', () => {
  const room = exampleText('amplifier-bay.yaml');
  const data = briefData(room);
  const { min, max } = bounds(designOf(room).room.outline);
  const middle: Vec2 = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
  const all = idsLike(data, null);
  const made = (motion: Motion) => designOf(arrangedText(room, transformed(data, all, motion)));

  test('in its mirror image is built of the same parts, and so it is when it is turned by half', () => {
    const parts = (design: Design) => design.parts.map(({ item, count }) => `${count} ${item}`).sort();
    const before = parts(designOf(room));
    expect(parts(made(mirroring(middle, Math.PI / 2)))).toEqual(before);
    expect(parts(made(turning(middle, Math.PI)))).toEqual(before);
  });
  test('in its mirror image has every beam where the mirror shows it', () => {
    const mirrored = made(mirroring(middle, Math.PI / 2));
    for (const [i, laser] of designOf(room).lasers.entries())
      for (const [j, [x, y]] of laser.path.entries()) {
        const image = mirrored.lasers[i]!.path[j]!;
        expect(Math.hypot(image[0] - (2 * middle[0] - x), image[1] - y)).toBeLessThan(1e-6);
      }
  });
});
