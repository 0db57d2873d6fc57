import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Profile } from '../catalogue/schema.js';
import { standardGravity } from '../frame/index.js';
import { layRoof, panelSpan, unitGrid } from './roof.js';
import { roofLoads } from './roof-loads.js';

const roofs = fc.record({
  length: fc.double({ min: 1.5, max: 6, noNaN: true }),
  width: fc.double({ min: 1.2, max: 4, noNaN: true }),
  beamWidth: fc.constantFrom(0.03, 0.04, 0.08),
  unit: fc.constantFrom<readonly [number, number]>([0.57, 1.17], [1.17, 0.57], [0.57, 0.57]),
  share: fc.double({ min: 0, max: 1, noNaN: true }),
});

test('what lies on the roof arrives at the perimeter, nothing lost and nothing twice', () => {
  fc.assert(
    fc.property(roofs, ({ share, ...roof }) => {
      const grid = unitGrid(roof);
      const count = Math.round(share * grid.columns * grid.rows);
      const laid = layRoof({ ...roof, count, panelSpan });
      const profile = { massPerLength: 2 } as unknown as Profile;
      const [a, b] = [roof.length / 2, roof.width / 2];
      const bay = { from: -a, to: a, hung: 0, carriesTrack: false };
      const end = { from: -b, to: b, hung: 0, carriesTrack: false };
      const loads = roofLoads({
        length: roof.length,
        width: roof.width,
        profile,
        crossBeams: laid.beams,
        units: laid.units,
        unitMass: 30,
        panels: laid.panels,
        panelMassPerArea: 5,
        longBays: [
          { ...bay, bay: 0 },
          { ...bay, bay: 2 },
        ],
        endBays: [
          { ...end, bay: 1, sign: 1 },
          { ...end, bay: 3, sign: -1 },
        ],
      });
      const carried = loads
        .filter((l) => l.kind !== 'cross')
        .reduce((sum, l) => sum + l.uniform * l.span + l.points.reduce((s, p) => s + p.load, 0), 0);
      // By hand: units, panels by area, and every bar by length.
      const panels = laid.panels.reduce((sum, p) => sum + (p.u1 - p.u0) * (p.v1 - p.v0), 0);
      const bars = 2 * (roof.length + roof.width) + laid.beams.length * roof.width;
      expect(carried / standardGravity).toBeCloseTo(30 * count + 5 * panels + 2 * bars, 6);
    }),
    { numRuns: 300 },
  );
});
