import fc from 'fast-check';
import { PerspectiveCamera, Vector3 } from 'three';
import { expect, test } from 'vitest';
import type { Vec3 } from '../engine/contract.js';
import { lookNames, looks, roomPoints, standBetween, standFor, uprightAngle } from './stand.js';

/** Where a camera of the drawing library sees a point: its picture goes from -1 to 1 both ways. */
function seen(points: readonly Vec3[], direction: Vec3, angle: number, aspect: number): Vector3[] {
  const { eye, target } = standFor(points, direction, { angle, aspect });
  const camera = new PerspectiveCamera((angle * 180) / Math.PI, aspect, 0.01, 500);
  camera.up.set(0, 0, 1);
  camera.position.set(...eye);
  camera.lookAt(...target);
  camera.updateMatrixWorld();
  return points.map((p) => new Vector3(...p).project(camera));
}

test('every set view has the whole room in the picture, however wide or narrow room and picture are', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...lookNames),
      fc.double({ min: 1, max: 20, noNaN: true }),
      fc.double({ min: 1, max: 20, noNaN: true }),
      fc.double({ min: 0.4, max: 3, noNaN: true }),
      (name, length, width, aspect) => {
        const room = roomPoints(
          [
            [0, 0],
            [length, 0],
            [length, width],
            [0, width],
          ],
          3,
        );
        const places = seen(room, looks[name], 0.6, aspect);
        const far = Math.max(...places.flatMap((p) => [Math.abs(p.x), Math.abs(p.y)]));
        expect(far).toBeLessThanOrEqual(1);
        // And not lost in it.
        expect(far).toBeGreaterThan(0.5);
      },
    ),
  );
});

test('from above, north is up and east is right', () => {
  const [south, north, east] = seen(
    [
      [0, -1, 0],
      [0, 1, 0],
      [1, 0, 0],
    ],
    looks.above,
    0.6,
    1,
  );
  expect(north!.y).toBeGreaterThan(south!.y);
  expect(east!.x).toBeGreaterThan(Math.max(north!.x, south!.x));
});

test('a picture that becomes narrower sees no less across, one that becomes wider no less upright', () => {
  const across = (aspect: number) => 2 * Math.atan(Math.tan(uprightAngle(0.6, aspect) / 2) * aspect);
  for (const aspect of [0.3, 0.7, 1]) expect(across(aspect)).toBeCloseTo(0.6, 9);
  for (const aspect of [1, 1.5, 3]) expect(uprightAngle(0.6, aspect)).toBeCloseTo(0.6, 9);
});

test('the way between two stands begins and ends at them, and never comes nearer than the nearer of them', () => {
  const number = fc.double({ min: -5, max: 5, noNaN: true });
  const point = fc.tuple(number, number, fc.double({ min: 0.5, max: 5, noNaN: true }));
  fc.assert(
    fc.property(point, point, fc.double({ min: 0, max: 1, noNaN: true }), (a, b, share) => {
      const target = [0, 0, 0] as const;
      const [from, to] = [
        { eye: a, target },
        { eye: b, target },
      ];
      const far = (p: Vec3) => Math.hypot(...p);
      const eye = (t: number) => standBetween(from, to, t).eye;
      expect(Math.hypot(eye(0)[0] - a[0], eye(0)[1] - a[1], eye(0)[2] - a[2])).toBeLessThan(1e-6);
      expect(Math.hypot(eye(1)[0] - b[0], eye(1)[1] - b[1], eye(1)[2] - b[2])).toBeLessThan(1e-6);
      expect(far(eye(share))).toBeGreaterThan(Math.min(far(a), far(b)) - 1e-9);
    }),
  );
});
