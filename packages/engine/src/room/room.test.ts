import fc from 'fast-check';
import { evaluate } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { type Ring, rectangle } from '../floor/geometry/polygon.js';
import type { Vec2 } from '../floor/geometry/vec.js';
import { type Outcome, valueOf } from '../floor/problem.js';
import type { TopicArguments } from '../floor/topic.js';
import { axisGaps } from './axis-gaps.js';
import { clearStrip } from './clear-strip.js';
import { freeSwing, swingArea, swingHolds, swingRing } from './door-swing.js';
import { freePieces, offsetArea, pieceHolds } from './free-space.js';
import { discPasses, narrowestWay } from './narrowest-way.js';
import { overlapArea } from './overlap.js';
import { seenInterval, seenThroughGap, stripSourceWidths } from './sight-gap.js';
import { fromSprinkler, suspendedObstructionDepth } from './sprinkler.js';
import { diagonalError } from './survey-closing.js';
import { roomTopics } from './topics.js';
import { workingSpace } from './working-space.js';

const box = (x: number, y: number, w: number, h: number): Ring => rectangle([x + w / 2, y + h / 2], w, h);
const room = box(0, 0, 8, 6);
const code = (o: Outcome<unknown>) => (o.ok ? 'ok' : o.problems[0]!.code);

describe('door swing', () => {
  const quarter = { hinge: [1, 1] as Vec2, leaf: 0.9, from: 0, to: Math.PI / 2 };

  test('a quarter turn sweeps a quarter of the circle', () => {
    expect(valueOf(swingArea(quarter))).toBeCloseTo((Math.PI * 0.81) / 4, 12);
  });

  test('points at the leaf, beyond it and behind the wall', () => {
    expect(swingHolds(quarter, [1.5, 1.5])).toBe(true);
    expect(swingHolds(quarter, [1.7, 1.7])).toBe(false);
    expect(swingHolds(quarter, [0.9, 1.3])).toBe(false);
    expect(swingHolds({ ...quarter, from: Math.PI / 2, to: 0 }, [1.5, 1.5])).toBe(true);
  });

  test('the nearest thing within the swing limits the leaf, with its place', () => {
    const { free, at } = freeSwing(quarter, [box(1.2, 1.6, 1, 1)]);
    expect(free).toBeCloseTo(Math.hypot(0.2, 0.6), 12);
    expect(at).toEqual([1.2, 1.6]);
  });

  test('a thing behind the hinge does not limit it; one over the hinge stops it', () => {
    expect(freeSwing(quarter, [box(0, 0, 0.9, 0.9)]).free).toBe(Number.POSITIVE_INFINITY);
    expect(freeSwing(quarter, [box(0.5, 0.5, 1, 1)]).free).toBe(0);
  });

  test('a thing meets the leaf exactly when a point of it is swept', () => {
    const coordinate = fc.double({ min: -1.5, max: 1.5, noNaN: true });
    const angle = fc.double({ min: 0.2, max: 3.1, noNaN: true });
    fc.assert(
      fc.property(coordinate, coordinate, angle, (x, y, to) => {
        const sector = { hinge: [0, 0] as Vec2, leaf: 0.9, from: 0, to };
        const thing = box(x, y, 0.3, 0.2);
        const grid = Array.from({ length: 21 }, (_, i) => i / 20);
        const swept = grid.some((u) => grid.some((v) => swingHolds(sector, [x + 0.3 * u, y + 0.2 * v])));
        // The grid may miss a corner that just reaches in; what it finds, the exact way finds too.
        if (swept) expect(freeSwing(sector, [thing]).free).toBeLessThanOrEqual(0.9 + 1e-9);
        else expect(freeSwing(sector, [thing]).free).toBeGreaterThan(0.9 - 0.03);
      }),
      { seed: 31, numRuns: 200 },
    );
  });

  test('its drawn outline lies around the arc', () => {
    for (const p of swingRing(quarter).slice(2, -1)) expect(Math.hypot(p[0] - 1, p[1] - 1)).toBeGreaterThan(0.9);
  });

  test('no leaf and no turn are refused', () => {
    expect(code(swingArea({ ...quarter, leaf: 0 }))).toBe('room/door-leaf');
    expect(code(swingArea({ ...quarter, to: 0 }))).toBe('room/door-sweep');
  });
});

