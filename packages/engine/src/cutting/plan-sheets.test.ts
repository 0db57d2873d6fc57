import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { valueOf } from '../floor/problem.js';
import { planSheets } from './plan-sheets.js';
import type { PlacedPiece, SheetPlan, SheetRequest } from './types.js';

const request = (over: Partial<SheetRequest>): SheetRequest => ({
  pieces: [],
  sheet: [2.44, 1.22],
  kerf: 0.004,
  trim: 0,
  rotation: false,
  ...over,
});

const near = 1e-9;

/** Every piece laid once, on the sheet, a kerf between neighbours. */
function expectLaid(r: SheetRequest, plan: SheetPlan): void {
  const wanted = r.pieces.flatMap((p) => Array.from({ length: p.count }, () => p.mark)).sort();
  expect(plan.sheets.flatMap((s) => s.map((p) => p.mark)).sort()).toEqual(wanted);
  for (const sheet of plan.sheets) {
    for (const p of sheet) {
      expect(p.x + p.width).toBeLessThanOrEqual(r.sheet[0] - 2 * r.trim + near);
      expect(p.y + p.height).toBeLessThanOrEqual(r.sheet[1] - 2 * r.trim + near);
      const asked = r.pieces.find((q) => q.mark === p.mark)!;
      expect(p.turned ? [p.height, p.width] : [p.width, p.height]).toEqual([
        expect.closeTo(asked.width, 6),
        expect.closeTo(asked.height, 6),
      ]);
      if (!r.rotation) expect(p.turned).toBe(false);
    }
    expect(separable(sheet, r.kerf)).toBe(true);
  }
}

/** Whether straight through cuts, again and again, part the pieces; each cut needs its kerf. */
function separable(pieces: readonly PlacedPiece[], kerf: number): boolean {
  if (pieces.length <= 1) return true;
  for (const [start, size] of [
    ['x', 'width'],
    ['y', 'height'],
  ] as const)
    for (const p of pieces) {
      const cut = p[start] + p[size];
      const before = pieces.filter((q) => q[start] + q[size] <= cut + near);
      const after = pieces.filter((q) => q[start] >= cut + kerf - near);
      if (before.length > 0 && after.length > 0 && before.length + after.length === pieces.length)
        return separable(before, kerf) && separable(after, kerf);
    }
  return false;
}

// Arithmetic: four halves of each side fill a sheet only without kerf.
test.each([
  [0, 1],
  [0.004, 4],
])('four quarter sheets with a kerf of %d m take %d sheets', (kerf, sheets) => {
  const r = request({ sheet: [2, 1], kerf, pieces: [{ mark: 'a', width: 1, height: 0.5, count: 4 }] });
  const plan = valueOf(planSheets(r));
  expect(plan.sheets.length).toBe(sheets);
  expectLaid(r, plan);
});

// The pinwheel: packable on 7 x 7, but not with straight through cuts (handbook of cutting, section 5; derived).
test('a pinwheel needs a second sheet', () => {
  const r = request({
    sheet: [7, 7],
    kerf: 0,
    rotation: true,
    pieces: [
      { mark: 'a', width: 4, height: 3, count: 4 },
      { mark: 'b', width: 1, height: 1, count: 1 },
    ],
  });
  const plan = valueOf(planSheets(r));
  expect(plan.sheets.length).toBe(2);
  expect(plan.optimal).toBe(true);
  expectLaid(r, plan);
});

test('strips over the full side never do with fewer sheets than any cuts', () => {
  const size = fc.record({ width: fc.integer({ min: 100, max: 900 }), height: fc.integer({ min: 100, max: 600 }) });
  fc.assert(
    fc.property(fc.array(size, { minLength: 1, maxLength: 6 }), fc.boolean(), (sizes, rotation) => {
      const pieces = sizes.map((s, i) => ({ mark: `p${i}`, width: s.width / 1000, height: s.height / 1000, count: 1 }));
      const r = request({ sheet: [1.2, 0.9], rotation, pieces });
      const any = valueOf(planSheets(r));
      const strips = valueOf(planSheets({ ...r, cutting: 'strips' }));
      expect(any.sheets.length).toBeLessThanOrEqual(strips.sheets.length);
      expectLaid(r, any);
      expectLaid(r, strips);
    }),
    { seed: 21, numRuns: 40 },
  );
});

test('a long list is laid whole, never under its bound', () => {
  const size = fc.record({
    width: fc.integer({ min: 100, max: 1200 }),
    height: fc.integer({ min: 100, max: 1200 }),
    count: fc.integer({ min: 1, max: 4 }),
  });
  fc.assert(
    fc.property(fc.array(size, { minLength: 10, maxLength: 14 }), (sizes) => {
      const pieces = sizes.map((s, i) => ({ ...s, mark: `p${i}`, width: s.width / 1000, height: s.height / 1000 }));
      const r = request({ pieces, rotation: true, trim: 0.005 });
      const plan = valueOf(planSheets(r));
      expectLaid(r, plan);
      expect(plan.bound).toBeLessThanOrEqual(plan.sheets.length);
      expect(plan.yield).toBeLessThanOrEqual(1);
    }),
    { seed: 22, numRuns: 25 },
  );
});

test('no panels need no sheet', () => {
  expect(valueOf(planSheets(request({}))).sheets).toEqual([]);
});

describe('refusals', () => {
  const code = (r: SheetRequest) => {
    const outcome = planSheets(r);
    return outcome.ok ? '' : outcome.problems[0]!.code;
  };
  const piece = { mark: 'a', width: 1, height: 0.5, count: 1 };
  test.each([
    [request({ pieces: [{ ...piece, height: 1.3 }] }), 'cutting/piece-too-large'],
    [request({ pieces: [{ ...piece, width: 0 }] }), 'cutting/size'],
    [request({ pieces: [{ ...piece, count: -1 }] }), 'cutting/count'],
    [request({ pieces: [piece], kerf: -1 }), 'cutting/allowance'],
    [request({ pieces: [piece], sheet: [0, 1] }), 'cutting/size'],
  ])('%#: %s', (r, expected) => {
    expect(code(r)).toBe(expected);
  });

  test('a tall panel is taken where it may be turned', () => {
    expect(valueOf(planSheets(request({ rotation: true, pieces: [{ ...piece, height: 1.3 }] }))).sheets.length).toBe(1);
  });
});
