import fc from 'fast-check';
import { expect, test } from 'vitest';
import { layRoof, panelSpan, type Rect, unitGrid } from './roof.js';

const area = (r: Rect) => (r.u1 - r.u0) * (r.v1 - r.v0);
const overlap = (a: Rect, b: Rect) =>
  Math.max(0, Math.min(a.u1, b.u1) - Math.max(a.u0, b.u0)) * Math.max(0, Math.min(a.v1, b.v1) - Math.max(a.v0, b.v0));

const roofs = fc
  .record({
    length: fc.double({ min: 1.5, max: 6, noNaN: true }),
    width: fc.double({ min: 1.2, max: 4, noNaN: true }),
    beamWidth: fc.constantFrom(0.03, 0.04, 0.08),
    unit: fc.constantFrom<readonly [number, number]>([0.57, 1.17], [1.17, 0.57], [0.57, 0.57]),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
  })
  .filter(({ length, width }) => length >= width)
  .map(({ share, ...roof }) => {
    const grid = unitGrid(roof);
    return { ...roof, count: Math.round(share * grid.columns * grid.rows), panelSpan };
  });

test('units and panels never overlap, stay on the frame, and leave nothing of the inside open', () => {
  fc.assert(
    fc.property(roofs, (roof) => {
      const { units, panels } = layRoof(roof);
      expect(units).toHaveLength(roof.count);
      const all = [...units, ...panels];
      all.forEach((a, i) => {
        for (const b of all.slice(i + 1)) expect(overlap(a, b)).toBeLessThan(1e-6);
      });
      const [a, b] = [roof.length / 2, roof.width / 2];
      const inside = { u0: -a, u1: a, v0: -b, v1: b };
      const covered = all.reduce((sum, r) => sum + overlap(r, inside), 0);
      expect(covered).toBeCloseTo(area(inside), 6);
      for (const r of all) {
        expect(Math.max(-r.u0, r.u1)).toBeLessThanOrEqual(a + roof.beamWidth / 2 + 1e-9);
        expect(Math.max(-r.v0, r.v1)).toBeLessThanOrEqual(b + roof.beamWidth / 2 + 1e-9);
      }
    }),
    { numRuns: 300 },
  );
});

test('every edge along v of a unit lies on a cross beam or on the perimeter', () => {
  fc.assert(
    fc.property(roofs, (roof) => {
      const { units, beams } = layRoof(roof);
      const perimeter = roof.length / 2;
      for (const { u0, u1 } of units)
        for (const edge of [u0, u1]) {
          const onBeam = beams.some((b) => Math.abs(b - edge) < 1e-9);
          const onPerimeter = Math.abs(edge) >= perimeter + 0.01 - 1e-9;
          expect(onBeam || onPerimeter).toBe(true);
        }
    }),
    { numRuns: 300 },
  );
});

test('cross beams stay inside the frame and at most 1.25 m apart under panels', () => {
  fc.assert(
    fc.property(roofs, (roof) => {
      const { beams, panels } = layRoof(roof);
      for (const b of beams) expect(Math.abs(b) + roof.beamWidth / 2).toBeLessThanOrEqual(roof.length / 2 + 1e-9);
      for (const p of panels) expect(p.u1 - p.u0).toBeLessThanOrEqual(1.25 + 1e-9);
    }),
    { numRuns: 300 },
  );
});