describe('widths along the axes', () => {
  test('a table in a room has four gaps', () => {
    const gaps = axisGaps(room, [{ id: 't', outline: box(2, 1.2, 4, 3) }]);
    const width = (axis: string, pair: string) => gaps.find((g) => g.axis === axis && `${g.a}-${g.b}` === pair)!.width;
    expect(width('x', 'wall 3-t')).toBeCloseTo(2, 12);
    expect(width('x', 't-wall 1')).toBeCloseTo(2, 12);
    expect(width('y', 'wall 0-t')).toBeCloseTo(1.2, 12);
    expect(width('y', 't-wall 2')).toBeCloseTo(1.8, 12);
  });

  test('a turned square is nearest at its corner', () => {
    const outline = rectangle([4, 3], Math.SQRT2, Math.SQRT2, Math.PI / 4);
    const gap = axisGaps(room, [{ id: 'q', outline }]).find((g) => g.axis === 'x' && g.b === 'q')!;
    expect(gap.width).toBeCloseTo(3, 9);
    expect(gap.to[1]).toBeCloseTo(3, 9);
  });

  test('two things that do not face each other have no gap between them', () => {
    const gaps = axisGaps(room, [
      { id: 'a', outline: box(1, 1, 1, 1) },
      { id: 'b', outline: box(4, 4, 1, 1) },
    ]);
    expect(gaps.some((g) => [g.a, g.b].includes('a') && [g.a, g.b].includes('b'))).toBe(false);
  });

  test('a mirrored room has the same widths', () => {
    const place = fc.record({ x: fc.integer({ min: 5, max: 30 }), y: fc.integer({ min: 5, max: 40 }) });
    fc.assert(
      fc.property(place, ({ x, y }) => {
        const own = axisGaps(room, [{ id: 't', outline: box(x / 10, y / 10, 1.5, 1) }]);
        const mirrored = axisGaps(room, [{ id: 't', outline: box(8 - x / 10 - 1.5, y / 10, 1.5, 1) }]);
        const widths = (list: typeof own) => list.map((g) => g.width.toFixed(9)).sort();
        expect(widths(mirrored)).toEqual(widths(own));
      }),
      { seed: 32, numRuns: 50 },
    );
  });
});

describe('strip along a side', () => {
  const side = { id: 't', from: [2, 4] as Vec2, to: [6, 4] as Vec2, outward: [0, 1] as Vec2 };

  test('ends at the wall when nothing else faces the side', () => {
    const strip = clearStrip(side, [], room);
    expect(strip.width).toBeCloseTo(2, 12);
    expect(strip.b).toBe('wall 2');
  });

  test('ends at a curtain and at the nearest corner', () => {
    expect(
      clearStrip(
        side,
        [
          {
            id: 'c',
            outline: [
              [0, 4.8],
              [8, 4.8],
            ],
          },
        ],
        room,
      ),
    ).toMatchObject({ b: 'c' });
    const slanted = clearStrip(
      side,
      [
        {
          id: 's',
          outline: [
            [5, 5.5],
            [7, 4.5],
          ],
        },
      ],
      room,
    );
    expect(slanted.width).toBeCloseTo(1.0005, 3);
  });

  test('a thing beside the strip or behind the side does not count', () => {
    const beside = [
      { id: 'a', outline: box(6, 4, 1, 1) },
      { id: 'b', outline: box(3, 2, 1, 1) },
    ];
    expect(clearStrip(side, beside, room).b).toBe('wall 2');
  });

  test('a thing across the side leaves nothing', () => {
    expect(clearStrip(side, [{ id: 'a', outline: box(3, 3.5, 1, 1) }], room).width).toBe(0);
  });
});

