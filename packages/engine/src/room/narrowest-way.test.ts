import fc from 'fast-check';
import { expect, test } from 'vitest';
import { contains, distanceToSegment, edges, type Ring, rectangle } from '../floor/geometry/polygon.js';
import type { Vec2 } from '../floor/geometry/vec.js';
import { narrowestWay } from './narrowest-way.js';

const cell = 0.05;
const room = rectangle([3, 2], 6, 4);

/**
 * Widest way on a raster: cells joined in the order of falling clearance until start and goal are one. Of another kind than
 * the search by features; right to about a cell's diagonal (handbook of layout, section 2.2; derived).
 */
function widestOnRaster(obstacles: readonly Ring[], start: Vec2, goal: Vec2): number {
  const [columns, rows] = [6 / cell, 4 / cell];
  const at = (k: number): Vec2 => [((k % columns) + 0.5) * cell, (Math.floor(k / columns) + 0.5) * cell];
  const sides = [room, ...obstacles].flatMap(edges);
  const clearance = Array.from({ length: columns * rows }, (_, k) => {
    const p = at(k);
    if (obstacles.some((o) => contains(o, p))) return 0;
    return Math.min(...sides.map((e) => distanceToSegment(p, e.from, e.to)));
  });
  const parent = clearance.map((_, k) => k);
  const root = (k: number): number => {
    let top = k;
    while (parent[top] !== top) top = parent[top]!;
    parent[k] = top;
    return top;
  };
  const index = (p: Vec2) => Math.floor(p[1] / cell) * columns + Math.floor(p[0] / cell);
  const entered = new Set<number>();
  const order = clearance.map((_, k) => k).sort((a, b) => clearance[b]! - clearance[a]!);
  for (const k of order) {
    if (clearance[k] === 0) return 0;
    entered.add(k);
    const x = k % columns;
    const beside = [x > 0 ? k - 1 : -1, x < columns - 1 ? k + 1 : -1, k - columns, k + columns];
    for (const n of beside) if (entered.has(n)) parent[root(n)] = root(k);
    if (entered.has(index(start)) && entered.has(index(goal)) && root(index(start)) === root(index(goal)))
      return 2 * clearance[k]!;
  }
  return 0;
}

test('agrees with a raster search on rooms with turned and crossing obstacles', () => {
  const obstacle = fc.record({
    x: fc.integer({ min: 12, max: 48 }),
    y: fc.integer({ min: 0, max: 40 }),
    length: fc.integer({ min: 3, max: 20 }),
    width: fc.integer({ min: 2, max: 8 }),
    turn: fc.integer({ min: 0, max: 17 }),
  });
  const [start, goal]: [Vec2, Vec2] = [
    [0.325, 2.025],
    [5.675, 2.025],
  ];
  fc.assert(
    fc.property(fc.array(obstacle, { minLength: 2, maxLength: 6 }), (list) => {
      const rings = list.map((o) =>
        rectangle([o.x / 10, o.y / 10], o.length / 10, o.width / 10, (o.turn * Math.PI) / 18),
      );
      fc.pre(![start, goal].some((p) => rings.some((r) => contains(r, p))));
      const obstacles = rings.map((outline, i) => ({ id: `o${i}`, outline }));
      const found = narrowestWay({ room, obstacles, starts: [start], goals: [goal] });
      expect(found.ok).toBe(true);
      if (!found.ok) return;
      const raster = widestOnRaster(rings, start, goal);
      expect(Math.abs(found.value.width - raster)).toBeLessThan(2 * cell * Math.SQRT2);
    }),
    { seed: 41, numRuns: 25 },
  );
});