describe('free floor', () => {
  // Steiner formula for a convex shape: A + P r + pi r^2.
  test('a grown rectangle', () => {
    expect(offsetArea(box(0, 0, 2, 1), [], 0.5)).toBeCloseTo(2 + 6 * 0.5 + Math.PI * 0.25, 3);
  });

  // Right-angled shape shrunk: A - P r + c r^2 - f (pi/4) r^2, five convex corners and one reflex.
  test('a shrunk L', () => {
    const ell: Ring = [
      [0, 0],
      [8, 0],
      [8, 4],
      [5, 4],
      [5, 6],
      [0, 6],
    ];
    const r = 0.35;
    expect(offsetArea(ell, [], -r)).toBeCloseTo(42 - 28 * r + 5 * r * r - (Math.PI / 4) * r * r, 3);
  });

  test('every point of it keeps its distance to a column', () => {
    const [piece] = freePieces(room, [], [{ id: 'c', centre: [4, 3], radius: 0.5 }], 0.4);
    for (let i = 0; i < 60; i++) {
      const p: Vec2 = [4 + 0.8999 * Math.cos(i), 3 + 0.8999 * Math.sin(i)];
      expect(pieceHolds(piece!, p)).toBe(false);
    }
    expect(pieceHolds(piece!, [4.91, 3])).toBe(true);
  });
});

describe('narrowest way', () => {
  // Two walls with gaps of 0.9 m and 0.7 m one after another: the smaller limits. Beside it a longer way of 0.8 m.
  const wall = (id: string, x: number, from: number, to: number) => ({ id, outline: box(x, from, 0.2, to - from) });
  const obstacles = [wall('a', 3, 0, 2), wall('b', 3, 2.9, 6), wall('c', 5, 0, 3), wall('d', 5, 3.7, 5.2)];
  const request = { room, obstacles, starts: [[1, 3] as Vec2], goals: [[7, 3] as Vec2] };

  test('is the widest over all routes, with its place', () => {
    const way = valueOf(narrowestWay(request));
    expect(way.width).toBeCloseTo(0.8, 9);
    expect([way.a, way.b].sort()).toEqual(['d', 'wall 2']);
  });

  test('a disc passes exactly up to it', () => {
    expect(valueOf(discPasses(request, 0.79))).toBe(true);
    expect(valueOf(discPasses(request, 0.8))).toBe(true);
    expect(valueOf(discPasses(request, 0.81))).toBe(false);
  });

  test('a curtain without an opening closes it', () => {
    const curtain = {
      id: 'k',
      outline: [
        [4, 0],
        [4, 6],
      ] as Ring,
    };
    expect(valueOf(narrowestWay({ ...request, obstacles: [...obstacles, curtain] })).width).toBe(0);
  });

  test('a slanting gap is as wide as its points are apart', () => {
    const columns = [{ id: 'p', centre: [4, 3] as Vec2, radius: 0.5 }];
    const walls = [{ id: 'w', outline: box(4.4, 0, 0.2, 1.8) }];
    const way = valueOf(
      narrowestWay({ ...request, obstacles: [...walls, { id: 'v', outline: box(3.9, 3.2, 0.2, 2.8) }], columns }),
    );
    expect(way.width).toBeCloseTo(Math.hypot(0.4, 1.2) - 0.5, 9);
  });

  test('the mouth of a curtain bent round is a limit of its own', () => {
    const line: Ring = [
      [3.6, 2],
      [2, 2],
      [2, 4],
      [4, 4],
      [4, 2.3],
    ];
    const bay = { id: 'bay', outline: line, open: true };
    const way = valueOf(narrowestWay({ room, obstacles: [bay], starts: [[3, 3]], goals: [[7, 3]] }));
    expect(way.width).toBeCloseTo(0.5, 9);
  });

  test('is the same there and back, and mirrored', () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 30 }), fc.integer({ min: 5, max: 20 }), (low, gap) => {
        const across = (x: number) => [wall('a', x, 0, low / 10), wall('b', x, (low + gap) / 10, 6)];
        const there = { room, obstacles: across(3), starts: [[1, 1] as Vec2], goals: [[7, 1] as Vec2] };
        const back = { ...there, starts: there.goals, goals: there.starts };
        const mirrored = { ...back, obstacles: across(4.8) };
        const width = valueOf(narrowestWay(there)).width;
        expect(width).toBeCloseTo(Math.min(gap / 10, 2), 9);
        expect(valueOf(narrowestWay(back)).width).toBeCloseTo(width, 9);
        expect(valueOf(narrowestWay(mirrored)).width).toBeCloseTo(width, 9);
      }),
      { seed: 33, numRuns: 15 },
    );
  });

  test('a start in a table, a room without corners and a disc without size are refused', () => {
    expect(code(narrowestWay({ ...request, starts: [[3.1, 1]] }))).toBe('room/place-blocked');
    expect(code(narrowestWay({ ...request, room: [] }))).toBe('room/corners');
    expect(code(discPasses({ ...request, room: [] }, 1))).toBe('room/corners');
    expect(code(discPasses(request, 0))).toBe('room/disc');
  });
});

test('shapes that touch do not overlap; shapes and lines that cross do', () => {
  const shape = (points: Ring, line = false) => ({ points, line });
  expect(overlapArea(shape(box(0, 0, 1, 1)), shape(box(1, 0, 1, 1)))).toBe(0);
  expect(overlapArea(shape(box(0, 0, 1, 1)), shape(box(0.5, 0, 1, 1)))).toBeCloseTo(0.498 * 0.998, 6);
  expect(
    overlapArea(
      shape(box(0, 0, 1, 1)),
      shape(
        [
          [-1, 0.5],
          [2, 0.5],
        ],
        true,
      ),
    ),
  ).toBeGreaterThan(1e-9);
  expect(
    overlapArea(
      shape(box(0, 0, 1, 1)),
      shape(
        [
          [0, 1],
          [2, 1],
        ],
        true,
      ),
    ),
  ).toBe(0);
});

describe('sight through a gap', () => {
  const gap = { source: [0, 0] as Vec2, barrierX: 2, gap: [-0.1, 0.3] as const };

  test('similar triangles give the seen stretch', () => {
    const [low, high] = valueOf(seenInterval(gap, 5));
    expect([low, high]).toEqual([expect.closeTo(-0.25, 12), expect.closeTo(0.75, 12)]);
  });

  test('just inside is seen, just outside is not, on the same side it is', () => {
    expect(seenThroughGap(gap, [5, 0.7499])).toBe(true);
    expect(seenThroughGap(gap, [5, 0.7501])).toBe(false);
    expect(seenThroughGap(gap, [1, 9])).toBe(true);
  });

  test('a strip narrower than the gap is seen whole in the middle', () => {
    const widths = valueOf(stripSourceWidths({ sourceWidth: 0.05, sourceToGap: 1, gapWidth: 0.2, gapToScreen: 1.5 }));
    expect(widths.some).toBeCloseTo(0.2 + 0.25 * 1.5, 12);
    expect(widths.every).toBeCloseTo(0.2 + 0.15 * 1.5, 12);
  });

  test('a screen before the barrier, an empty gap and a missing width are refused', () => {
    expect(code(seenInterval(gap, 1))).toBe('room/gap-order');
    expect(code(seenInterval({ ...gap, gap: [0.3, 0.3] }, 5))).toBe('room/gap-empty');
    expect(code(stripSourceWidths({ sourceWidth: 0, sourceToGap: 1, gapWidth: 1, gapToScreen: 1 }))).toBe(
      'room/strip-source',
    );
  });
});

// 29 CFR 1910.303(g)(1)(i), Table S-1: feet as printed.
test.each([
  [120, 'A', 3],
  [150, 'C', 3],
  [230, 'A', 3],
  [230, 'B', 3.5],
  [480, 'C', 4],
] as const)('board with %d V to ground, condition %s: %d ft', (volts, condition, feet) => {
  const space = valueOf(workingSpace(volts, condition));
  expect(space.depthFeet).toBe(feet);
  expect(space.depth).toBeCloseTo(feet * 0.3048, 12);
  // The metric column rounds by up to 2 cm.
  expect(Math.abs(space.depthPrinted - space.depth)).toBeLessThan(0.02);
});

test('above 600 V, and without voltage, the table is silent', () => {
  expect(code(workingSpace(1000, 'A'))).toBe('room/voltage-range');
  expect(code(workingSpace(0, 'A'))).toBe('room/voltage-range');
});

test('a head sees how far away and how far below a top lies', () => {
  const head = { at: [4, 3] as Vec2, deflector: 2.8 };
  expect(fromSprinkler(head, { id: 'a', outline: box(5, 2, 1, 2) }, 2.4)).toEqual({
    horizontal: 1,
    below: expect.closeTo(0.4, 12),
  });
  expect(fromSprinkler(head, { id: 'a', outline: box(3, 2, 2, 2) }, 2.9).horizontal).toBe(0);
  const bay = { id: 'bay', outline: [...box(3, 2, 2, 2), [3, 2] as Vec2], open: true };
  expect(fromSprinkler(head, bay, 2.4).horizontal).toBeCloseTo(1, 12);
});

// NFPA 13 (2016), Table 8.6.5.2.2 (from memory): 12 in away, 6 in below; beyond 30 in the full plane.
test('curtains near a head by the table, none beyond it', () => {
  expect(suspendedObstructionDepth(12 * 0.0254)).toBeCloseTo(6 * 0.0254, 12);
  expect(suspendedObstructionDepth(31 * 0.0254)).toBeNull();
});

test('a diagonal closes when it is as long as its corners are apart', () => {
  expect(diagonalError(room, { from: 0, to: 2, measured: 10 })).toEqual({ fromCorners: 10, error: 0 });
  expect(diagonalError(room, { from: 0, to: 7, measured: 10 })).toBeNull();
});

test.each([
  ['door-swing', { leaf: 0.9, angle: Math.PI / 2 }],
  ['board-space', { voltage: 230, opposite: 'B' }],
  ['sight-through-gap', { 'to-barrier': 2, 'to-screen': 5, 'gap-from': -0.1, 'gap-to': 0.3 }],
  ['strip-source-through-gap', { 'source-width': 0.2, 'source-to-gap': 1, gap: 0.05, 'gap-to-screen': 1.5 }],
] as const)('a stranger re-computes %s from what is printed', (name, inputs) => {
  const c = valueOf(roomTopics.find((t) => t.name === name)!.run(inputs as TopicArguments));
  expect(c.cautions.length).toBeGreaterThan(0);
  for (const step of c.steps) {
    const scope = Object.fromEntries(Object.entries(step.values).map(([n, v]) => [n, Number(v.value.toPrecision(6))]));
    expect(Number(evaluate(step.expression, scope))).toBeCloseTo(step.result, 4);
  }
});

test('topics refuse what their calculation refuses', () => {
  const run = (name: string, inputs: TopicArguments) => code(roomTopics.find((t) => t.name === name)!.run(inputs));
  expect(run('door-swing', { leaf: 0, angle: 1 })).toBe('room/door-leaf');
  expect(run('board-space', { voltage: 1000, opposite: 'A' })).toBe('room/voltage-range');
  expect(run('sight-through-gap', { 'to-barrier': 2, 'to-screen': 1, 'gap-from': 0, 'gap-to': 1 })).toBe(
    'room/gap-order',
  );
  expect(run('strip-source-through-gap', { 'source-width': 0, 'source-to-gap': 1, gap: 1, 'gap-to-screen': 1 })).toBe(
    'room/strip-source',
  );
});
